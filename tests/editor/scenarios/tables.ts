// Many files at once: one record for several rigs, a table read into records, bookings that are followed as they are typed.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Editor } from '../editor.ts';
import { asks, choose, lineWith, say, untilListed, widget } from '../quick-input.ts';
import { eventually, type Scenario } from '../scenario.ts';

const read = (editor: Editor, file: string) => readFileSync(join(editor.workspace, file), 'utf8');
const panel = (editor: Editor) => editor.page.locator('.bulk-edit-panel');
const apply = (editor: Editor) => panel(editor).locator('.monaco-button', { hasText: 'Apply' }).click();
const table =
  'rig,kind,name,size,note\nBrook,joint,table-rail,9 ft,"from a table"\nCairm,joint,table-rail,9 ft,\nDell,joint,table-rail,9,\n';
const bookings = 'rig,first,last,who\nBrook,2027-06-10,2027-06-24,\nBrok,2027-07-01,2027-07-08,\n';

export const tables: Scenario = {
  name: 'tables',
  workspace: 'examples/fleet',
  steps: [
    {
      name: 'one record for two rigs: what is wrong is told while it is typed',
      async run(editor) {
        await editor.open('rigs/brook.rig');
        await untilListed(editor, 'Rigseam: Add Record to Many Rigs');
        await editor.command('Rigseam: Add Record to Many Rigs');
        await asks(editor, /Which rigs/);
        for (const name of ['Brook', 'Cairn'])
          await widget(editor)
            .locator('.monaco-list-row', { hasText: name })
            .first()
            .locator('.monaco-checkbox, input')
            .first()
            .click();
        await widget(editor).locator('.monaco-button', { hasText: 'OK' }).click();
        await asks(editor, /A record or a plan/);
        await widget(editor).locator('input[type=text]').first().fill('washd 2026-05-20');
        await asks(editor, /did you mean `washed`/);
      },
    },
    {
      name: 'the editor shows what would change, and nothing is written before',
      async run(editor) {
        await say(editor, 'washed 2026-05-20 note "for two"');
        await panel(editor).waitFor();
        await panel(editor).locator('.monaco-list-row', { hasText: '2026.rig' }).first().waitFor();
        assert.ok(!read(editor, 'rigs/brook/2026.rig').includes('for two'));
      },
    },
    {
      name: 'applied: each history has it where it belongs',
      async run(editor) {
        await apply(editor);
        for (const rig of ['brook', 'cairn'])
          await eventually(`a record of ${rig}`, async () =>
            /^ {2}washed +2026-05-20 note "for two"$/m.test(read(editor, `rigs/${rig}/2026.rig`)),
          );
      },
    },
    {
      name: 'a table of seams: wrong rows stand among the problems, good ones are shown first',
      async run(editor) {
        writeFileSync(join(editor.workspace, 'seams.csv'), table);
        await editor.command('Rigseam: Import Table');
        await asks(editor, /What does the table hold/);
        await choose(editor, 'seams');
        await asks(editor, /Which table/);
        await choose(editor, 'seams.csv');
        await panel(editor).locator('.monaco-list-row', { hasText: 'brook.rig' }).first().waitFor();
        assert.ok(!read(editor, 'rigs/brook.rig').includes('table-rail'));
      },
    },
    {
      name: 'applied: the good row is written, the others stand in the table',
      async run(editor) {
        await apply(editor);
        // A file that is open is left to be saved, like what is typed.
        await lineWith(editor, 'joint table-rail 9 ft note "from a table"');
        await editor.open('seams.csv');
        await eventually('problems at the rows', async () => {
          const problems = (await editor.problems()).join('\n');
          return /Did you mean `Cairn`/.test(problems) && /size: /.test(problems);
        });
      },
    },
    {
      name: 'bookings from a table: a rig that nobody knows is told in the table',
      async run(editor) {
        writeFileSync(join(editor.workspace, 'yard/bookings.csv'), bookings);
        const fleet = read(editor, 'yard/fleet.rig');
        writeFileSync(
          join(editor.workspace, 'yard/fleet.rig'),
          fleet.replace(/(\n *rigs .*\n)/, '$1  bookings     from "bookings.csv"\n'),
        );
        await editor.open('yard/bookings.csv');
        await eventually('the row', async () => /Did you mean `Brook`/.test((await editor.problems()).join('\n')));
      },
    },
    {
      name: 'mended in the table, not saved yet: the finding goes',
      async run(editor) {
        await editor.goTo(3, 4);
        await editor.type('o');
        await eventually('no row', async () => !/Did you mean `Brook`/.test((await editor.problems()).join('\n')));
        assert.ok(read(editor, 'yard/bookings.csv').includes('Brok'));
      },
    },
  ],
};
