/**
 * How the page of a roof plan looks: the colours of the editor's theme, sizes in em. Patterns keep their colours on light
 * themes, are muted on dark ones, and are ink on paper alone where contrast is high.
 */
export const style = `
body { padding: 0.8em 1em; color: var(--ink); background: var(--paper); font: var(--vscode-font-size, 13px)/1.45 var(--vscode-font-family, sans-serif);
  --ink: var(--vscode-editor-foreground, CanvasText); --paper: var(--vscode-editor-background, Canvas);
  --ring: var(--vscode-focusBorder, Highlight); --line: var(--ink); --lit: var(--vscode-charts-blue, #0b62c4); --water: var(--vscode-charts-blue, #2f6fa5) }
body.vscode-high-contrast, body.vscode-high-contrast-light { --ring: var(--vscode-contrastActiveBorder, Highlight); --lit: var(--vscode-contrastActiveBorder, Highlight); --water: var(--ink) }
h1 { font-size: 1.35em; margin: 0 0 0.2em; font-weight: 600; overflow-wrap: anywhere }
h2 { font-size: 1em; margin: 1em 0 0.3em; font-weight: 600 }
p { margin: 0.3em 0; overflow-wrap: anywhere }
.tools { display: flex; flex-wrap: wrap; gap: 0.5em 1.2em; align-items: center; margin: 0.6em 0 }
fieldset { border: 0; margin: 0; padding: 0; display: flex; flex-wrap: wrap; gap: 0.2em 1em; min-width: 0 }
legend { float: left; padding: 0; margin-right: 0.2em; font-weight: 600; line-height: 1.85em }
label { display: inline-flex; align-items: center; gap: 0.35em; min-height: 1.85em; cursor: pointer }
input[type=radio] { width: 1.1em; height: 1.1em; margin: 0; accent-color: var(--ring) }
button { font: inherit; min-height: 1.95em; padding: 0.2em 0.8em; cursor: pointer; border-radius: 0.2em;
  color: var(--vscode-button-secondaryForeground, var(--ink)); background: var(--vscode-button-secondaryBackground, transparent);
  border: 1px solid var(--vscode-button-border, var(--vscode-contrastBorder, var(--ink))) }
button:hover { background: var(--vscode-button-secondaryHoverBackground, transparent) }
:focus-visible { outline: 0.18em solid var(--ring); outline-offset: 0.12em }
.note { border-left: 0.3em solid var(--vscode-editorWarning-foreground, var(--ink)); padding: 0.2em 0.6em }
.picture { overflow-x: auto; padding: 0.25em 0 }
.picture > svg { display: block; width: 100%; min-width: 44em; max-width: 100em; height: auto }
.detail { min-height: 2.9em }
.legend { display: flex; flex-wrap: wrap; gap: 0.3em 1.2em; list-style: none; margin: 0.4em 0; padding: 0 }
.legend li { display: flex; align-items: center; gap: 0.45em }
.swatch { width: 2.4em; height: 1.3em; flex: none; overflow: visible }
.elsewhere { list-style: none; margin: 0; padding: 0 }
.elsewhere button { display: flex; align-items: center; gap: 0.6em; width: 100%; text-align: left; border-color: transparent; color: inherit; background: none; padding: 0.25em 0.3em }
.elsewhere button[aria-current] { border-color: var(--lit); font-weight: 600 }
.hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap }
.roof-ink { fill: var(--ink) }
.roof-line, .roof-mark { stroke: var(--line) }
.roof-paper { fill: none }
.roof-water { stroke: var(--water) }
[data-wet] { fill: var(--water) }
g.seam { cursor: pointer }
g[data-item] { outline: none }
g.seam:hover .roof-line { stroke-width: 0.6 }
g.seam:hover text { text-decoration: underline }
g.lit text { font-weight: 700 }
g.lit [data-class] { stroke: var(--lit); stroke-width: 0.8 }
g[data-item]:focus-visible { outline: 0.18em solid var(--ring); outline-offset: 0.12em }
.vscode-light .roof-mark, .vscode-light .roof-solid { stroke: #111; }
.vscode-dark .roof-tile { fill-opacity: 0.38 }
.vscode-dark .roof-tile.roof-blank { fill-opacity: 0.04 }
.vscode-dark .roof-tile.roof-solid { fill: var(--ink); fill-opacity: 1 }
.vscode-high-contrast .roof-tile, .vscode-high-contrast-light .roof-tile { fill: var(--paper) }
.vscode-high-contrast .roof-tile.roof-solid, .vscode-high-contrast-light .roof-tile.roof-solid { fill: var(--ink) }
@media (forced-colors: active) {
  .roof-ink, .roof-tile.roof-solid, [data-wet] { fill: CanvasText }
  .roof-tile { fill: Canvas }
  .roof-line, .roof-mark, .roof-water { stroke: CanvasText }
  g.lit [data-class] { stroke: Highlight }
}
@media (prefers-reduced-motion: no-preference) {
  body:not(.vscode-reduce-motion) [data-class] { transition: stroke-width 0.12s }
}
`;
