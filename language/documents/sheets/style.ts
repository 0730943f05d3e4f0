// The look of the sheets: on a phone, on a screen light or dark, and on A4 and US Letter alike.

/** No quotes, angle brackets or ampersands: the renderer would escape them. */
export const style = `
:root{color-scheme:light dark;--ink:#111;--paper:#fff;--pale:#eee;--rule:#777}
@media screen and (prefers-color-scheme:dark){:root{--ink:#f2f2f2;--paper:#1d1f21;--pale:#2c2f33;--rule:#999}}
@page{margin:12mm}
*{box-sizing:border-box}
body{margin:0;color:var(--ink);background:var(--paper);font:11pt/1.4 system-ui,sans-serif;overflow-wrap:anywhere}
main{max-width:186mm;margin:0 auto;padding:4mm}
bdi{overflow-wrap:anywhere}
table{overflow-wrap:break-word}
h1{font-size:1.5em;margin:0 0 2mm}
h2{font-size:1.25em;margin:6mm 0 2mm;border-bottom:.5mm solid var(--ink)}
h3{font-size:1.05em;margin:4mm 0 1mm}
h4{font-size:1em;margin:3mm 0 1mm}
h1,h2,h3,h4{break-after:avoid}
p{margin:1mm 0}
ul,ol{margin:1mm 0;padding-left:6mm}
li{margin:.8mm 0;break-inside:avoid}
table{border-collapse:collapse;width:calc(100% - .4mm);margin:1mm 0 3mm}
caption{text-align:left;font-weight:bold;padding:1mm 0;break-after:avoid}
th,td{border:.2mm solid var(--rule);padding:.8mm 1.4mm;text-align:left;vertical-align:top}
thead th{background:var(--pale)}
thead{display:table-header-group}
tr{break-inside:avoid}
.tick{display:inline-block;width:4mm;height:4mm;border:.4mm solid var(--ink);vertical-align:-.6mm}
.choice{white-space:nowrap;margin-right:1.8mm;display:inline-block}
.blank{display:inline-block;border-bottom:.3mm solid var(--ink);height:4.6mm;vertical-align:-.6mm}
.short{width:9mm}.middle{width:24mm}.long{width:60mm;max-width:100%}
.nowrap{white-space:nowrap}
.clock .short{width:6mm}
.field{display:inline-block;margin:.6mm 5mm .6mm 0}
.room div{height:8mm;border-bottom:.2mm solid var(--rule)}
.room{break-inside:avoid;margin-bottom:3mm}
.cautions{border:.6mm solid var(--ink);padding:1mm 3mm;margin:2mm 0;break-inside:avoid}
.cautions h2{border:0;margin:2mm 0 1mm;font-size:1.05em}
.cautions ol{padding-left:6mm}
.small{font-size:.86em;font-weight:normal}
.kit ul{columns:2;column-gap:6mm;list-style:none;padding:0}
.look table{table-layout:fixed;overflow-wrap:anywhere}
.look th:nth-child(1){width:25%}.look th:nth-child(3){width:14%}.look th:nth-child(4){width:8.5%}.look th:nth-child(5){width:12.5%}
.look thead th{font-size:.92em}
.look .short{width:8mm}
.look th,.inside th{overflow-wrap:normal}
.look .choice{font-size:.92em}
.look bdi{overflow-wrap:anywhere}
.steps{list-style:none;padding:0;counter-reset:step}
.steps.on{counter-reset:none}
.steps li{border-top:.2mm solid var(--rule);padding:1.4mm 0 1mm 15mm;position:relative;counter-increment:step}
.steps li::before{content:counter(step);position:absolute;left:6.5mm;font-weight:bold;width:7mm;text-align:right}
.steps li .tick{position:absolute;left:0;top:1.8mm;width:5mm;height:5mm}
.steps p{margin:.3mm 0}
.pieces{font-weight:bold}
pre{white-space:pre-wrap;border:.2mm solid var(--rule);padding:2mm;font:9.5pt/1.9 ui-monospace,monospace;break-inside:avoid}
.plan{overflow-x:auto;break-inside:avoid;margin:2mm 0}
.plan svg{display:block}
.snug{overflow-x:auto}
.snug bdi{overflow-wrap:break-word}
.whole{break-inside:avoid}
.new{break-before:page}
@media print{body{font-size:9.5pt}main{max-width:none;padding:0}h2{margin-top:4mm}}
@media screen and (max-width:600px){
.wide thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.wide table,.wide tbody,.wide tr,.wide th,.wide td,.wide caption{display:block;width:100%}
.wide tr{border:.4mm solid var(--ink);margin-bottom:2mm}
.wide .look table,.look table{table-layout:auto}
.wide th,.wide td,.look th:nth-child(n){border:0;width:100%}
.look td:nth-child(n+3){display:inline-block;width:32%}
.kit ul{columns:1}
.wide tbody th{background:var(--pale)}
.wide td::before{content:attr(data-head);display:block;font-size:.8em;opacity:.75}
}
`.replaceAll('\n', '');
