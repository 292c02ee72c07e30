// The style of a printed paper: black on white, at least 11 pt, heads repeated on each page, nothing that stands alone.
import type { PaperDocument } from '../document/document.ts';

export type PaperSize = 'A4' | 'Letter';

/** A text inside a style sheet: every sign that is no plain letter by its number, so that nothing can end the string. */
export function styleText(text: string): string {
  const signs = [...text.replace(/\s+/g, ' ')].map((sign) =>
    /^[A-Za-z0-9 ,.:()]$/.test(sign) ? sign : `\\${(sign.codePointAt(0) ?? 0xfffd).toString(16)} `,
  );
  return `"${signs.join('')}"`;
}

/**
 * @param margin what stands in the margin of each page
 */
export function styleOf(
  { size, isWide }: { readonly size: PaperSize; readonly isWide: boolean },
  margin: { readonly top: string; readonly right: string; readonly foot: string },
): string {
  return `@page { size: ${size} ${isWide ? 'landscape' : 'portrait'}; margin: 18mm 16mm 20mm;
  @top-left { content: ${styleText(margin.top)}; ${MARGIN} }
  @top-right { content: ${styleText(margin.right)}; ${MARGIN} font-weight: 700; }
  @bottom-left { content: ${styleText(margin.foot)}; ${MARGIN} width: 80%; text-align: left; }
  @bottom-right { content: "page " counter(page) " of " counter(pages); ${MARGIN} width: 20%; text-align: right; }
}
${SHEET}${isWide ? WIDE : ''}`;
}

const MARGIN = `font: 9pt ${'"Noto Sans", "DejaVu Sans", Arial, sans-serif'}; color: #000;`;

const SHEET = `html { background: #fff; color: #000; }
body { margin: 0 auto; max-width: 178mm; font: 11pt/1.4 "Noto Sans", "DejaVu Sans", Arial, sans-serif; font-variant-numeric: tabular-nums lining-nums; overflow-wrap: anywhere; }
h1 { font-size: 18pt; line-height: 1.2; margin: 0 0 1mm; }
h2 { font-size: 12.5pt; margin: 6mm 0 1.5mm; break-after: avoid; }
p { margin: 1.5mm 0; max-width: 165mm; orphans: 2; widows: 2; }
.under { max-width: none; padding-bottom: 2mm; border-bottom: 1.5pt solid #000; }
.verdict { border: 2.5pt solid #000; padding: 2mm 4mm; margin: 4mm 0; break-inside: avoid; }
.verdict strong { display: block; font-size: 17pt; line-height: 1.25; }
.practice { max-width: none; border: 1.5pt dashed #000; padding: 1mm 3mm; margin: 0 0 3mm; font-weight: 700; }
ul, ol.tree, ol.tree ol { margin: 1mm 0; padding-left: 6mm; }
ol.tree, ol.tree ol { list-style: none; }
ol.tree > li { margin-left: -6mm; }
ol.tree ol { border-left: 0.75pt solid #000; padding-left: 5mm; margin-left: 1mm; }
li { break-inside: avoid; margin: 0.6mm 0; }
ol.tree li { break-inside: auto; }
dl { display: grid; grid-template-columns: minmax(30mm, max-content) 1fr; gap: 1mm 5mm; margin: 2mm 0; }
dt { font-weight: 700; }
dd { margin: 0; min-height: 1.4em; }
dd.write { border-bottom: 0.75pt solid #000; height: 8mm; }
dt { align-self: end; }
table { border-collapse: collapse; width: 100%; margin: 2mm 0; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { text-align: left; vertical-align: bottom; font-size: 10pt; border-bottom: 1.25pt solid #000; padding: 1mm 3mm 1mm 0; overflow-wrap: normal; }
td:first-child { min-width: 22mm; }
td { vertical-align: top; border-bottom: 0.5pt solid #000; padding: 1mm 3mm 1mm 0; overflow-wrap: break-word; }
th.figure, td.figure { text-align: right; white-space: nowrap; }
td.write { height: 8mm; min-width: 18mm; border-left: 0.5pt solid #000; }
.whole { white-space: nowrap; }
.step { break-inside: avoid; margin: 3mm 0; }
.hazard { border: 0.75pt solid #000; padding: 1.5mm 3mm; margin: 0 0 2mm; break-after: avoid; }
.hazard.warning { border-width: 3pt; }
.hazard.caution { border-width: 1.5pt; }
.hazard.notice { border-left-width: 3pt; }
.hazard svg { width: 5.5mm; height: 5mm; vertical-align: -0.8mm; margin-right: 2mm; }
figure { margin: 3mm 0; break-inside: avoid; }
figure > svg { display: block; width: 100%; height: auto; max-height: 165mm; }
.line { border-bottom: 0.75pt solid #000; height: 8mm; }
.lines, .sign { break-inside: avoid; margin: 2mm 0; }
.tick { display: flex; gap: 3mm; align-items: flex-start; break-inside: avoid; margin: 1.5mm 0; }
.tick::before { content: ""; flex: none; box-sizing: border-box; width: 6mm; height: 6mm; border: 1pt solid #000; }
.sign > div { display: grid; grid-template-columns: 3fr 2fr; gap: 6mm; }
.sign > div > span { border-bottom: 0.75pt solid #000; height: 10mm; font-size: 9pt; }
footer { border-top: 1.5pt solid #000; margin-top: 6mm; padding-top: 1.5mm; font-size: 9pt; break-inside: avoid; }
footer p { margin: 0.5mm 0; max-width: none; }
`;

/** As tall as leaves room for the head of the paper, and tall enough for letters of 9 pt. */
const WIDE = `body { max-width: none; }
figure > svg { max-height: 128mm; }
`;

/** What the margin of a page says of its paper. */
export function marginOf(
  { title, head }: Pick<PaperDocument, 'title' | 'head'>,
  words: { readonly practice: string; readonly foot: string },
) {
  return {
    top: `${title}, ${head.outpost}`,
    right: head.practice ? words.practice : '',
    foot: words.foot,
  };
}
