// The look of the page of the morning: landscape, black ink alone is enough.

/** No quotes, angle brackets or ampersands: the renderer would escape them. */
export const morningStyle = `
@page{size:landscape;margin:9mm}
main{max-width:279mm}
h2{font-size:1.05em;margin:3mm 0 1mm}
.strip{display:flex;flex-wrap:wrap;gap:1mm 6mm;border:.6mm solid var(--ink);padding:1mm 3mm;margin:1mm 0}
.strip p{margin:0}.strip .blank{height:3.6mm}
.held{border:1.2mm solid #b00000;padding:2.5mm;margin:2mm 0;break-inside:avoid;background:repeating-linear-gradient(135deg,#b00000 0 .5mm,#fff 0 2.4mm);print-color-adjust:exact;-webkit-print-color-adjust:exact}
.held>div{background:var(--paper);padding:1mm 3mm;border:.3mm solid var(--ink)}
.held h2{border:0;margin:0;font-size:1.3em;letter-spacing:.08em}
.rows table{font-size:.9em}
.rows td,.rows th{padding:.8mm 1mm}
.rows th,.held th{overflow-wrap:normal}
.rows .long{width:24mm}
.rows .middle{width:20mm}.rows .blank{height:4mm}.rows .tick{width:3.4mm;height:3.4mm}
.rows th:nth-child(1){width:23mm}.rows th:nth-child(3){width:19mm}.rows th:nth-child(5){width:46mm}.rows th:nth-child(9){width:42mm}
.rows td p{margin:.2mm 0}
.columns{display:grid;grid-template-columns:repeat(4,1fr);gap:0 5mm;margin-top:1mm}
.columns h2{margin-top:0}
.columns ul{padding-left:4mm}
@media print{body{font-size:8pt;line-height:1.2}h1{font-size:1.3em;margin:0}h2{margin:1.5mm 0 .5mm}.held{padding:2mm;margin:1mm 0}.held .blank{height:3.6mm}.rows td,.rows th{padding:.4mm 1mm}table{margin:0 0 1.5mm}li{margin:.2mm 0}}
@media screen and (max-width:600px){.columns{display:block}.rows th:nth-child(n){width:100%}}
`.replaceAll('\n', '');
