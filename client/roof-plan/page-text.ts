import { style } from './style.ts';

/** The text of the page of a roof plan: one style and one script, both by nonce, and nothing else may run or be loaded. */
export function pageText({ title, script, nonce }: { title: string; script: string; nonce: string }): string {
  const policy = `default-src 'none'; style-src 'nonce-${nonce}'; script-src 'nonce-${nonce}'`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style nonce="${nonce}">${style}</style>
</head>
<body>
<div id="page"></div>
<script nonce="${nonce}" src="${escaped(script)}"></script>
</body>
</html>
`;
}

const marks: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (mark) => marks[mark] as string);
