// What the bundle begins with: the same file is the Node process and the worker in a browser.
if ('importScripts' in globalThis) void import('./browser.ts');
else void import('./main.ts');
