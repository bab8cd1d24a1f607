/**
 * How a paper looks: black on white, as a shop's printer has it. No paper size is set, so that it fits the one in the printer,
 * A4 or Letter.
 */
export const style = `@page { margin: 12mm; }
* { box-sizing: border-box; }
body { font: 11pt/1.35 system-ui, sans-serif; color: #000; background: #fff; max-width: 190mm; margin: 1rem auto; padding: 0 1rem; }
h1 { font-size: 17pt; margin: 0 0 .3rem; }
h2 { font-size: 12.5pt; margin: 1.1rem 0 .3rem; border-bottom: 2px solid #000; break-after: avoid; }
p, ul { margin: .35rem 0; }
ul { padding-left: 1.2rem; }
.under { margin: 0; }
.mind { border-left: 4px solid #000; padding-left: .6rem; }
.cautions { border: 2px solid #000; padding: .4rem .6rem; font-weight: bold; margin-top: 1rem; break-inside: avoid; }
table { border-collapse: collapse; margin: .4rem 0; max-width: 100%; }
th, td { border: 1px solid #777; padding: .15rem .45rem; text-align: left; vertical-align: top; }
th { background: #eee; }
tr, figure, li { break-inside: avoid; }
p:has(+ table), p:has(+ ul), h2 + p { break-after: avoid; }
thead { display: table-header-group; }
.number { text-align: right; font-variant-numeric: tabular-nums; }
.blank { min-width: 22mm; height: 8mm; }
figure { margin: .5rem 0; }
figure svg { width: 100%; height: auto; }
figcaption { font-size: 9.5pt; }
@media print { body { margin: 0; padding: 0; max-width: none; } .mind, th { print-color-adjust: exact; } }
`;
