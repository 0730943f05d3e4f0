/** The text of the page in a panel: one style and one script, both by nonce, and nothing else may run or be loaded. */
export function pageText({ title, style, script }: Readonly<Record<'title' | 'style' | 'script', string>>): string {
  const nonce = newNonce();
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

function newNonce(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
