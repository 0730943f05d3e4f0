// The two commands that write papers, and what each shows of what it wrote.
import { commands, env, UIKind, Uri, window } from 'vscode';
import type { Wanted } from './write.ts';

const named = (names: readonly string[], end: RegExp) => names.find((name) => end.test(name));
const reveal = (folder: Uri, name: string) => () =>
  commands.executeCommand('revealInExplorer', Uri.joinPath(folder, name));

/** "Write Estimate and Schedule": all papers; opens the estimate. */
export const allPapers: Wanted = {
  what: 'estimate and schedule',
  async shows(names, folder) {
    const estimate = named(names, /\.estimate(\.new\d*)?\.md$/) ?? names[0];
    const schedule = named(names, /\.schedule(\.new\d*)?\.md$/);
    const open = (name: string) => window.showTextDocument(Uri.joinPath(folder, name), { preview: false });
    if (estimate !== undefined) await open(estimate);
    return {
      ...(schedule !== undefined && { 'Open Schedule': () => open(schedule) }),
      ...(estimate !== undefined && { Reveal: reveal(folder, estimate) }),
    };
  },
};

/**
 * "Write Work Sheet": what is printed and taken up, and the schedule that it follows. A browser prints it: on the desktop
 * it is opened there.
 */
export const sheets: Wanted = {
  what: 'work sheet',
  only: 'sheets',
  async shows(names, folder) {
    const sheet = named(names, /\.worksheet(\.new\d*)?\.html$/) ?? named(names, /\.html$/);
    if (sheet === undefined) return {};
    const page = Uri.joinPath(folder, sheet);
    const isHere = env.uiKind === UIKind.Desktop && env.remoteName === undefined && page.scheme === 'file';
    if (isHere) await env.openExternal(page);
    else await commands.executeCommand('revealInExplorer', page);
    return { ...(isHere && { 'Open Again': () => env.openExternal(page) }), Reveal: reveal(folder, sheet) };
  },
};
