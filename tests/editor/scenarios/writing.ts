// What helps while a record is written: its form, whole records and materials from the suggest list, ways out of findings.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { addDays } from '../../../language/values/calendar.ts';
import type { Editor } from '../editor.ts';
import { lineWith } from '../quick-input.ts';
import { eventually, type Scenario } from '../scenario.ts';

const now = new Date();
const today = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((n) => String(n).padStart(2, '0')).join('-');
const ago = (days: number) => addDays(today, -days);

const materials = `policy Pond { labour 20 USD per h  currency USD  season 01-01 to 12-31 }

sealant GreyBead {
  family       solvent-lap
  cartridge    10.3 fl-oz at 9 USD
  bonds-to     epdm, abs, solvent-lap
}

sealant AcreBead {
  family       solvent-lap
  cartridge    10.3 fl-oz at 6 USD
  never-on     epdm
}

tape PondStrip { width 4 in  roll 50 ft at 50 USD  bonds-to epdm, abs, solvent-lap }

cleaner PondWash { container 1 gal at 14 USD  covers 400 sq-ft per gal }
`;

const asTyped = `use    "materials.rig"

# Found behind a barn, bought for the price of its axle.
rig Lark   under Pond {
 roof 16 ft by 7 ft epdm # measured twice
    edge    curbside,roadside
  cap front
      cap rear
  opening vent 14 in by 14 in at 6 ft, 3 ft of abs
  opening   stack round 6 in at 10 ft, 2 ft of abs

      # What was done.
  found ${ago(200)} all with unknown
  stripped ${ago(13)} vent,stack
  sealed ${ago(12)} vent with   GreyBead
  inspected ${ago(10)} {\u0020
  curbside cracked # by the rail
        rest sound
 }


  # What is to be done.
  wash with PondWash before ${ago(20)}
  tape vent with PondStrip after ${ago(1)}
}
`;

const inForm = `use "materials.rig"

# Found behind a barn, bought for the price of its axle.
rig Lark under Pond {
  roof         16 ft by 7 ft  epdm  # measured twice
  edge         curbside, roadside
  cap          front
  cap          rear
  opening      vent        14 in by 14 in      at 6 ft, 3 ft   of abs
  opening      stack       round 6 in          at 10 ft, 2 ft  of abs

  # What was done.
  found     ${ago(200)} all with unknown
  stripped  ${ago(13)} vent, stack
  sealed    ${ago(12)} vent with GreyBead
  inspected ${ago(10)} {
    curbside    cracked  # by the rail
    rest        sound
  }

  # What is to be done.
  wash     with PondWash before ${ago(20)}
  tape     vent with PondStrip after ${ago(1)}
}
`;

/** A second rig, of which only some lines are brought into form. */
const half = `use "materials.rig"

rig Rook under Pond {
    roof   12 ft by 7 ft   epdm
    cap   front
    cap   rear
}
`;

/** Saves, and gives what is on disk then. */
async function saved(editor: Editor, file: string): Promise<string> {
  await editor.press('Control+s');
  await editor.page.locator('.tab.active.dirty').waitFor({ state: 'detached' });
  return readFileSync(join(editor.workspace, file), 'utf8');
}

/** The editor takes no form that comes after the next letter. */
async function enter(editor: Editor): Promise<void> {
  await editor.press('Enter');
  await editor.page.waitForTimeout(600);
}

const suggestions = (editor: Editor) => editor.page.locator('.suggest-widget.visible .monaco-list-row');
/** The labels of the suggest list as far as it is seen, from the top. */
async function suggested(editor: Editor): Promise<string[]> {
  const rows = await suggestions(editor).all();
  const placed = await Promise.all(
    rows.map(async (row) => ({
      label: (await row.locator('.label-name').textContent()) ?? '',
      at: Number(await row.getAttribute('data-index')),
    })),
  );
  return placed.sort((a, b) => a.at - b.at).map(({ label }) => label);
}

/** The number of the line of a file that begins with a text, from 1. */
function lineIn(text: string, start: string): number {
  const index = text.split('\n').findIndex((line) => line.trimStart().startsWith(start));
  assert.ok(index >= 0, `no line \`${start}\` in\n${text}`);
  return index + 1;
}

const said = async (editor: Editor, finding: RegExp) => (await editor.problems()).some((text) => finding.test(text));
const gone = (editor: Editor, finding: RegExp) =>
  eventually(`no ${finding}`, async () => !(await said(editor, finding)));

/** Opens the light bulb of a finding, in a column of its line, and takes a way out. */
async function mend(editor: Editor, start: string, column: number, finding: RegExp, fix: string): Promise<void> {
  await eventually(`${finding}`, () => said(editor, finding));
  await editor.goTo(lineIn(await saved(editor, 'lark.rig'), start), column);
  await editor.press('Control+.');
  const entry = editor.page.locator('.action-widget .monaco-list-row', { hasText: fix }).first();
  await entry.waitFor();
  await editor.screenshot(`light-bulb-${fix.replace(/\W+/g, '-').toLowerCase()}`);
  await entry.click();
}

/** A new line behind the records of the rig. */
async function newRecord(editor: Editor): Promise<void> {
  await editor.goTo(lineIn(inForm, '# What is to be done.') - 2, 1);
  await editor.press('End');
  await enter(editor);
}

export const writing: Scenario = {
  name: 'writing',
  files: { 'materials.rig': materials, 'lark.rig': asTyped, 'rook.rig': half },
  steps: [
    {
      name: 'a badly spaced file is brought into form, comments and all',
      async run(editor) {
        await editor.open('lark.rig');
        await editor.page.locator('.codelens-decoration').first().waitFor({ timeout: 40_000 });
        await editor.page.locator('.editor-instance .view-lines').first().click();
        await editor.command('Format Document');
        await lineWith(editor, 'stripped');
        await eventually('the form', async () => (await saved(editor, 'lark.rig')) === inForm);
      },
    },
    {
      name: 'of a selection, and nothing else',
      async run(editor) {
        await editor.open('rook.rig');
        await editor.goTo(lineIn(half, 'cap   front'), 1);
        await editor.press('Shift+End');
        await editor.command('Format Selection');
        const wanted = half.replace('    cap   front', '  cap          front');
        await eventually('one line in form', async () => (await saved(editor, 'rook.rig')) === wanted);
      },
    },
    {
      name: 'Enter brings the line above into form and indents the next',
      async run(editor) {
        await editor.goTo(lineIn(half, 'cap   rear'), 1);
        await editor.press('End');
        await enter(editor);
        await editor.type('edge   curbside,roadside');
        await enter(editor);
        await editor.type('found 2026-01-10 all');
        const wanted = `  cap          rear
  edge         curbside, roadside
  found 2026-01-10 all
}
`;
        await eventually('two lines in form', async () => (await saved(editor, 'rook.rig')).endsWith(wanted));
      },
    },
    {
      name: 'a closing brace goes below the heading of its block',
      async run(editor) {
        await enter(editor);
        await editor.type('inspected 2026-04-02 {');
        // The one that the editor has closed by itself.
        await editor.press('Delete');
        await enter(editor);
        await editor.type('rest   sound');
        await enter(editor);
        await editor.type('      }');
        const wanted = `  found     2026-01-10 all
  inspected 2026-04-02 {
    rest        sound
  }
}
`;
        await eventually('the block in form', async () => (await saved(editor, 'rook.rig')).endsWith(wanted));
      },
    },
    {
      name: 'a whole inspection from the list: every seam of the rig, today',
      async run(editor) {
        await editor.open('lark.rig');
        await newRecord(editor);
        await editor.type('insp');
        await eventually('a whole inspection in the list', async () =>
          (await suggested(editor)).includes('inspected { … }'),
        );
        await editor.screenshot('05a-in-the-list');
        await suggestions(editor).filter({ hasText: 'inspected { … }' }).first().dblclick();
        await lineWith(editor, `inspected ${today} {`);
        for (const seam of ['curbside', 'rear', 'roadside', 'front', 'vent', 'stack'])
          await lineWith(editor, `${seam} not-seen`);
      },
    },
    {
      name: 'taken back in one step',
      async run(editor) {
        await editor.press('Escape');
        await editor.press('Escape');
        await editor.undo();
        await eventually('no inspection of today', async () => (await editor.line('not-seen').count()) === 0);
        await editor.command('File: Revert File');
        await eventually('as it was', async () => (await saved(editor, 'lark.rig')) === inForm);
      },
    },
    {
      name: 'materials: what bonds before what does not, which says why',
      async run(editor) {
        await eventually('the bare seam', () => said(editor, /`stack` was stripped/));
        await newRecord(editor);
        await editor.type(`sealed ${today} stack with `);
        await eventually('what bonds first', async () => (await suggested(editor))[0] === 'GreyBead');
        await editor.screenshot('07a-all-materials');
        await editor.type('Bead');
        await eventually('both', async () => (await suggested(editor)).join(' ') === 'GreyBead AcreBead');
        await editor.press('ArrowDown');
        const details = editor.page.locator('.suggest-details-container');
        if (!(await details.isVisible())) await editor.press('Control+Space');
        await eventually('why not', async () => /must not be used/.test((await details.textContent()) ?? ''));
      },
    },
    {
      name: 'the one that bonds is taken, and the bare seam is no finding any more',
      async run(editor) {
        await editor.press('ArrowUp');
        await editor.press('Tab');
        await lineWith(editor, `sealed ${today} stack with GreyBead`);
        await editor.press('Escape');
        assert.match(await saved(editor, 'lark.rig'), /stack with GreyBead\n/);
        await gone(editor, /`stack` was stripped/);
      },
    },
    {
      name: 'a crack is followed up from the light bulb',
      async run(editor) {
        await mend(editor, 'curbside    cracked', 6, /curbside is cracked/, 'Follow up: `strip curbside');
        await eventually('that it is planned', () => said(editor, /is cracked.*It is planned: `strip before/));
        assert.match(await saved(editor, 'lark.rig'), /^ {2}strip {4}curbside before \d{4}-\d\d-\d\d$/m);
      },
    },
    {
      name: 'a plan that is past is put off',
      async run(editor) {
        const finding = /This was to be done by/;
        await mend(editor, 'wash ', 4, finding, 'Put off: `before');
        await gone(editor, finding);
        const put = /^ {2}wash {5}with PondWash before (\S+)$/m.exec(await saved(editor, 'lark.rig'));
        assert.ok(put?.[1] && put[1] >= today, `put off to ${put?.[1]}`);
      },
    },
    {
      name: 'tape waits until the bead is cured',
      async run(editor) {
        const finding = /tape may go over it after/;
        await mend(editor, 'tape ', 14, finding, 'Wait until');
        await gone(editor, finding);
        const wait = /^ {2}tape {5}vent with PondStrip after (\S+)$/m.exec(await saved(editor, 'lark.rig'));
        assert.ok(wait?.[1] && wait[1] > today, `waits until ${wait?.[1]}`);
      },
    },
  ],
};
