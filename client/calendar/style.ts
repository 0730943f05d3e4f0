/** How the page of a calendar looks: the colours of the editor's theme, sizes in em, a pattern for each kind of entry. */
export const calendarStyle = `
body { padding: 0.8em 1em; color: var(--ink); background: var(--paper); font: var(--vscode-font-size, 13px)/1.4 var(--vscode-font-family, sans-serif);
  --ink: var(--vscode-editor-foreground, CanvasText); --paper: var(--vscode-editor-background, Canvas);
  --ring: var(--vscode-focusBorder, Highlight); --line: var(--vscode-editorIndentGuide-activeBackground1, var(--ink)) }
body.vscode-high-contrast, body.vscode-high-contrast-light { --ring: var(--vscode-contrastActiveBorder, Highlight); --line: var(--vscode-contrastBorder, var(--ink)) }
h1 { font-size: 1.35em; margin: 0 0 0.2em; font-weight: 600; overflow-wrap: anywhere }
h2 { font-size: 1.1em; margin: 1em 0 0.3em; font-weight: 600 }
p { margin: 0.3em 0; overflow-wrap: anywhere }
.tools { display: flex; flex-wrap: wrap; gap: 0.5em 0.8em; align-items: center; margin: 0.6em 0 }
.month { min-width: 9em; font-size: 1.1em; font-weight: 600; margin: 0; text-align: center }
button, select { font: inherit; min-height: 1.95em; padding: 0.2em 0.7em; border-radius: 0.2em; color: var(--vscode-button-secondaryForeground, var(--ink));
  background: var(--vscode-button-secondaryBackground, var(--paper)); border: 1px solid var(--vscode-button-border, var(--vscode-contrastBorder, var(--ink))) }
select { color: var(--vscode-dropdown-foreground, var(--ink)); background: var(--vscode-dropdown-background, var(--paper)); max-width: 18em }
button:not(:disabled) { cursor: pointer }
button:disabled { opacity: 0.55 }
:focus-visible { outline: 0.18em solid var(--ring); outline-offset: -0.1em }
.note { border-left: 0.3em solid var(--vscode-editorWarning-foreground, var(--ink)); padding: 0.2em 0.6em }
table { border-collapse: collapse; width: 100%; table-layout: fixed; max-width: 80em }
th { font-weight: 600; text-align: left; padding: 0.2em 0.4em; overflow: hidden; text-overflow: ellipsis }
td { border: 1px solid var(--line); vertical-align: top; padding: 0; height: 5.2em }
td > div { position: relative;  min-height: 5em; padding: 0.2em 0.35em; cursor: pointer; overflow: hidden }
td.empty { border: none }
[aria-selected=true] > div { box-shadow: inset 0 0 0 0.15em var(--ring) }
.day { font-variant-numeric: tabular-nums; display: inline-block; min-width: 1.6em }
.today .day { background: var(--ink); color: var(--paper); border-radius: 0.2em; text-align: center; font-weight: 700 }
.chip { display: flex; gap: 0.35em; align-items: baseline; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; font-size: 0.92em }
.chip span { overflow: hidden; text-overflow: ellipsis }
.mark { flex: none; width: 0.8em; height: 0.8em; border: 0.12em solid var(--ink); box-sizing: border-box; align-self: center }
.mark.overdue { background: var(--ink) }
.mark.due { border-radius: 50% }
.mark.visit { background: linear-gradient(135deg, var(--ink) 50%, transparent 50%) }
.mark.booked { background: repeating-linear-gradient(90deg, var(--ink) 0 0.1em, transparent 0.1em 0.28em) }
.mark.closed { background: repeating-linear-gradient(0deg, var(--ink) 0 0.1em, transparent 0.1em 0.28em) }
.hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap }
.legend { display: flex; flex-wrap: wrap; gap: 0.3em 1.2em; list-style: none; margin: 0.5em 0; padding: 0 }
.legend li { display: flex; align-items: center; gap: 0.45em }
.entries { list-style: none; margin: 0; padding: 0; max-width: 60em }
.entries button { display: flex; gap: 0.6em; width: 100%; text-align: left; border-color: transparent; background: none; color: inherit; padding: 0.25em 0.3em; align-items: baseline }
.entries button:hover { background: var(--vscode-list-hoverBackground, transparent) }
.entries .mark { align-self: center }
.why { display: block; font-size: 0.92em }
@media (max-width: 36em) { .chip span { display: none } .chip { display: inline-flex; margin-right: 0.2em } td { height: 3em } td > div { position: relative;  min-height: 2.8em } }
@media (forced-colors: active) { .mark { forced-color-adjust: none; --ink: CanvasText } }
`;
