// Texts that would do something if they were taken for markup: twenty tags, each in three wrappings.

export const TAGS = [
  '<script>window.__x=1</script>',
  '<img src=x onerror="window.__x=1">',
  '<svg onload=window.__x=1>',
  '<svg><script>window.__x=1</script></svg>',
  '<iframe srcdoc="<script>parent.__x=1</script>"></iframe>',
  '<a href="javascript:window.__x=1">a</a>',
  '<body onload=window.__x=1>',
  '<input autofocus onfocus=window.__x=1>',
  '<details open ontoggle=window.__x=1>',
  '<video><source onerror=window.__x=1></video>',
  '<object data="javascript:window.__x=1"></object>',
  '<embed src="javascript:window.__x=1">',
  '<form action="javascript:window.__x=1"><button>b</button></form>',
  '<math><mtext></math><img src=x onerror=window.__x=1>',
  '<style>*{display:none}</style>',
  '<link rel=stylesheet href="//example.test/x.css">',
  '<base href="//example.test/">',
  '<meta http-equiv=refresh content="0;url=//example.test">',
  '<template><script>window.__x=1</script></template>',
  '<noscript><img src=x onerror=window.__x=1></noscript>',
];
const WRAPS: readonly ((text: string) => string)[] = [
  (text) => text,
  (text) => `"'>${text}<!--`,
  (text) => `\u202E${text}\u2066 ]]> &lt;b&gt; {{1+1}} \${1+1}`,
];
export const HOSTILE = TAGS.flatMap((tag) => WRAPS.map((wrap) => wrap(tag)));
