// The steps of the main job: open the example, see figures; make three mistakes and see them named; mend one; write the papers.
import assert from 'node:assert/strict';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { addLine, errors, eventually, lineOf, rig, type Scenario, saysError, squiggles } from '../scenario.ts';

export const mainJob: Scenario = {
  name: 'main-job',
  workspace: 'examples/single',
  steps: [
    {
      name: 'open the example: colours, hints and lenses',
      async run(editor) {
        await editor.open('wren.rig');
        await eventually(
          'a code lens over the rig',
          async () =>
            (await editor.page.locator('.codelens-decoration', { hasText: /write estimate and schedule/i }).count()) >
            0,
          30,
        );
        await editor.goTo(lineOf(editor, 'edge '), 1);
        await eventually('inlay hints with the length of a seam and the total of the rig', async () => {
          const shown = (await editor.page.locator('.editor-instance .view-line').allTextContents()).map((line) =>
            line.replace(/\s/g, ' '),
          );
          const line = (start: string) => shown.find((text) => text.trimStart().startsWith(start)) ?? '';
          return /18 ft 8 in$/.test(line('edge')) && /USD$/.test(line('rig Wren'));
        });
        assert.equal(await squiggles(editor), 0, 'the example has no error');
      },
    },
    {
      name: 'hover shows the sum behind a figure',
      async run(editor) {
        await editor.goTo(lineOf(editor, 'opening      galley-vent'), 17);
        await editor.command('Show or Focus Hover');
        await eventually('a hover with the perimeter', async () =>
          /5 ft 4 in[\s\S]*2 \* \(along \+ across\)[\s\S]*16 in/.test(
            (await editor.page.locator('.monaco-hover').allInnerTexts()).join(' '),
          ),
        );
      },
    },
    {
      name: 'a length without a unit',
      async run(editor) {
        await editor.press('Escape');
        const line = lineOf(editor, 'slide ');
        const column = (rig(editor).split('\n')[line - 1] as string).indexOf('6 ft') + 1;
        await editor.goTo(line, column + 1);
        for (let i = 0; i < ' ft'.length; i++) await editor.press('Delete');
        await eventually('one squiggle on the line that is wrong', async () => (await squiggles(editor)) === 1);
        await eventually('the message in the problems panel', () => saysError(editor, /no unit|length is expected/));
        assert.equal(
          (await errors(editor)).filter((text) => !text.includes(`Ln ${line},`) && /error/i.test(text)).length,
          0,
          'the rest of the file stays clean',
        );
      },
    },
    {
      name: 'the unit comes back and the squiggle goes',
      async run(editor) {
        const line = lineOf(editor, 'slide ');
        const column = (rig(editor).split('\n')[line - 1] as string).indexOf('6 ft') + 1;
        await editor.goTo(line, column + 1);
        await editor.type(' ft');
        await eventually('no squiggle', async () => (await squiggles(editor)) === 0);
      },
    },
    {
      name: 'a wrong seam name',
      async run(editor) {
        await addLine(editor, '  sealed    2026-08-01 fridge-vnt with LevelLap');
        await eventually('the message with the seam that is meant', () =>
          saysError(editor, /did you mean `fridge-vent`/),
        );
        await eventually('one squiggle', async () => (await squiggles(editor)) === 1);
      },
    },
    {
      name: 'mended by a quick fix',
      async run(editor) {
        const last = rig(editor).trimEnd().split('\n').length;
        await editor.goTo(last, '  sealed    2026-08-01 fri'.length);
        await editor.press('Control+.');
        const fix = editor.page.locator('.action-widget .monaco-list-row', { hasText: 'fridge-vent' });
        await fix.first().waitFor();
        await editor.screenshot('06a-the-quick-fix-offered');
        await editor.press('Enter');
        await eventually('no squiggle', async () => (await squiggles(editor)) === 0);
      },
    },
    {
      name: 'tape over sealant that is 20 days old',
      async run(editor) {
        const last = rig(editor).trimEnd().split('\n').length + 1;
        await editor.goTo(last, 1);
        await editor.type('  taped     2026-08-21 fridge-vent with SeamStrip4\n');
        await eventually('the refusal with the first allowed date', () => saysError(editor, /2026-08-31/));
      },
    },
    {
      name: 'undone, and the file is as it was',
      async run(editor) {
        await editor.command('File: Revert File');
        await eventually('no squiggle', async () => (await squiggles(editor)) === 0);
      },
    },
    {
      name: 'write estimate and schedule',
      async run(editor) {
        await editor.command('Rigseam: Write Estimate and Schedule');
        const out = join(editor.workspace, 'rigseam-out');
        const names = [
          'estimate.md',
          'estimate.csv',
          'estimate.json',
          'schedule.md',
          'schedule.csv',
          'schedule.ics',
          'schedule.json',
          'worksheet.html',
          'inspection.html',
          'roof.svg',
          'ways.svg',
          'history.html',
          'estimate.xlsx',
        ].map((end) => join(out, `Wren.${end}`));
        await eventually('the files', async () => names.every((name) => existsSync(name)), 30);
        await editor.page.locator('.tab', { hasText: 'Wren.estimate.md' }).waitFor();
        assert.match(readFileSync(names[0] as string, 'utf8'), /USD/);
      },
    },
    {
      name: 'a file that a person edited is asked about',
      async run(editor) {
        const file = join(editor.workspace, 'rigseam-out/Wren.estimate.md');
        writeFileSync(file, `${readFileSync(file, 'utf8')}\nA line of my own.\n`);
        await editor.open('wren.rig');
        await editor.command('Rigseam: Write Estimate and Schedule');
        const dialog = editor.page.locator('.monaco-dialog-box');
        await dialog.waitFor();
        await editor.screenshot('10a-the-question');
        await editor.press('Escape');
        await dialog.waitFor({ state: 'hidden' });
        assert.match(readFileSync(file, 'utf8'), /A line of my own\./);
      },
    },
  ],
};
