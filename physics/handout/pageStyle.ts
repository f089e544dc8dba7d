/** How the page looks on paper: black on white, one page of A4 or Letter, fonts that are there everywhere. */
import type { Paper } from './paper.ts';

const sizes: Readonly<Record<Paper, string>> = { a4: 'A4', letter: 'Letter' };

/** The style sheet of the page. */
export function pageStyle(paper: Paper): string {
  return `@page { size: ${sizes[paper]}; margin: 9mm 12mm; }
* { box-sizing: border-box; }
html { color-scheme: light; background: #fff; }
body { margin: 0 auto; max-width: 190mm; color: #000; font: 9pt/1.3 system-ui, "Segoe UI", Helvetica, Arial, sans-serif;
  font-variant-numeric: tabular-nums; }
h1 { margin: 0; font-size: 17pt; line-height: 1.15; overflow-wrap: anywhere; }
h2, caption { margin: 0; font-size: 10.5pt; font-weight: 700; text-align: left; padding: 0 0 1mm; }
p { margin: 0 0 1.5mm; }
header { display: flex; justify-content: space-between; align-items: baseline; gap: 6mm; }
header p { white-space: nowrap; }
.answers { display: grid; grid-template-columns: 1fr 1.5fr 0.7fr; gap: 5mm; margin: 3mm 0; padding: 2mm 0;
  border-top: 0.4mm solid #000; border-bottom: 0.4mm solid #000; }
.answers p { margin: 0; }
.answers .figure { font-size: 15pt; font-weight: 700; line-height: 1.2; }
main { display: grid; grid-template-columns: 1fr 1fr; gap: 7mm; }
table { width: 100%; border-collapse: collapse; margin: 0 0 4mm; }
p + table { margin-top: 4mm; }
th, td { text-align: left; vertical-align: top; padding: 0.6mm 2mm 0.6mm 0; border-bottom: 0.15mm solid #999; }
thead th { border-bottom: 0.3mm solid #000; font-weight: 400; }
tbody th { font-weight: 700; white-space: nowrap; }
.cautions { border-top: 0.4mm solid #000; padding-top: 2mm; }
.cautions ul { margin: 0; padding: 0; columns: 2; column-gap: 7mm; list-style: none; font-size: 8pt; line-height: 1.25; }
.cautions li { break-inside: avoid; padding-bottom: 0.8mm; }
.crowded { font-size: 8pt; line-height: 1.15; }
.crowded h1 { font-size: 13pt; }
.crowded h2, .crowded caption { font-size: 9pt; padding-bottom: 0.5mm; }
.crowded .answers .figure { font-size: 13pt; }
.crowded table { margin-bottom: 2mm; }
.crowded th, .crowded td { padding-top: 0.1mm; padding-bottom: 0.1mm; }
.crowded .answers { margin: 1.5mm 0; padding: 1mm 0; }
.crowded .cautions ul { line-height: 1.2; columns: 3; column-gap: 5mm; }
@media screen { body { padding: 6mm; } }
@media screen and (max-width: 44em) {
  body { font-size: 11pt; }
  header { display: block; }
  .answers, main { grid-template-columns: minmax(0, 1fr); gap: 3mm; }
  table { display: block; overflow-x: auto; }
  .cautions ul, .crowded .cautions ul { columns: 1; font-size: 10pt; }
}
`;
}
