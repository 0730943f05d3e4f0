// A page of the book: no script, nothing fetched but pictures beside it, one style.
import type { Content } from '../sheets/element.ts';
import { pageWith } from '../sheets/page.ts';

/** No quotes, angle brackets or ampersands: the renderer would escape them. */
const own = `
figure{display:inline-block;margin:1mm 3mm 2mm 0;max-width:100%;vertical-align:top;break-inside:avoid}
figure img{display:block;max-width:100%;max-height:75mm;min-height:8mm;border:.2mm solid var(--rule)}
figcaption{font-size:.86em;max-width:90mm}
dl{display:grid;grid-template-columns:max-content 1fr;gap:.6mm 4mm;margin:1mm 0}
dt{font-weight:bold}dd{margin:0}
a{color:inherit}
.frame{border:.6mm solid var(--ink);padding:1mm 3mm;margin:2mm 0;break-inside:avoid}
.leaf{break-before:page}
.unknown{font-style:italic}
.contents{columns:2;column-gap:6mm}
td p{margin:.3mm 0}
.dated th:first-child{overflow-wrap:normal;width:24mm}
h2+p{break-after:avoid}
h2.leaf+p+.leaf{break-before:auto}
.dated td:nth-child(3){min-width:17mm}
svg.chart{max-width:100%;height:auto}
@media screen{.leaf{border-top:.4mm solid var(--rule);margin-top:6mm;padding-top:2mm}}
@media screen and (max-width:600px){.contents{columns:1}dl{grid-template-columns:1fr}dd{margin:0 0 1.4mm}.dated th:first-child{width:100%}.wide td:empty{display:none}}
`.replaceAll('\n', '');

/** The whole text of a page with one heading of the first level. `more` is style that this page alone needs. */
export function bookPage(title: string, body: readonly Content[], more = ''): string {
  return pageWith({ title, body, shows: 'beside', more: `${own}${more}` });
}
