#include "report/page_style.h"

// Paper and ink: one serif face, one size scale, section titles in the margin like a notebook's
// keywords. The strip lies on white light in both reading modes. The two hues are blue and
// vermillion of Okabe and Ito (2008), on dark paper their sky blue and orange; each is also told by
// its dash, so that print in black loses nothing.

namespace fogline {
namespace {

constexpr std::string_view style = R"css(
:root{--paper:#fbfaf5;--ink:#1c1a17;--faint:#6b665d;--rule:#d9d4c8;--one:#0072b2;--two:#d55e00;
color-scheme:light dark}
@media (prefers-color-scheme:dark){:root{--paper:#171613;--ink:#ebe6da;--faint:#a39d90;
--rule:#3b3831;--one:#56b4e9;--two:#e69f00}}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0;background:var(--paper);color:var(--ink);font:1rem/1.5 Charter,"Iowan Old Style",
"Palatino Linotype",Palatino,"URW Palladio L",Georgia,"DejaVu Serif",serif;
font-variant-numeric:tabular-nums lining-nums;overflow-wrap:break-word}
main,footer{max-width:70rem;margin:0 auto;padding:0 1rem}
header{border-bottom:1px solid var(--ink);padding:1.25rem 0 1.5rem}
.eyebrow{margin:0 0 1rem;color:var(--faint);font-size:.875rem}
h1{font-size:1.375rem;line-height:1.35;font-weight:400;margin:0;text-wrap:pretty}
h1+p{margin:.75rem 0 0;color:var(--faint)}
section{padding:1.5rem 0;border-bottom:1px solid var(--rule)}
h2{font-size:1rem;font-weight:700;margin:0 0 .75rem}
h3{font-size:1rem;font-weight:400;font-style:italic;margin:1.25rem 0 .25rem}
p{margin:0 0 .75rem;max-width:40rem}
ul{margin:0 0 .75rem;padding:0 0 0 1.1rem;max-width:40rem}
li{margin:0 0 .35rem}
li::marker{content:"–  ";color:var(--faint)}
li.weighty::marker{content:"!  ";color:var(--two);font-weight:700}
figure{margin:0 0 1.25rem}
figcaption{color:var(--faint);font-size:.875rem;margin:.5rem 0 0;max-width:40rem}
.small,footer{font-size:.875rem;color:var(--faint)}
.nb{white-space:nowrap}
.panel{background:#fff;border:1px solid var(--rule);padding:.5rem}
.store{position:absolute;width:0;height:0}
.pieces{display:none}
.strip{position:relative;width:min(100%,calc(38rem*var(--shape)));margin:0 auto;
print-color-adjust:exact;-webkit-print-color-adjust:exact}
.strip>svg{display:block;width:100%;height:auto}
.strip b{position:absolute;transform:translate(-50%,-50%);background:#fff;color:#1c1a17;
border:1px solid #d55e00;border-radius:1em;font-size:.75rem;line-height:1;padding:.2em .45em;
font-weight:400}
path{fill:none;stroke-linejoin:round;vector-effect:non-scaling-stroke}
.casing{stroke:#fff;stroke-width:3;stroke-opacity:.75}
.line{stroke-width:1.3}
.k-strip,.k-edge-print,.k-leader,.k-opaque{stroke:#1c1a17}
.k-perforation,.k-light-path,.k-clear-film{stroke:#0072b2}
.k-frame,.k-tone-area{stroke:#d55e00}
.k-frame{stroke-width:1.8}
.k-tone-area{stroke-dasharray:1 3;stroke-linecap:round}
.k-clear-film{stroke-dasharray:7 3}
.k-light-path{stroke-dasharray:1 2.5;stroke-linecap:round}
.k-edge-print{stroke-dasharray:3 2}
.k-leader{stroke-dasharray:10 3}
.k-opaque{stroke-dasharray:8 3 1 3}
.partial{stroke-dasharray:4 3}
.key{display:flex;flex-wrap:wrap;gap:.15rem 1.1rem;list-style:none;padding:0;margin:.6rem 0 0;
max-width:none;font-size:.875rem;color:var(--faint)}
.key li{margin:0;display:flex;align-items:center;gap:.4rem}
.key svg{width:28px;height:8px;background:#fff;flex:none;print-color-adjust:exact;
-webkit-print-color-adjust:exact}
.swatches{display:flex;gap:1.25rem;margin:0 0 1rem;flex-wrap:wrap}
.swatches div{font-size:.875rem;color:var(--faint);width:9.5rem}
.swatches i{display:block;height:3.25rem;border:1px solid var(--rule);margin:0 0 .3rem;
print-color-adjust:exact;-webkit-print-color-adjust:exact}
.scale{display:grid;grid-template-columns:5.4rem 1fr;margin:0;padding-right:.75rem;
max-width:52rem}
.scale .names{margin-top:26px}
.scale .names div{height:38px;display:flex;align-items:center;gap:.4rem;font-size:.875rem;
white-space:nowrap}
.scale .names span{min-width:1.4rem;text-align:right}
.scale .names svg{background:#fff;print-color-adjust:exact;
-webkit-print-color-adjust:exact}
.scale>svg{width:100%;overflow:visible;display:block}
.scale text{font-size:11px;fill:var(--faint)}
.scale text.word{font-size:12px;fill:var(--one);stroke:var(--paper);stroke-width:4;
paint-order:stroke}
.scale .grid{stroke:var(--rule)}
.scale .base{stroke:var(--one);stroke-width:1.5;stroke-dasharray:7 3}
.scale .baseband{fill:var(--one);opacity:.14}
.scale .span{stroke:var(--ink);stroke-width:1.5}
.scale .doubt{fill:var(--two);opacity:.28}
.scale .end{stroke:var(--ink);stroke-width:1.5}
.scale .mid{fill:var(--ink)}
.scale .faintly{stroke-dasharray:3 3}
.scale .more{stroke:var(--ink);stroke-width:1.5}
table{border-collapse:collapse;width:100%;max-width:44rem;margin:0 0 1rem;font-size:.9375rem}
caption{text-align:left;color:var(--faint);font-size:.875rem;padding:0 0 .4rem}
th,td{text-align:left;font-weight:400;padding:.3rem .5rem .3rem 0;border-bottom:1px solid var(--rule);
vertical-align:top}
thead th{color:var(--faint);border-color:var(--ink);font-size:.875rem}
tr.sum th,tr.sum td{border-bottom:0;font-style:italic}
td span{color:var(--faint);white-space:nowrap}
@media (max-width:40rem){.whole{display:none}.pieces{display:grid;gap:.4rem}
.panel{margin:0 -1rem;padding:.4rem;border-left:0;border-right:0}td span{display:block;line-height:1.2}
table{font-size:.8125rem}thead th{font-size:.75rem}th,td{padding-right:.2rem}th:last-child,
td:last-child{padding-right:0}td span{font-size:.75rem}}
@media (min-width:60rem){h1{font-size:1.75rem;max-width:44rem}
header,section{display:grid;grid-template-columns:12rem minmax(0,1fr);column-gap:2rem}
header>*,section>*{grid-column:2}
header>.eyebrow,section>h2{grid-column:1;grid-row:1;margin:0}
section>h2{grid-row:1/span 40;max-width:11rem}
section>.wide{grid-column:1/-1;margin-top:1rem}
footer{padding-left:15rem}}
footer{padding-top:1.5rem;padding-bottom:3rem}
@media print{html{font-size:10pt}:root{--paper:#fff;--ink:#000;--faint:#333;--rule:#999;--one:#0072b2;--two:#d55e00}
figure,tr,li{break-inside:avoid}h2,h3{break-after:avoid}
section{padding:.9rem 0}}
)css";

}  // namespace

std::string_view page_style() {
  return style;
}

}  // namespace fogline
