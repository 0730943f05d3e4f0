// The script of the page: draws what the extension tells, and tells the extension what a person does.
import { render } from 'preact';
import type { FromPage, Kept, Show, ToPage } from '../../roof-plan/messages.ts';
import { type Here, seamId, view } from './view.ts';

declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  setState(state: Kept): void;
};

const editor = acquireVsCodeApi();
const page = document.getElementById('page') as HTMLElement;
let shown: Show | undefined;
let here: Here = { at: undefined, over: undefined };

function draw(): void {
  if (!shown) return;
  render(view(shown, here, { say: (message) => editor.postMessage(message), move, focus }), page);
}

function move(next: Partial<Here>): void {
  const moved = { ...here, ...next };
  if (moved.at === here.at && moved.over === here.over) return;
  here = moved;
  draw();
}

const focus = (item: string) => document.getElementById(seamId(item))?.focus();

function show(next: Show): void {
  const lit = next.lit.join();
  const isMoved = lit !== shown?.lit.join();
  shown = next;
  // Who comes from the text by Tab arrives at the seam of the cursor.
  if (isMoved && next.lit[0] !== undefined && !document.hasFocus()) here = { ...here, at: next.lit[0] };
  draw();
  editor.setState({ ...next.rig, by: next.by });
  if (isMoved && next.lit[0] !== undefined && !document.hasFocus()) {
    document.getElementById(seamId(next.lit[0]))?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }
}

function download(name: string, text: string): void {
  const link = document.createElement('a');
  const address = URL.createObjectURL(new Blob([text], { type: 'text/html;charset=utf-8' }));
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

window.addEventListener('message', ({ data }: MessageEvent<ToPage>) => {
  if (data.kind === 'show') show(data);
  else if (data.kind === 'download') download(data.name, data.text);
});
editor.postMessage({ kind: 'ready' });
