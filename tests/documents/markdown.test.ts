import fc from 'fast-check';
import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { plain, right, table } from '../../language/documents/markdown.ts';
import { paper, papers, papersOfText } from './examples.ts';

// The renderer that many editors preview with; it knows nothing of our escapes.
const renderer = new MarkdownIt({ html: true, linkify: false });
const unescaped = (html: string) =>
  html.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&');
const asShown = (text: string) => text.replace(/\s+/g, ' ').trim();

const typed = fc.string({
  unit: fc.oneof(
    fc.constantFrom(...'\\`*_[]()<>|~#$&;!=+-.:1 \n\t"\''),
    fc.constantFrom('</script>', '<!--', '&amp;', '&#39;', '**', '![', '](', '```', '---', '| --- |', '1. ', '🚐', 'é'),
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 2 }),
  ),
  maxLength: 12,
});

describe('what people typed', () => {
  it('is shown as typed in a table cell', () => {
    fc.assert(
      fc.property(typed, (text) => {
        fc.pre(!text.includes('\u0000'));
        const html = renderer.render(table([right('a'), right('b')], [[plain(text), 'end']]));
        const cells = [...html.matchAll(/<td[^>]*>(.*?)<\/td>/gs)].map(([, cell]) => unescaped(cell ?? ''));
        expect(cells).toEqual([asShown(text), 'end']);
      }),
    );
  });

  it('is shown as typed at the beginning of a list item', () => {
    fc.assert(
      fc.property(typed, (text) => {
        fc.pre(!text.includes('\u0000') && asShown(text) !== '');
        const html = renderer.render(`- ${plain(text)}`).trim();
        expect(unescaped(html)).toBe(`<ul>\n<li>${asShown(text)}</li>\n</ul>`);
      }),
    );
  });

  it('never becomes markup in a paper', () => {
    const text = `rig Odd {\n  unit "=1+2 | *x* <b> </script> $a$ \`c\`"\n  roof 20 ft by 8 ft epdm\n  cap rear\n  quote "[shop](http://x) 🚐 | <img src=x>" 100 USD for recoat until 2026-12-31\n  inspect\n}\n`;
    const written = papersOfText(text);
    const estimate = renderer.render(paper('Odd.estimate.md', written));
    expect(unescaped(estimate)).toContain('Unit =1+2 | *x* <b> </script> $a$ `c`.');
    expect(estimate).not.toMatch(/<(b|script|code|em)>/);
    const schedule = renderer.render(paper('Odd.schedule.md', written));
    expect(unescaped(schedule)).toContain('[shop](http://x) 🚐 | <img src=x>');
    expect(schedule).not.toMatch(/<(a|img) /);
  });
});

describe('a length with a decimal', () => {
  it('is no number of a list, and a number with a full stop is', () => {
    expect(plain('6.8 m on hand')).toBe('6.8 m on hand');
    expect(plain('6. of June')).toBe('6\\. of June');
  });
});

describe('the estimate of a rig', () => {
  const text = `
tape Strip4 { width 4 in  roll 25 ft at 31.00 USD  life 15 years  bonds-to epdm, aluminium }
sealant Lap {
  family solvent-lap
  cartridge 10.3 fl-oz at 9.50 USD
  bead 1 in by 1/4 in
  coats at most 3
}
policy Home { currency USD  labour 20 USD per h }
rig Teal under Home {
  roof 20 ft by 8 ft epdm
  edge curbside, roadside wide 1 3/4 in between epdm and aluminium
  PLAN
}
`;

  it('names the defaults of the comparison even where nothing is planned', () => {
    const estimate = papersOfText(text.replace('PLAN', '')).get('Teal.estimate.md') as string;
    expect(estimate).toContain('Nothing is planned');
    expect(estimate).toContain('| touch up | 10 %, 15 %, 20 % | from memory |');
  });

  it('does not call the longest offcut all that is left', () => {
    const estimate = papersOfText(text.replace('PLAN', 'tape curbside, roadside with Strip4')).get(
      'Teal.estimate.md',
    ) as string;
    expect(estimate).toContain('4 ft 2 in left over in one length.');
  });
});

describe('the Markdown papers', () => {
  const cellsOf = (row: string) => row.split(/(?<!\\)\|/).length;
  it.each([...papers.keys()].filter((name) => name.endsWith('.md')))('%s has whole tables', (name) => {
    const tables = paper(name)
      .split('\n\n')
      .filter((block) => block.startsWith('|'));
    expect(tables.length).toBeGreaterThan(0);
    for (const block of tables) expect(new Set(block.split('\n').map(cellsOf)).size, block).toBe(1);
    const rendered = renderer.render(paper(name));
    expect(rendered.match(/<table>/g)).toHaveLength(tables.length);
    expect(paper(name)).not.toMatch(/undefined|NaN|\[object|null/);
  });

  it('tell the estimate from the job to the cautions', () => {
    const headings = [...paper('Wren.estimate.md').matchAll(/^#+ (.*)$/gm)].map(([, title]) => title);
    expect(headings).toEqual([
      'Estimate: Wren',
      'The advice',
      'The work',
      'To buy',
      'Cutting list: SeamStrip4',
      'Take-off',
      'Labour',
      'Total',
      'Open questions',
      'The ways over the years',
      'What is assumed',
      ...(paper('Wren.estimate.md').includes('not planned') ? ['Due, but not planned'] : []),
      'Cautions',
    ]);
    expect(paper('Wren.estimate.md')).toMatch(/\| roll of 50 ft|1 roll, 58\.50 USD, proven cheapest/);
    expect(paper('Wren.estimate.md')).toContain('28 ft from the shelf');
    expect(paper('Wren.estimate.md')).toMatch(/\| 2 \| lay \| 73 ft 8 in \| 40 ft per h \| 1\.84 h \|/);
  });

  it('number the pieces of a cutting list from 1, each cut once', () => {
    const list = paper('Wren.estimate.md').split('## Cutting list')[1]?.split('\n## ')[0] ?? '';
    const numbers = [...list.matchAll(/[:;] (\d+) \(/g)].map(([, number]) => Number(number));
    expect(numbers.sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });

  it('have a box to tick for every task', () => {
    const { schedule } = JSON.parse(paper('Highmeadow.schedule.json'));
    const tasks = schedule.visits.flatMap((visit: { tasks: unknown[] }) => visit.tasks);
    expect(paper('Highmeadow.schedule.md').match(/^- \[ \] /gm)).toHaveLength(tasks.length);
  });

  it('name the kind or source of every assumption', () => {
    for (const name of ['Wren.estimate.md', 'Wren.schedule.md', 'Highmeadow.schedule.md']) {
      const rows = paper(name).split('## What is assumed\n\n')[1]?.split('\n\n')[0]?.split('\n').slice(2) ?? [];
      expect(rows.length).toBeGreaterThan(3);
      for (const row of rows) expect(row).toMatch(/\| (record|published|common practice|from memory)/);
    }
  });

  it('do not call due today what has been so for a while', () => {
    const text = `tape Strip { width 4 in  life 2 years, 3 years, 4 years }\nrig Old {\n  roof 20 ft by 8 ft epdm\n  cap rear\n  taped 2024-06-01 rear with Strip\n}\n`;
    const row = paper('Old.schedule.md', papersOfText(text))
      .split('\n')
      .find((line) => line.includes('in its second half'));
    expect(row).toMatch(/\| since \d+ days \|/);
  });
});

it('does not call free what has no price', () => {
  const text = `tape Strip { width 4 in  roll 50 ft  bonds-to epdm }
policy P { currency USD  labour 50 USD per h }
rig Odd under P {
  roof 20 ft by 8 ft epdm
  cap rear
  tape rear with Strip
}
`;
  const written = paper('Odd.estimate.md', papersOfText(text));
  expect(written).toMatch(/\| materials \| not known \| no price is known \|/);
  expect(written).not.toContain('| materials | 0.00 USD');
  // Neither a price nor a wage: there is no total at all.
  const bare = paper('Odd.estimate.md', papersOfText(text.replace('  labour 50 USD per h', '')));
  expect(bare).not.toContain('0.00 USD');
});

it('says why a plan has no day and which day would do in two sentences', () => {
  const text = `tape Strip { width 4 in  roll 50 ft  bonds-to epdm }
rig Odd {
  roof 20 ft by 8 ft epdm
  cap rear
  trip 2027-05-03 to 2027-05-08
  tape rear with Strip on 2027-05-05
}
`;
  const written = paper('Odd.schedule.md', papersOfText(text, { asOf: '2027-05-01', today: '2027-05-01' }));
  expect(written).toContain(
    'Odd is on a trip from 2027-05-03 to 2027-05-08. The first day that would do is 2027-05-09.',
  );
});
