#include "page/page_style.h"

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
header{padding:.85rem 0 .7rem}
.eyebrow{margin:0 0 .35rem;color:var(--faint);font-size:.8125rem}
h1{font-size:1.3125rem;line-height:1.3;font-weight:400;margin:0;text-wrap:pretty}
h1+p,h1+p+p{margin:.5rem 0 0;font-size:.9375rem;line-height:1.4}
.todo{border-top:1px solid var(--ink);border-bottom:1px solid var(--ink);display:grid;
gap:0 2rem;padding:.6rem 0 .5rem;font-size:.9375rem;line-height:1.35}
.todo h2{margin:0 0 .3rem;display:flex;justify-content:space-between;align-items:baseline}
.todo h2 a{font-weight:400;font-size:.8125rem;color:var(--faint)}
.todo ol{margin:0 0 .4rem}
.todo li{margin:0 0 .2rem}
.todo .small{margin:.2rem 0 .4rem;font-size:.8125rem}
dl{margin:0}
dl div{display:grid;grid-template-columns:4.25rem 1fr;border-top:1px solid var(--rule);
padding:.16rem 0}
dt{color:var(--faint)}
dd{margin:0;font-weight:700}
dd span{font-weight:400;color:var(--faint);white-space:nowrap}
ol{margin:0 0 .75rem;padding:0 0 0 1.35rem;max-width:40rem}
a{color:inherit;text-decoration-color:var(--faint);text-underline-offset:.15em}
section{padding:1.5rem 0;border-bottom:1px solid var(--rule)}
h2{font-size:1rem;font-weight:700;margin:0 0 .75rem}
h3{font-size:1rem;font-weight:400;font-style:italic;margin:1.25rem 0 .25rem}
p{margin:0 0 .75rem;max-width:40rem}
ul{margin:0 0 .75rem;padding:0 0 0 1.1rem;max-width:40rem}
li{margin:0 0 .35rem}
li::marker{content:"–  ";color:var(--faint)}
ol li::marker{content:counter(list-item) ".  "}
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
.strip.marked{margin:calc(4.1% + 1rem) auto}
.strip.marked-beside{width:min(100% - 6rem,calc(38rem*var(--shape)))}
.strip>svg{overflow:visible}
.strip .m{position:absolute;font-style:normal;font-size:.6875rem;line-height:1;color:#1c1a17;
padding:.1rem}
.strip .t,.strip .n{transform:translate(-50%,-100%)}
.strip .n{background:#fbfaf5;padding:1px 2px;border-radius:2px;margin-top:-2px}
.strip .b{transform:translate(-50%,0)}
.strip .l{transform:translate(-100%,-50%)}
.strip .r{transform:translate(0,-50%)}
.strip b{position:absolute;transform:translate(-50%,-50%);background:#fff;color:#1c1a17;
border:1px solid #1c1a17;border-radius:1em;font-size:.75rem;line-height:1;padding:.2em .45em;
font-weight:400}
path{fill:none;stroke-linejoin:round;vector-effect:non-scaling-stroke}
.casing{stroke:#fff;stroke-width:3;stroke-opacity:.75}
.line{stroke-width:1.3}
.k-strip,.k-edge-print,.k-leader,.k-opaque,.k-frame,.k-tone-area{stroke:#1c1a17}
.k-perforation,.k-light-path,.k-clear-film{stroke:#0072b2}
.k-mark,.k-step,.lead{stroke:#d55e00}
.lead{stroke-width:.9}
.k-frame{stroke-width:1.8}
.k-tone-area{stroke-dasharray:1 3;stroke-linecap:round}
.k-clear-film{stroke-dasharray:7 3}
.k-light-path{stroke-dasharray:1 2.5;stroke-linecap:round}
.k-edge-print{stroke-dasharray:3 2}
.k-leader{stroke-dasharray:10 3}
.k-opaque{stroke-dasharray:8 3 1 3}
.k-step{stroke-dasharray:6 2}
.partial{stroke-dasharray:4 3}
.key{display:flex;flex-wrap:wrap;gap:.15rem 1.1rem;list-style:none;padding:0;margin:.6rem 0 0;
max-width:none;font-size:.875rem;color:var(--faint)}
.key li{margin:0;display:flex;align-items:center;gap:.4rem}
.key svg{width:28px;height:8px;background:#fff;flex:none;print-color-adjust:exact;
-webkit-print-color-adjust:exact}
.swatches{display:flex;margin:0 0 1rem}
.swatches div{font-size:.875rem;color:var(--faint);width:9.5rem;line-height:1.3;padding-right:.5rem}
.swatches div+div{margin-left:-.5rem}
.swatches i{display:block;height:3.25rem;margin:0 0 .3rem;
print-color-adjust:exact;-webkit-print-color-adjust:exact}
.scale{display:grid;grid-template-columns:5.4rem 1fr;margin:0;padding-right:.75rem;
max-width:52rem}
.scale .names{margin-top:42px}
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
.aim{fill:none;stroke:var(--ink);stroke-dasharray:4 3}
.aim-word{font-size:12px;fill:var(--ink)}
.scale text.aim-word{font-size:12px;fill:var(--ink)}
.odds{max-width:34rem}
.odds th{width:1%;white-space:nowrap;padding-right:.9rem}
.odds .bar{padding-right:.75rem;vertical-align:middle}
.odds td:last-child{width:1%;white-space:nowrap}
.odds svg{display:block;width:100%;height:12px;background:none}
.odds tr{break-inside:avoid}
.odd{fill:var(--ink)}
.lines{max-width:34rem}
.lines p{margin:1rem 0 .25rem}
.line-of{display:block;width:100%;height:64px;overflow:visible}
.line-of text{font-size:11px;fill:var(--faint)}
.line-of text.aim-word{font-size:12px;fill:var(--ink)}
.line-of .axis{stroke:var(--faint)}
.line-of .doubt{fill:var(--two);opacity:.28}
.line-of .mid{fill:var(--ink)}
.cuts{display:flex;flex-wrap:wrap;gap:.6rem}
.cuts div{font-size:.75rem;color:var(--faint);line-height:1.4}
.cuts svg{display:block;width:5.25rem;height:5.25rem;background:#fff;border:1px solid var(--rule);
print-color-adjust:exact;-webkit-print-color-adjust:exact}
.plot{margin:0 0 1.5rem;padding:0 .75rem 0 2.6rem;max-width:44rem}
.plot>svg{display:block;width:100%;height:17rem;overflow:visible;margin:.5rem 0 1.75rem}
.plot figcaption{margin-left:-2.6rem}
.plot text{font-size:11px;fill:var(--faint)}.plot .grid{stroke:var(--rule)}
.plot .response{stroke-width:1.4;stroke:var(--ink)}.plot .c-green.response{stroke-dasharray:6 3}
.plot .c-blue.response{stroke-dasharray:2 3}
.plot .dot{fill:var(--ink)}.plot text.out{font-size:17px;fill:var(--two)}
.plot .band{fill:var(--one);opacity:.18;stroke:none}.plot .zero{stroke:var(--faint)}
.plot .arc{stroke:var(--faint);stroke-width:.8}.plot .chord{stroke:var(--two);stroke-width:1.2}
.plot .triangle{stroke:var(--faint);stroke-width:.8;stroke-dasharray:1 2}
.plot .wished{stroke:var(--one);stroke-width:1.4;stroke-dasharray:6 4}
.plot .bar{stroke:var(--ink)}.plot text.own{fill:var(--two);font-size:12px}
.plot text.aim-word{fill:var(--one);font-size:12px}.plot text.zone{fill:var(--ink)}
.plot.curve>svg{height:22rem;margin-bottom:2.6rem}
.plot .limit{stroke:var(--two);stroke-dasharray:4 3}.plot text.limit-word{fill:var(--two)}
.rule{border:solid var(--ink);border-width:0 1px 1px;height:.4rem;margin:.6rem 0 0}
.scale .more{stroke:var(--ink);stroke-width:1.5}
table{border-collapse:collapse;width:100%;max-width:44rem;margin:0 0 1rem;font-size:.9375rem}
caption{text-align:left;color:var(--faint);font-size:.875rem;padding:0 0 .4rem}
th,td{text-align:left;font-weight:400;padding:.3rem .5rem .3rem 0;border-bottom:1px solid var(--rule);
vertical-align:top}
thead th{color:var(--faint);border-color:var(--ink);font-size:.875rem}
tr.sum th,tr.sum td{border-bottom:0;font-style:italic}
td span{color:var(--faint);white-space:nowrap}
summary{cursor:pointer;max-width:40rem}details[open] summary{margin:0 0 .5rem}
.scroll{overflow-x:auto}.w td,.w th{white-space:nowrap;padding-right:.9rem}.w td:last-child{white-space:normal}
details table{font-size:.8125rem;max-width:none}
details th,details td{white-space:nowrap}
@media (max-width:40rem){.eyebrow{white-space:nowrap;overflow:hidden;text-overflow:ellipsis}
.todo{font-size:.875rem;line-height:1.3}
dl{display:grid;grid-template-columns:1fr 1fr;column-gap:.75rem}dl div{grid-column:1/-1}
dl .stop,dl .fix{grid-column:auto;grid-template-columns:2.6rem 1fr}
.whole{display:none}.pieces{display:grid;gap:.4rem}
.panel{margin:0 -1rem;padding:.4rem;border-left:0;border-right:0}td span{display:block;line-height:1.2}
table{font-size:.8125rem}thead th{font-size:.75rem}th,td{padding-right:.2rem}th:last-child,
td:last-child{padding-right:0}td span{font-size:.75rem}}
@media (min-width:40rem){.todo{grid-template-columns:1fr 1fr}.todo>:only-child{grid-column:1/-1}}
@media (min-width:60rem){main{background:linear-gradient(var(--rule),var(--rule)) 14rem 0/1px 100%
no-repeat}
h1{font-size:1.75rem;max-width:44rem}h1+p,h1+p+p{font-size:1rem}
header{padding:1.6rem 0 1.4rem}
header,section{display:grid;grid-template-columns:12rem minmax(0,1fr);column-gap:2rem}
header>*,section>*{grid-column:2}
header>.eyebrow,section>h2{grid-column:1;grid-row:1;margin:0}
section>h2{grid-row:1/span 60;max-width:11rem}
.weigh{display:grid;grid-template-columns:1fr 1fr;column-gap:3rem;align-items:start}
.lines p:first-child{margin-top:0}
section>.wide{grid-column:1/-1;margin-top:1rem;position:relative;background:var(--paper)}
.todo{margin:0;padding:1rem 0 .8rem 14rem;font-size:1rem;line-height:1.4}
footer{padding-left:15rem}}
footer{padding-top:1.5rem;padding-bottom:3rem}
@page{size:A4;margin:10mm}
@media print{html{font-size:7pt}body{line-height:1.3}
:root{--paper:#fff;--ink:#000;--faint:#333;--rule:#999;--one:#0072b2;--two:#d55e00}
main{background:none}main,footer{padding:0;max-width:none}
figure,tr,li,.todo,.odds,dl div,.cuts div,.swatches{break-inside:avoid}h2,h3{break-after:avoid}
header{padding:0 0 .6rem}h1{font-size:1.7rem}
.todo{grid-template-columns:1fr 1fr}
.evidence,footer{columns:2;column-gap:9mm}
ol{padding-left:2.2em}.setup{display:none}.strip{width:min(100%,calc(20rem*var(--shape)))}
.scale text,.scale text.word,.scale text.aim-word,.line-of text,.line-of text.aim-word{font-size:8.5px}
a{text-decoration:none}details{display:none}
section{padding:.5rem 0}figure{margin:0 0 .6rem}p,ul,ol,table{margin-bottom:.4rem}
li{margin:0 0 .15rem}td,th{padding-top:.12rem;padding-bottom:.12rem}
footer{padding:.6rem 0 0}}
)css";

}  // namespace

std::string_view page_style() {
  return style;
}

}  // namespace fogline
