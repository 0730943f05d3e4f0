import { DOMParser } from '@xmldom/xmldom';
import ICAL from 'ical.js';
import MarkdownIt from 'markdown-it';
import Papa from 'papaparse';
import { beforeAll, describe, expect, it } from 'vitest';
import { bytesOf } from '../../language/documents/bytes.ts';
import { documentsOf } from '../../language/documents/index.ts';
import { projectOf } from '../project/workspace.ts';
import { dates } from './examples.ts';
import { html, textOf } from './sheets.ts';
import { readWorkbook } from './workbook-read.ts';

// Whatever a person writes into a free field comes out as text in every paper: no formula, no markup, no broken calendar.

const hostile = [
  '=HYPERLINK(1)&cmd',
  '+1+1',
  '-1-1',
  '@SUM(A1)',
  '<script>alert(1)</script>',
  '</script><img src=x onerror=alert(1)>',
  'BEGIN:VEVENT;SUMMARY:x,y\\\\nEND:VCALENDAR',
  '| cell | **bold** [a](javascript:alert(1)) `code`',
  '\u202Eright to left\u202C',
  'Zwölf Boxkämpfer 🚐🛠️ jagen',
  'x'.repeat(10_000),
];
/** Inside the quotes of the language. */
const quoted = (text: string) => `"${text.replaceAll('"', "'")}"`;

const record = (
  text: string,
) => `tape Strip { width 4 in  roll 50 ft at 58 USD  life 8 years, 15 years, 25 years  bonds-to epdm, solvent-lap }
sealant Lap {
  family solvent-lap
  bead 1 in by 1/4 in
  cartridge 10.3 fl-oz at 9.50 USD
}
policy P {
  currency USD
  labour 50 USD per h
  tax 6 % on materials
}
rig Odd under P {
  unit ${quoted(text)}
  built 2019-03
  roof 20 ft by 8 ft epdm
  cap rear
  cap front
  opening vent 16 in by 16 in at 6 ft, 3 ft
  sealed 2025-06-02 all with Lap by ${quoted(text)} lot ${quoted(text)} note ${quoted(text)}
  inspected 2026-10-01 by ${quoted(text)} {
    vent cracked note ${quoted(text)} photo ${quoted(text)}
    rest sound note ${quoted(text)}
  }
  leaked 2026-10-10 inside ${quoted(text)} suspect vent note ${quoted(text)}
  covered 2026-10-10 vent note ${quoted(text)} paper ${quoted(text)}
  struck 2026-10-20 by ${quoted(text)}
  tape rear with Strip because ${quoted(text)} note ${quoted(text)}
  seal vent with Lap by ${quoted(text)}
  quote ${quoted(text)} 900 USD for reseal note ${quoted(text)}
}
`;

async function writtenOf(text: string): Promise<ReadonlyMap<string, Uint8Array>> {
  const [view] = projectOf({ 'odd.rig': record(text) })
    .rigs('odd.rig')
    .filter(({ rig }) => rig.kind === 'rig');
  const files = await documentsOf({ kind: 'rig', view: view! }, dates);
  return new Map(files.map((file) => [file.name, bytesOf(file)]));
}

const markdown = new MarkdownIt({ html: true, linkify: false });
const text = (bytes: Uint8Array) => new TextDecoder('utf-8', { fatal: true }).decode(bytes);

describe.each(hostile.map((one) => [one.length > 60 ? `${one.slice(0, 20)} … ${one.length}` : one, one]))(
  'a record full of %s',
  (_, typed) => {
    let papers: ReadonlyMap<string, Uint8Array>;
    beforeAll(async () => {
      papers = await writtenOf(typed);
    }, 60_000);
    const ending = (end: string) => [...papers].filter(([name]) => name.endsWith(end));

    it('gives every paper', () => {
      expect([...papers.keys()].sort()).toEqual(
        [
          ...['md', 'csv', 'json', 'xlsx'].map((end) => `Odd.estimate.${end}`),
          ...['md', 'csv', 'json', 'ics'].map((end) => `Odd.schedule.${end}`),
          ...['worksheet.html', 'inspection.html', 'history.html', 'incident-1.html', 'roof.svg', 'ways.svg'].map(
            (end) => `Odd.${end}`,
          ),
        ].sort(),
      );
    });

    it('stays text in Markdown', () => {
      for (const [name, bytes] of ending('.md')) {
        // The one picture is the chart that is written beside the estimate.
        const rendered = markdown
          .render(text(bytes))
          .replace(/<img src="[^"/:]+\.ways\.svg" alt="What each way costs over the years">/g, '');
        expect(rendered, name).not.toMatch(/<script|<img|<a [^>]*javascript/i);
      }
    });

    it('is no formula in CSV', () => {
      for (const [name, bytes] of ending('.csv')) {
        const { data, errors } = Papa.parse<string[]>(text(bytes), { skipEmptyLines: true });
        expect(errors, name).toEqual([]);
        for (const cell of data.flat()) if (Number.isNaN(Number(cell))) expect(cell, name).not.toMatch(/^[=+\-@\t\r]/);
      }
    });

    it('breaks no JSON', () => {
      for (const [name, bytes] of ending('.json')) expect(() => JSON.parse(text(bytes)), name).not.toThrow();
    });

    it('breaks no line of the calendar', () => {
      for (const [name, bytes] of ending('.ics')) {
        const whole = text(bytes);
        for (const line of whole.split('\r\n')) {
          expect(new TextEncoder().encode(line).length, name).toBeLessThanOrEqual(75);
        }
        const calendar = new ICAL.Component(ICAL.parse(whole));
        const kinds = new Set(calendar.getAllSubcomponents().map((one) => one.name));
        for (const kind of kinds) expect(['vevent', 'vtodo', 'vtimezone'], name).toContain(kind);
        for (const event of calendar.getAllSubcomponents('vevent')) {
          expect(String(event.getFirstPropertyValue('summary'))).not.toBe('x,y');
        }
      }
    });

    it('is no markup in pages and pictures', () => {
      for (const [name, bytes] of ending('.html')) {
        const page = html(text(bytes));
        expect(page.errors, name).toEqual([]);
        expect(page.all.filter(({ tagName }) => tagName === 'script' || tagName === 'iframe')).toEqual([]);
        const attributes = page.all.flatMap(({ attrs }) => attrs);
        expect(attributes.filter((one) => /^on/.test(one.name) || /^javascript:/i.test(one.value))).toEqual([]);
      }
      for (const [name, bytes] of ending('.svg')) {
        const faults: string[] = [];
        const parsed = new DOMParser({
          onError: (level, message) => faults.push(`${level}: ${message}`),
        }).parseFromString(text(bytes), 'image/svg+xml');
        expect(faults, name).toEqual([]);
        expect(parsed.getElementsByTagName('script').length, name).toBe(0);
      }
    });

    it('is no formula in the workbook', async () => {
      const [, bytes] = ending('.xlsx')[0]!;
      const workbook = await readWorkbook(bytes);
      for (const sheet of workbook.worksheets) {
        sheet.eachRow((row) =>
          row.eachCell((cell) => {
            const formula = (cell as { formula?: string }).formula;
            if (formula) expect(formula, sheet.name).not.toMatch(/HYPERLINK|SUM\(A1\)|cmd/);
          }),
        );
      }
    });

    it('is still to be read in the service book', () => {
      const [, bytes] = ending('history.html')[0]!;
      const [root] = html(text(bytes)).all;
      const words = typed.slice(0, 12).replace(/[\u202A-\u202E\u2066-\u2069]/g, '');
      expect(textOf(root!), typed.slice(0, 40)).toContain(words.trim());
    });
  },
);
