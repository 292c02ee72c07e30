// What a shell runs to complete a command line: it asks the program itself, word by word.

export const SHELLS = ['bash', 'zsh', 'fish'] as const;

/** The words so far, the unfinished one last, go behind `--complete`; one candidate a line comes back. */
const scripts: Readonly<Record<(typeof SHELLS)[number], string>> = {
  bash: `# To use it: source <(waterwright completion bash)
_waterwright() {
  local IFS=$'\\n'
  COMPREPLY=($("\${COMP_WORDS[0]}" --complete "\${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null))
}
complete -o default -F _waterwright waterwright
`,
  zsh: `#compdef waterwright
# To use it: source <(waterwright completion zsh)
_waterwright() {
  local -a found
  found=("\${(@f)$("\${words[1]}" --complete "\${(@)words[2,CURRENT]}" 2>/dev/null)}")
  if [[ -n "\${found[1]}" ]]; then compadd -U -a found; else _files; fi
}
compdef _waterwright waterwright
`,
  fish: `# To use it: waterwright completion fish | source
function __waterwright
  set -l words (commandline -opc)
  $words[1] --complete $words[2..-1] (commandline -ct) 2>/dev/null
end
complete -c waterwright -a '(__waterwright)'
`,
};

export function completionScript(shell: (typeof SHELLS)[number]): string {
  return scripts[shell];
}
