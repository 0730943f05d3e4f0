// From an empty folder to a rig with an inspection, by questions and answers only.
import assert from 'node:assert/strict';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Editor } from '../editor.ts';
import { asks, choose, lineWith, say, untilListed, widget } from '../quick-input.ts';
import { errors, eventually, type Scenario } from '../scenario.ts';

const read = (editor: Editor, file: string) => readFileSync(join(editor.workspace, file), 'utf8');

export const records: Scenario = {
  name: 'records',
  steps: [
    {
      name: 'an empty folder: what kind of rig is it',
      async run(editor) {
        await untilListed(editor, 'Rigseam: New Rig Record');
        await editor.command('Rigseam: New Rig Record');
        await asks(editor, /What kind of rig/);
        // A file of somebody's that bears the name of the rig to be.
        writeFileSync(join(editor.workspace, 'Plover.rig'), '# notes of mine\n');
      },
    },
    {
      name: 'a name that is none is told while it is typed',
      async run(editor) {
        await choose(editor, 'Travel trailer');
        await asks(editor, /Its name/);
        await widget(editor).locator('input[type=text]').first().fill('28-footer');
        await asks(editor, /is no name/);
      },
    },
    {
      name: 'a length without a unit is not taken',
      async run(editor) {
        await say(editor, 'Plover');
        await asks(editor, /In which units/);
        await choose(editor, 'Feet and inches');
        await asks(editor, /How long is the roof/);
        await say(editor, '28');
        await asks(editor, /unit/);
      },
    },
    {
      name: 'back, and nothing is lost',
      async run(editor) {
        await say(editor, '28 ft');
        await asks(editor, /How wide/);
        await editor.press('Escape');
        await asks(editor, /How long is the roof/);
        assert.equal(await widget(editor).locator('input[type=text]').first().inputValue(), '28 ft');
        await widget(editor).locator('.codicon-quick-input-back').click();
        await asks(editor, /In which units/);
        await editor.press('Enter');
        await asks(editor, /How long is the roof/);
        await editor.press('Enter');
        await asks(editor, /How wide/);
        await say(editor, '8 ft');
      },
    },
    {
      name: 'the membrane, from what is known of surfaces',
      async run(editor) {
        await asks(editor, /covered with/);
        await widget(editor).locator('.monaco-list-row', { hasText: 'Rubber sheet' }).waitFor();
      },
    },
    {
      name: 'the parts, the usual ones ticked',
      async run(editor) {
        await choose(editor, 'epdm');
        await asks(editor, /What is on the roof/);
        await widget(editor).locator('.monaco-list-row', { hasText: 'Skylight' }).first().waitFor();
      },
    },
    {
      name: 'slide-outs, age, policy: the record is written and checks clean',
      async run(editor) {
        await editor.press('Enter');
        await asks(editor, /How many slide-outs/);
        await choose(editor, '1');
        await asks(editor, /along the side/);
        await say(editor, '11 ft');
        await asks(editor, /come out/);
        await say(editor, '3 ft');
        await asks(editor, /which side/);
        await choose(editor, 'Road side');
        await asks(editor, /new or used/);
        await choose(editor, 'Used');
        await asks(editor, /When did it come/);
        await say(editor, '2021-04-10');
        await asks(editor, /no policy\.rig yet/);
        await choose(editor, 'Write policy.rig too');
        await editor.page.locator('.tab.active', { hasText: 'Plover-2.rig' }).waitFor();
        await lineWith(editor, 'found 2021-04-10 all with unknown');
        assert.equal(read(editor, 'Plover.rig'), '# notes of mine\n', 'the file that was there is as it was');
        assert.match(read(editor, 'Plover-2.rig'), /^rig Plover under Home \{$/m);
        assert.ok(existsSync(join(editor.workspace, 'policy.rig')));
        await eventually(
          'lenses over the new rig',
          async () => (await editor.page.locator('.codelens-decoration').count()) > 0,
          30,
        );
        assert.deepEqual(
          (await errors(editor)).filter((text) => /error/i.test(text)),
          [],
        );
      },
    },
    {
      name: 'an inspection: who and when',
      async run(editor) {
        await editor.command('Rigseam: Record Inspection');
        await asks(editor, /Who looked/);
        await say(editor, 'K. Osei');
        await asks(editor, /On which day/);
        await editor.press('Enter');
      },
    },
    {
      name: 'the first seam, with the gauges and what was found last',
      async run(editor) {
        await asks(editor, /Plover: curbside – edge, 28 ft \(1\/\d+\)/);
        await asks(editor, /rubs off on a thumb/);
        await asks(editor, /Last: /);
      },
    },
    {
      name: 'a part of it, a note, wet: and the seam is asked for again',
      async run(editor) {
        await choose(editor, 'Only a part');
        await asks(editor, /Which part/);
        await say(editor, '30 ft to 31 ft');
        await asks(editor, /beyond its end/);
        await say(editor, '6 ft to 9 ft');
        await asks(editor, /curbside from 6 ft to 9 ft/);
        await choose(editor, 'Note');
        await asks(editor, /to be remembered/);
        await say(editor, 'by the rail');
        await asks(editor, /by the rail/);
        await choose(editor, 'hairline');
        await asks(editor, /Said: hairline from 6 ft to 9 ft/);
      },
    },
    {
      name: 'stopped: nothing is written without a word',
      async run(editor) {
        await choose(editor, 'sound');
        await asks(editor, /\(2\/\d+\)/);
        await editor.press('Escape');
        await asks(editor, /Stop here\?/);
      },
    },
    {
      name: 'gone on, and the rest is sound: one block, and undo takes it away',
      async run(editor) {
        await choose(editor, 'Go on');
        await asks(editor, /\(2\/\d+\)/);
        await choose(editor, 'lifting');
        await asks(editor, /\(3\/\d+\)/);
        await choose(editor, 'The rest is sound');
        await lineWith(editor, 'inspected');
        await lineWith(editor, 'curbside hairline from 6 ft to 9 ft note "by the rail"');
        await lineWith(editor, 'rest sound');
        assert.deepEqual(
          (await errors(editor)).filter((text) => /error/i.test(text)),
          [],
        );
      },
    },
    {
      name: 'undone in one step',
      async run(editor) {
        await editor.page.locator('.editor-instance .view-lines').first().click();
        await editor.undo();
        await eventually('no inspection', async () => (await editor.line('inspected').count()) === 0);
      },
    },
  ],
};
