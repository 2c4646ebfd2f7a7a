#include "report/sheet_style.hpp"

namespace mainbore::report {

// Black on white; gray only under black words or as the body of a wall. Paper: body type of 10.5 points, a page for the
// card, one for the order of work, one for what comes after; letter and A4 alike. The last faces of the stack are common
// wide ones drawn narrower, for a machine without a condensed face.
const std::string_view sheet_style = R"css(
@font-face{font-family:'Narrowed';src:local('Arial'),local('Liberation Sans'),local('Helvetica'),local('Roboto');size-adjust:82%}
@font-face{font-family:'Narrowed';font-weight:bold;src:local('Arial Bold'),local('Liberation Sans Bold'),local('Helvetica Bold'),local('Roboto Bold');size-adjust:82%}
@font-face{font-family:'Narrowed Wide';src:local('DejaVu Sans'),local('Verdana');size-adjust:71%}
@font-face{font-family:'Narrowed Wide';font-weight:bold;src:local('DejaVu Sans Bold'),local('Verdana Bold');size-adjust:68%}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0;background:#fff;color:#000;font:16px/1.4 system-ui,Arial,'Liberation Sans',sans-serif;overflow-wrap:break-word}
.sheet{max-width:60rem;margin:0 auto;padding:9px}
.sheet+.sheet{border-top:6px double #000;margin-top:24px}
h1,h2,h3,p,ul,ol,dl,dd,figure{margin:0;padding:0}
ul,ol{list-style:none}
h1{font-size:1.5rem;line-height:1.2}
h2{font-size:1.15rem;border-bottom:2px solid #000;margin:1.2rem 0 .4rem;break-after:avoid}
h3{font-size:1rem;break-after:avoid;margin-top:.7rem}
h2 small{font-weight:normal;font-size:.9rem}
nav{display:flex;flex-wrap:wrap;gap:4px 14px;margin-bottom:8px}
nav a{color:#000;padding:6px 0}
.verdict{border:3px solid #000;padding:8px 10px}
.verdict p{margin-top:4px}
.hold .verdict{border-width:8px;border-style:double}
.no-go .verdict{border-width:10px}
.foot{font-size:.8rem;margin-top:.6rem}
.facts{display:flex;flex-wrap:wrap;gap:2px 16px;margin:6px 0}
.facts div{display:flex;gap:6px}
dt{font-weight:bold}
.who{border-left:6px solid #000;padding-left:8px;margin:6px 0}
table{border-collapse:collapse;width:100%}
th,td{border:1px solid #000;padding:3px 6px;text-align:left;vertical-align:top;font-weight:normal}
th[scope=col]{font-weight:bold}
.limit{font-weight:bold}
.number{white-space:nowrap}
.read{width:5.5em}
.holds li{border-bottom:1px solid #000;padding:5px 0;break-inside:avoid}
.boxes{display:flex;gap:4px 10px}
.boxes span{display:flex;align-items:flex-end;flex:1 1 5em}
.boxes .first{flex:2 1 8em}
.blank{flex:1;border-bottom:1.5px solid #000;min-width:2.5em;min-height:1.5em;margin:0 .25em}
.rows div{display:flex;gap:10px;border-bottom:1px dotted #000;padding:2px 0}
.rows dt{font-weight:normal;flex:0 0 38%}
.rows dd{font-weight:bold;flex:1}
.bring div{margin:6px 0}
.bring .tick{display:inline-block;margin-right:1em}
figure{border:1px solid #000;padding:2px;margin:8px 0;break-inside:avoid;max-width:30rem}
figcaption{font-size:.9rem}
svg{display:block;width:100%;height:auto}
svg.sign{display:inline-block;width:1.2em;height:.9em;vertical-align:-.08em;margin-right:.25em}
.plain li{padding-left:1em;text-indent:-1em;margin:3px 0;break-inside:avoid}
.plain li::before{content:'\2013\00a0'}
.plain .print{display:none}
.steps li{padding-left:3.4em;position:relative;margin:5px 0;break-inside:avoid}
.steps .n{position:absolute;left:0;width:1.5em;text-align:right}
.steps li::before,.tick::before{content:'';display:inline-block;width:.72em;height:.72em;border:1.5px solid #000}
.steps li::before{position:absolute;left:2.1em;top:.34em}
.tick::before{margin-right:.35em}
.until{display:block}
.now{display:flex;flex-wrap:wrap;gap:0 .9em;margin-top:1px}
.now>span{white-space:nowrap}
.legend svg:not(:first-child){margin-left:1em}
.record{break-inside:avoid}
.record div{display:flex;flex-wrap:wrap;gap:2px 12px}
.record span{display:flex;align-items:flex-end;flex:1 1 11em}
.record .wide{flex:2 1 12em}
.record .tie{flex:1 1 100%;gap:8px}
svg text{font:12px 'Arial Narrow','Liberation Sans Narrow','Nimbus Sans Narrow','Roboto Condensed',sans-serif-condensed,'Narrowed','Narrowed Wide',sans-serif;fill:#000}
@media screen{svg text{font-size:13.5px}.page{line-height:1.4!important}}
svg .soft{font-style:italic}
svg .strong{font-weight:bold}
svg .clear{paint-order:stroke;stroke:#fff;stroke-width:3px;stroke-linejoin:round}
svg line,svg path,svg circle,svg rect{fill:none;stroke:#000;stroke-width:1}
svg .thin{stroke-width:.7}
svg .edge{stroke-width:1.2}
svg .cut{stroke-width:2}
svg .bar{stroke-width:3}
svg .dash{stroke-dasharray:4 2.5}
svg .axis{stroke-width:.7;stroke-dasharray:9 2.5 2 2.5}
svg .chain{stroke-width:3.4;stroke-dasharray:5 1.6}
svg .fill{fill:#d6d6d6;fill-rule:evenodd}
svg .fill:not(.cut):not(.edge){stroke:none}
svg .blank{fill:#fff}
svg .blank:not(.cut):not(.edge){stroke:none}
svg .zone{fill:#999;stroke-width:.7}
svg .head,svg .dot,svg .thread{fill:#000;stroke:none}
svg .whole{fill:#000;stroke-width:.5}
svg .part{fill:#fff;stroke-width:.9}
input.typed,select.typed{display:block;width:100%;min-width:0;min-height:2.4em;border:1.5px solid #000;background:#fff;color:#000;font:16px system-ui,Arial,'Liberation Sans',sans-serif}
.read input.typed{min-width:6em}
output.typed{display:block;font-weight:bold;font-style:normal}
div.typed{margin-top:8px}
.save button{font:bold 1.1rem system-ui,Arial,sans-serif;padding:.7em 1em;margin:12px 8px 4px 0;border:3px solid #000;background:#fff;color:#000}
@media(min-width:56rem){.pair{display:flex;gap:20px}.half{flex:1 1 0;min-width:0}.figures{display:grid;grid-template-columns:1fr 1fr;gap:0 20px}}
@media print{
@page{margin:.27in .3in}
body{font:10.5pt/12pt 'Arial Narrow','Liberation Sans Narrow','Nimbus Sans Narrow','Roboto Condensed',sans-serif-condensed,'Narrowed','Narrowed Wide',sans-serif}
.sheet{width:7.67in;max-width:none;padding:0}
.sheet+.sheet{border:0;margin:0;break-before:page}
nav,.more,.screen{display:none}
.typed{display:none!important}
.page+.page{break-before:page}
.pair{display:flex;gap:.17in}
.half{flex:1 1 0;min-width:0}
.columns{columns:2;column-gap:.17in}
.wide{column-span:all}
.odd ul{columns:2;column-gap:.17in}
.columns .odd ul{columns:auto}
h1{font-size:15pt}
h2{font-size:11.5pt;line-height:1.2;margin:4pt 0 2pt;border-bottom-width:1.5px}
h2 small{font-size:10.5pt}
h3{font-size:10.5pt;margin:2pt 0 0;text-decoration:underline}
.hold .verdict{border-width:5px}
.no-go .verdict{border-width:6px}
.verdict{padding:3px 7px}
.verdict p{margin-top:1px}
.facts{margin:2px 0;gap:0 14px}
.facts div{max-height:3.2em;overflow:hidden}
.who{margin:2px 0;border-left-width:4px;padding-left:5px}
th,td{padding:1px 4px}
.read{width:6em}
.rows div{padding:0;gap:6px}
.rows dt{flex:0 0 31%}
.holds{display:grid;grid-template-columns:1fr 1fr;gap:0 .17in}
.holds li{display:flex;gap:6px;padding:1px 0;align-items:flex-end}
.holds .what{flex:1 1 0}
.boxes{flex:0 0 38%;gap:0 6px}
.boxes .first{flex:2 1 4em}
.boxes span{flex:1 1 3em}
.blank{border-bottom-width:.7pt;min-height:1.25em}
.bring div{display:flex;margin:0}
.bring dt{flex:0 0 5.2em}
.bring .tick{margin-right:.8em}
figure{padding:0;margin:0;border:0;border-bottom:1px solid #000;max-width:none}
figcaption{font-size:10.5pt;line-height:1.05}
.plain li{margin:0;padding-left:.7em;text-indent:-.7em}
.brief .print{display:inline}
.brief .whole{display:none}
.steps li{margin:0;padding-left:2.75em}
.steps .n{width:1.3em}
.steps li::before{left:1.65em;top:.2em}
.until{display:inline}
.now{margin:0 0 0 -2.6em;flex-wrap:nowrap;gap:0 .3em}
svg.sign{width:1em;margin-right:.12em}
.record div{gap:0 10px}
.record span{flex-basis:10em;white-space:nowrap}
.record .tie{flex-basis:100%}
.record .blank{min-height:1.5em}
.foot{font-size:10.5pt;line-height:1.1;margin:2pt 0 0}
}
)css";

}  // namespace mainbore::report
