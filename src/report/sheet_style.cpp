#include "report/sheet_style.hpp"

namespace mainbore::report {

// Black on white; grey only under black words or as the body of a wall. Paper: 9 point, two columns that run on from
// page to page. The last faces of the stack are common wide ones drawn narrower, so that a machine without a condensed
// face prints no third page.
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
h1,h2,h3,h4,p,ul,ol,dl,dd,figure{margin:0;padding:0}
ul,ol{list-style:none}
h1{font-size:1.5rem;line-height:1.2}
h2{font-size:1.15rem;border-bottom:2px solid #000;margin:1.2rem 0 .4rem;break-after:avoid}
h3{font-size:1rem;break-after:avoid}
h2 small{font-weight:normal;font-size:.9rem}
.verdict{border:3px solid #000;padding:8px 10px}
.verdict p{margin-top:4px}
.hold .verdict{border-width:8px;border-style:double}
.no-go .verdict{border-width:10px}
.facts{display:flex;flex-wrap:wrap;gap:2px 16px;margin:6px 0}
.facts div{display:flex;gap:6px}
dt{font-weight:bold}
.who{border-left:6px solid #000;padding-left:8px;margin:6px 0}
table{border-collapse:collapse;width:100%}
th,td{border:1px solid #000;padding:3px 6px;text-align:left;vertical-align:top;font-weight:normal}
th[scope=col]{font-weight:bold}
.limit{font-weight:bold}
.read{width:5.5em}
.holds li{border:2px solid #000;padding:5px 8px;margin:6px 0;break-inside:avoid}
.boxes{display:flex;flex-wrap:wrap;gap:4px 10px;margin-top:6px}
.boxes span{display:flex;align-items:flex-end;flex:1 1 5.5em}
.boxes .first{flex:3 1 14em}
.blank{flex:1;border-bottom:1.5px solid #000;min-width:2.5em;min-height:1.5em}
.numbers div{display:flex;justify-content:space-between;gap:10px;border-bottom:1px dotted #000}
.numbers dt{font-weight:normal}
.numbers dd{text-align:right;font-weight:bold}
figure{border:1px solid #000;padding:2px;margin:8px 0;break-inside:avoid;max-width:30rem}
figcaption{font-size:.9rem}
svg{display:block;width:100%;height:auto}
.marks li,.plain li{padding-left:1.3em;text-indent:-1.3em;margin:3px 0}
.plain li::before{content:'\2014\00a0'}
.marks li::before,.until::before{content:'';display:inline-block;width:.72em;height:.72em;border:1.5px solid #000;margin-right:.5em;text-indent:0}
.steps li{padding-left:2em;position:relative;margin:4px 0}
.n{position:absolute;left:0}
.until{display:block}
.now{border:1px solid #000;padding:0 4px;font-size:.9em;display:inline-block}
.code{font-family:monospace;font-size:.85em}
.record{break-inside:avoid}
.record div{display:flex;flex-wrap:wrap;gap:2px 12px}
.record span{display:flex;align-items:flex-end;flex:1 1 11em}
.record .wide{flex:2 1 12em}
.record .tie{flex:1 1 100%;gap:8px}
svg text{font:12px 'Arial Narrow','Liberation Sans Narrow','Nimbus Sans Narrow','Roboto Condensed',sans-serif-condensed,'Narrowed','Narrowed Wide',sans-serif;fill:#000}
@media screen{svg text{font-size:13.5px}}
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
@media(min-width:56rem){.pair{display:flex;gap:20px}.half{flex:1 1 0;min-width:0}}
@media print{
@page{size:letter portrait;margin:.25in}
body{font:9pt/12.5px 'Arial Narrow','Liberation Sans Narrow','Nimbus Sans Narrow','Roboto Condensed',sans-serif-condensed,'Narrowed','Narrowed Wide',sans-serif}
.sheet{max-width:none;padding:0}
.sheet+.sheet{border:0;margin:0;break-before:page}
.screen{display:none}
.pair{display:flex;gap:14px}
.half{flex:1 1 0;min-width:0}
h1{font-size:13pt}
h2{font-size:10pt;margin:3px 0 1px;border-bottom-width:1px}
h2 small{font-size:.9em}
h3{font-size:9pt}
.hold .verdict{border-width:5px}
.no-go .verdict{border-width:6px}
.verdict{padding:3px 7px}
.verdict p{margin-top:1px}
.facts{margin:2px 0;gap:0 14px}
.who{margin:2px 0;border-left-width:4px;padding-left:5px}
th,td{padding:.5px 4px}
.limit{white-space:nowrap}
.read{width:7.5em}
.holds li{border-width:0 0 1px;padding:0;margin:2px 0}
.holds h3,.holds .do{display:inline}
.boxes{margin-top:0;gap:0 8px}
.holds .blank{border-bottom-style:dotted}
.blank{border-bottom-width:.7pt;min-height:1.35em}
figure{padding:2px 0;margin:3px 0;border:0;border-bottom:1px solid #000;max-width:none}
figcaption{font-size:9pt;line-height:1}
.marks li{padding-left:1.1em;text-indent:-1.1em;margin:0}
.plain li{padding-left:.6em;text-indent:-.6em;margin:0}
.plain li::before{content:'\2013\00a0'}
.runs li,.run-bring .bring li,.run-trouble .trouble li,.run-cautions .cautions li{display:inline;padding:0;text-indent:0}
.runs li::before{content:none}
.run-trouble .trouble li::before,.run-cautions .cautions li::before{content:'\25a0\00a0'}
.next{break-before:page}
.brief .more{display:none}
.close{line-height:12px}
.small{font-size:8.5pt;line-height:11.5px}
.smallest{font-size:8pt;line-height:10.75px}
.small svg{width:90%;margin:0 auto}
.smallest svg{width:82%;margin:0 auto}
.small .now,.small figcaption,.smallest .now,.smallest figcaption{font-size:inherit}
.facts div{max-height:3.2em;overflow:hidden}
.steps li{margin:0;padding:0}
.n{position:static}
.half h3{margin-top:2px}
.now{border:0;padding:0;font-style:italic;font-size:9pt;display:inline}
.until{display:inline}
.until::before{margin:0 .3em 0 .2em}
.numbers div{display:inline;border:0}
.numbers div:not(:last-child)::after{content:' \00b7 '}
.numbers dt,.numbers dd{display:inline}
.record div{gap:0 8px}
.record span{flex-basis:8em;white-space:nowrap}
.record .tie{flex-basis:100%}
.record .blank,.boxes .blank{min-height:1.3em}
}
)css";

}  // namespace mainbore::report
