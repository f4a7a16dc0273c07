package report

// style is the page's own style sheet. Colours come in two sets, for light and
// dark; a test holds their contrast against WCAG 2.2 (1.4.3: 4.5 for text,
// 1.4.11: 3 for shapes).
const style = `
:root{--ground:#fbfaf6;--card:#ffffff;--ink:#1c1f22;--soft:#4a5056;--edge:#767c82;--grid:#d9dbd8;
--danger:#93201a;--fix:#7d4a00;--watch:#5a5400;--fine:#1c5f30;--on:#ffffff;--now:#0b5f8e;--then:#7a5a1e;--paint:#eef1f0}
@media (prefers-color-scheme:dark){:root{--ground:#15181a;--card:#1f2427;--ink:#eeece6;--soft:#bcc1c5;--edge:#8b9298;--grid:#3a4146;
--danger:#ff9a8f;--fix:#ffbe6b;--watch:#e3d75a;--fine:#86d69b;--on:#14171a;--now:#7cc6f2;--then:#d8b878;--paint:#262c30}}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%}
body{margin:0;background:var(--ground);color:var(--ink);font:16px/1.45 system-ui,"Segoe UI",Roboto,"DejaVu Sans",sans-serif;overflow-wrap:anywhere}
main{max-width:76rem;margin:0 auto;padding:1rem}
.band{padding:1rem;background:var(--tone);color:var(--on);max-width:none;display:grid;grid-template-columns:auto minmax(0,70rem);gap:.9rem;justify-content:center}
.band p,.band h1{margin-top:.25rem;margin-bottom:.25rem}
.band h1{font-size:1.05rem;font-weight:600}
.band .mark{width:3.4rem;height:3.4rem;margin-top:.2rem}
.band .mark-body{fill:var(--on)}.band .mark-sign{stroke:var(--tone)}
.answer{font-size:1.9rem;font-weight:800;line-height:1.1}
.verdict{font-size:1.1rem;font-weight:600}
.once{border:2px dashed var(--on);border-radius:9px;padding:.2rem .7rem;margin:.2rem 0 .6rem}.once p{font-weight:700}
.band{--on:#ffffff}.band.danger{--tone:#93201a}.band.fix{--tone:#7d4a00}.band.watch{--tone:#5a5400}.band.fine{--tone:#1c5f30}
.danger{--tone:var(--danger)}.fix{--tone:var(--fix)}.watch{--tone:var(--watch)}.fine{--tone:var(--fine)}.none{--tone:var(--edge)}
section{margin:0 0 1.2rem}
h2{font-size:1.2rem;margin:0 0 .5rem;border-bottom:2px solid var(--edge);padding-bottom:.15rem}
h3{font-size:1rem;margin:.8rem 0 .3rem}
ol,ul{margin:.3rem 0;padding-left:1.4rem}li{margin:.25rem 0}
.told{margin:.2rem 0}
.small{font-size:.9rem;color:var(--soft);margin:.3rem 0}
figure{margin:.4rem 0}figcaption{font-size:.92rem}
figure>svg{display:block;width:100%;height:auto}
.circuit{max-width:32rem;margin:0 auto}
.box rect{fill:var(--card);stroke:var(--tone);stroke-width:3}
.box.none rect{stroke-width:1.5}
.pic{fill:none;stroke:var(--ink);stroke-width:1.6;stroke-linejoin:round;stroke-linecap:round}
.name{font-size:12px;font-weight:700;text-anchor:middle;fill:var(--ink)}
.word{font-size:12px;text-anchor:middle;fill:var(--tone);font-weight:700}
.box.none .word{fill:var(--soft);font-weight:400}
.lead{stroke:var(--ink);stroke-width:4;fill:none}.broken{stroke-dasharray:5 5;stroke-width:3}
.mark-body{fill:var(--tone)}.mark-sign{stroke:var(--on);stroke-width:2.2;fill:none;stroke-linecap:round;stroke-linejoin:round}
.band .mark-sign{stroke-width:4.5}
.sign{width:1.15rem;height:1.15rem;flex:none;margin-right:.45rem;vertical-align:-.2rem}
.parts{list-style:none;padding:0;max-width:52rem;margin:.6rem auto 0}.parts li{display:flex;align-items:flex-start}.parts .sign{margin-top:.15rem}
dl{margin:.3rem 0}dl>div{padding:.15rem 0;border-bottom:1px solid var(--grid)}
dt{font-weight:700}dd{margin:0}
.few>div,details dl>div{display:grid;grid-template-columns:minmax(7.5rem,11rem) 1fr;gap:.6rem}
.bars,.plots{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,16rem),1fr));gap:.6rem 1.4rem}
.grid{stroke:var(--grid);stroke-width:1;fill:none}
.tick{font-size:11px;fill:var(--soft)}.mid{text-anchor:middle}.end{text-anchor:end}
.line{fill:none;stroke-width:2;stroke-linejoin:round}
.line.now{stroke:var(--now)}.line.then{stroke:var(--then);stroke-dasharray:6 3}
.line.opens{stroke:var(--watch);stroke-dasharray:9 4}.line.harm{stroke:var(--danger);stroke-dasharray:3 3}
.range{fill:none;stroke-width:12}.range.now{stroke:var(--now)}.range.then{stroke:var(--then);stroke-dasharray:7 2}
.likely{stroke:var(--ink);stroke-width:3;fill:none}
.key{display:inline-block;margin-left:.5rem;color:var(--soft)}.key svg{width:24px;height:8px;vertical-align:middle}.key .range{stroke-width:7}
.ticks{list-style:none;padding:0}.ticks label{display:flex;gap:.55rem;align-items:flex-start}
.ticks input{width:1.25rem;height:1.25rem;flex:none;margin:.1rem 0 0}
.safety{border:3px solid var(--danger);border-radius:9px;padding:.5rem .9rem}
details{border:1px solid var(--edge);border-radius:9px;margin:.6rem 0;padding:.1rem .8rem;background:var(--card)}
summary{cursor:pointer;font-weight:700;padding:.55rem 0}
details.more{border-style:dashed;background:var(--paint)}details.more summary{font-weight:600;font-size:.92rem;padding:.3rem 0}
article{border-left:5px solid var(--tone);padding:.1rem 0 .1rem .7rem;margin:.7rem 0}article h3{margin:.1rem 0}article p{margin:.3rem 0}
@media (min-width:60rem){main{columns:2;column-gap:2rem}section{break-inside:avoid}}
@media print{:root{--ground:#fff;--card:#fff;--ink:#000;--soft:#333;--edge:#666;--grid:#ccc;--danger:#93201a;--fix:#7d4a00;--watch:#5a5400;--fine:#1c5f30;--on:#fff;--now:#0b5f8e;--then:#7a5a1e;--paint:#fff}
@page{size:A4;margin:9mm}
body{font-size:9pt;line-height:1.25;-webkit-print-color-adjust:exact;print-color-adjust:exact}
main{columns:2;column-gap:6mm;padding:0;max-width:none}.band{padding:2mm 3mm;margin-bottom:2mm}.told{margin:.3mm 0}.answer{font-size:15pt}.verdict{font-size:10pt}.band h1{font-size:9pt}.band .mark{width:11mm;height:11mm}
section{margin:0 0 2mm;break-inside:auto}h2{font-size:10pt;margin:.3mm 0 .8mm;break-after:avoid}h3{font-size:8.5pt;margin:1mm 0 .4mm}
li{margin:.2mm 0;break-inside:avoid}dl>div{padding:0;break-inside:avoid}figure{margin:.5mm 0;break-inside:avoid}figcaption{font-size:7.8pt}
.few>div{grid-template-columns:27mm 1fr;gap:2mm}.circuit{max-width:76mm}.plots{grid-template-columns:1fr 1fr;gap:1mm 3mm}.bars{grid-template-columns:1fr;gap:.5mm}
.small{font-size:7.6pt;margin:.4mm 0}.safety{border-width:1.5px;padding:1mm 2mm}.sign{width:3.2mm;height:3.2mm}.ticks input{width:3.2mm;height:3.2mm}
details,.screen{display:none}}
`
