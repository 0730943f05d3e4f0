/** One upright page on A4 and on US Letter. No quotes, angle brackets or ampersands: the renderer would escape them. */
export const summaryStyle = `
@page{size:portrait;margin:9mm}
.counts{display:flex;flex-wrap:wrap;gap:1mm 5mm;list-style:none;padding:1mm 3mm;margin:1mm 0 2mm;border:.5mm solid var(--ink)}
.counts li{margin:0;white-space:nowrap}
.pictures{display:grid;grid-template-columns:1fr 1fr;gap:2mm 4mm;align-items:start}
.picture{min-width:0;break-inside:avoid}.pictures div .picture+.picture{margin-top:2mm}.pictures{margin-bottom:2mm}.late th:first-child{min-width:34mm}
svg.chart{display:block;width:100%;height:auto;border:.2mm solid var(--rule)}
details{font-size:.86em;margin-top:.6mm}
.late td,.late th,.purchase td,.purchase th{font-size:.92em}
.cautions ol{columns:2;column-gap:6mm}
.cautions{font-size:.86em}
@media print{
body{font-size:8pt;line-height:1.22}
h1{font-size:1.5em;margin:0}
h2{margin:0 0 .5mm;font-size:1.1em}
p{margin:.6mm 0}
details{display:none}
table{margin:0 0 1mm}
th,td{padding:.3mm .8mm}
caption{padding:.4mm 0}
.pictures{gap:1.2mm 3mm}
.cautions{padding:.6mm 2mm;margin:1mm 0 0;font-size:.78em;line-height:1.18}
.cautions ol{margin:.4mm 0;padding-left:4mm}
.cautions li{margin:.2mm 0}
.cautions h2{margin:0}
}
@media screen and (max-width:600px){.pictures{grid-template-columns:1fr}.cautions ol{columns:1}.counts li{white-space:normal}}
`.replaceAll('\n', '');
