#include "report/html/page.h"

namespace report {

std::string_view page_style() {
  return R"css(:root {
  color-scheme: light dark;
  --paper: #fbfaf6;
  --ink: #1f1e1b;
  --soft: #5a564d;
  --rule: #d9d4c7;
  --accent: #0a5261;
  --caution: #8a3a00;
  --chart-first: #0a5261;
  --chart-second: #a44a00;
  --chart-quiet: #6a655a;
  --chart-grid: #e3dfd3;
  --chart-paper: var(--paper);
  --text: Charter, "Bitstream Charter", "Iowan Old Style", Georgia, "DejaVu Serif", serif;
  --label: "Avenir Next", "Segoe UI", "Helvetica Neue", Arial, "DejaVu Sans", sans-serif;
}
@media (prefers-color-scheme: dark) {
  :root {
    --paper: #16181a;
    --ink: #e6e2d9;
    --soft: #a9a498;
    --rule: #3a3c3d;
    --accent: #84c8d6;
    --caution: #eeb078;
    --chart-first: #84c8d6;
    --chart-second: #eeb078;
    --chart-quiet: #a09b90;
    --chart-grid: #303335;
  }
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body {
  margin: 0 auto;
  padding: 3.5rem 1.25rem 4rem;
  max-width: 46rem;
  background: var(--paper);
  color: var(--ink);
  font: 1.0625rem/1.6 var(--text);
  overflow-wrap: break-word;
  counter-reset: chapter;
}
header { border-bottom: 3px double var(--ink); padding-bottom: 1.1rem; }
h1, h2, h3 { line-height: 1.25; font-weight: 600; text-wrap: balance; }
h1 { font-size: 2.1rem; margin: .3rem 0 .5rem; }
.kind, nav, h4, th, .caption, figcaption, dt, footer, .cautions::before {
  font-family: var(--label);
}
.kind { margin: 0; font-size: .78rem; letter-spacing: .12em; text-transform: uppercase; color: var(--soft); }
.subtitle { margin: 0; color: var(--soft); }
nav { font-size: .82rem; margin: 1rem 0 0; }
nav ol { list-style: none; margin: 0; padding: 0; columns: 15rem 2; column-gap: 2rem; counter-reset: entry; }
nav li { margin: 0; padding: .2rem 0; counter-increment: entry; break-inside: avoid; }
nav li::before { content: counter(entry) "\2002"; color: var(--soft); font-variant-numeric: tabular-nums; }
a { color: var(--accent); text-decoration-thickness: 1px; text-underline-offset: .18em; }
a:focus-visible, .wide:focus-visible { outline: 2px solid var(--accent); outline-offset: 2px; }
h2 {
  counter-increment: chapter;
  font-size: 1.45rem;
  margin: 3.2rem 0 1rem;
  padding-top: .7rem;
  border-top: 1px solid var(--ink);
}
h2::before { content: counter(chapter) "\2002"; color: var(--accent); font-variant-numeric: tabular-nums; }
h3 { font-size: 1.18rem; margin: 2.4rem 0 .6rem; }
.depth-3 { border-top: 1px solid var(--rule); margin-top: 2.2rem; }
.depth-3 h3 { margin-top: 1.3rem; }
h4 { font-size: .8rem; letter-spacing: .07em; text-transform: uppercase; color: var(--soft); margin: 1.7rem 0 .5rem; }
p { margin: .6rem 0; }
.lead { font-size: 1.16rem; line-height: 1.55; }
dl { margin: .9rem 0; font-size: .95rem; }
dl div {
  display: grid;
  grid-template-columns: minmax(9rem, 17rem) 1fr;
  gap: 0 1.4rem;
  padding: .28rem 0;
  border-bottom: 1px solid var(--rule);
  break-inside: avoid;
}
dt { font-size: .84rem; line-height: 1.5; color: var(--soft); padding-top: .1rem; }
dd { margin: 0; overflow-wrap: anywhere; font-variant-numeric: lining-nums; }
ul { margin: .8rem 0; padding-left: 1.2rem; }
li { margin: .3rem 0; }
.cautions { list-style: none; padding: .55rem 0 .55rem 1rem; border-left: 3px solid var(--caution); }
.cautions::before {
  content: "To bear in mind";
  font-size: .76rem;
  letter-spacing: .07em;
  text-transform: uppercase;
  color: var(--caution);
}
.wide { overflow-x: auto; margin: 0 0 1.2rem; }
table { border-collapse: collapse; min-width: 62%; font-size: .88rem; line-height: 1.4; }
.caption { color: var(--soft); font-size: .8rem; line-height: 1.5; margin: 1.2rem 0 .4rem; break-after: avoid; }
th, td { text-align: left; vertical-align: top; padding: .42rem .9rem .42rem 0; border-bottom: 1px solid var(--rule); }
th:last-child, td:last-child { padding-right: 0; }
thead th { font-size: .78rem; color: var(--soft); font-weight: 600; border-bottom: 1px solid var(--ink); vertical-align: bottom; }
tbody th { font-weight: 600; min-width: 9rem; }
tbody th.number { font-weight: 400; min-width: 0; }
td { font-family: var(--label); min-width: 3rem; }
.number { text-align: right; font-variant-numeric: tabular-nums lining-nums; white-space: nowrap; }
thead .number { white-space: normal; }
figure { margin: 1.3rem 0; break-inside: avoid; }
svg { display: block; width: 100%; max-width: 36rem; height: auto; color: var(--ink); }
svg text { font: 12px var(--label); }
figcaption { font-size: .8rem; line-height: 1.5; color: var(--soft); max-width: 36rem; margin-top: .5rem; }
footer { margin-top: 4rem; border-top: 3px double var(--ink); font-size: .8rem; color: var(--soft); }
@media (max-width: 34rem) {
  body { padding: 1.6rem 1rem 3rem; font-size: 1rem; }
  h1 { font-size: 1.6rem; }
  h2 { font-size: 1.3rem; margin-top: 2.4rem; }
  dl div { grid-template-columns: 1fr; padding: .4rem 0; }
  svg text { font-size: 13.5px; }
}
@media print {
  :root {
    --paper: #fff;
    --ink: #000;
    --soft: #444;
    --rule: #bbb;
    --accent: #0a4450;
    --caution: #703000;
    --chart-first: #0a4450;
    --chart-second: #8a3e00;
    --chart-quiet: #555;
    --chart-grid: #ddd;
  }
  @page { margin: 18mm 16mm; }
  body { padding: 0; max-width: none; font-size: 10.5pt; }
  nav { display: none; }
  a { color: inherit; text-decoration: none; }
  h2, h3, h4 { break-after: avoid; }
  tr { break-inside: avoid; }
  .wide { overflow: visible; }
  svg { max-width: 130mm; }
}
)css";
}

}  // namespace report
