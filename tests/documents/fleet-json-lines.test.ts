// The rows of a fleet, read by an SQL engine that knows nothing of rigs: its answers are the numbers of our own papers.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type DuckDBConnection, DuckDBInstance } from '@duckdb/node-api';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { decimal, entriesBy, sumOf } from '../../language/documents/fleet/budget.ts';
import { lateBy, lateLines } from '../../language/documents/fleet/late.ts';
import { jsonSchemas } from '../../language/documents/schemas.ts';
import { fleetPapers, twoYards } from './fleets.ts';

const { scene, budget, texts } = fleetPapers({ 'a.rig': twoYards }, '2027-04-05', 'a.rig');
const kinds = ['rigs', 'seams', 'dues', 'visits', 'budget'] as const;
const linesOf = (kind: string) => (texts.get(`Yard.${kind}.jsonl`) as string).split('\n').slice(0, -1);

const folder = mkdtempSync(join(tmpdir(), 'rigseam-rows-'));
let sql: DuckDBConnection;
beforeAll(async () => {
  sql = await (await DuckDBInstance.create(':memory:')).connect();
  for (const kind of kinds) {
    const path = join(folder, `${kind}.jsonl`);
    writeFileSync(path, texts.get(`Yard.${kind}.jsonl`) as string);
    await sql.run(`CREATE TABLE ${kind} AS SELECT * FROM read_json('${path}', format = 'newline_delimited')`);
  }
});
afterAll(() => {
  sql.closeSync();
  rmSync(folder, { recursive: true, force: true });
});

/** Rows of plain numbers and texts. */
async function asked(query: string): Promise<unknown[][]> {
  const rows = (await sql.runAndReadAll(query)).getRowsJson();
  return rows as unknown[][];
}

describe('the rows', () => {
  const ajv = new Ajv2020({ strict: false, formats: { date: true } });
  it.each(kinds)('of %s are one object a line, valid by the published schema, all with the same keys', (kind) => {
    const lines = linesOf(kind);
    expect(lines.length).toBeGreaterThan(2);
    const valid = ajv.compile(jsonSchemas()[`${kind}.schema.json`] as object);
    const keys = new Set<string>();
    for (const line of lines) {
      const row = JSON.parse(line);
      valid(row);
      expect(valid.errors).toBe(null);
      keys.add(Object.keys(row).join());
      for (const value of Object.values(row)) expect(typeof value !== 'object' || value === null).toBe(true);
    }
    expect(keys.size).toBe(1);
    expect(valid({ ...JSON.parse(lines[0] as string), as_of: 20270405 })).toBe(false);
  });

  it('are typed as a table would have them', async () => {
    const types = Object.fromEntries(
      (await asked("SELECT column_name, data_type FROM information_schema.columns WHERE table_name = 'dues'")) as [
        string,
        string,
      ][],
    );
    expect(types).toMatchObject({ date: 'DATE', days_late: 'BIGINT', work: 'BOOLEAN', yard: 'VARCHAR' });
  });

  it('say of every rig, visit and due what the papers say', async () => {
    expect(await asked('SELECT count(*)::INT FROM rigs')).toEqual([[scene.rigs.length]]);
    expect(await asked('SELECT sum(visits)::INT, sum(overdue)::INT FROM rigs')).toEqual([
      [scene.schedule.visits.length, scene.schedule.dues.filter(({ status }) => status === 'overdue').length],
    ]);
    expect(await asked('SELECT count(*)::INT FROM dues d JOIN visits v ON d.settled_by = v.id')).toEqual([
      [scene.schedule.dues.filter(({ settledBy }) => settledBy !== undefined).length],
    ]);
    const [row] = await asked(
      "SELECT sum(length_mm)::DOUBLE FROM (SELECT DISTINCT rig, item, length_mm FROM seams) WHERE rig = 'Coot'",
    );
    expect(row?.map((mm) => Math.round(Number(mm) * 1000) / 1000)).toEqual(
      await asked("SELECT seam_length_mm::DOUBLE FROM rigs WHERE rig = 'Coot'").then(([one]) => one),
    );
    // 20 ft at 25.4 mm an inch.
    expect(await asked("SELECT length_mm::DOUBLE FROM seams WHERE rig = 'Coot' AND item = 'curbside'")).toEqual([
      [6096],
    ]);
  });

  it('give lateness by yard as the list of what is late does', async () => {
    const overdue = await asked(
      `SELECT yard, count(*)::INT, max(days_late)::INT FROM dues WHERE work AND status = 'overdue' GROUP BY yard ORDER BY yard`,
    );
    const lines = lateLines(scene);
    const sums = lateBy('yard', lines).filter(({ over }) => over > 0);
    expect(overdue).toEqual(
      sums.map(({ of, over }) => [
        of,
        over,
        Math.max(...lines.flatMap(({ yard, daysLate = 0 }) => (yard === of ? [daysLate] : []))),
      ]),
    );
    expect(overdue.length).toBeGreaterThan(0);
  });

  it('give money by month, class and currency as the budget does, to the cent', async () => {
    const rows = await asked(
      `SELECT currency, coalesce(month, ''), sum(amount::DECIMAL(18, 2))::VARCHAR FROM budget
       WHERE class = 'material' AND certainty = 'planned' GROUP BY ALL ORDER BY ALL`,
    );
    const ours = budget.currencies.flatMap((currency) =>
      entriesBy(
        budget.entries.filter(
          (entry) => entry.currency === currency && entry.class === 'material' && entry.certainty === 'planned',
        ),
        ({ month }) => month,
      ).map(([month, entries]) => [currency, month, decimal(sumOf(entries).planned.material, currency)]),
    );
    expect(rows).toEqual([...ours].sort((a, b) => (a.join() < b.join() ? -1 : 1)));
    expect(rows).toHaveLength(3);
    const totals = await asked(
      `SELECT r.rig FROM rigs r JOIN (SELECT rig, sum(amount::DECIMAL(18, 2)) AS all_of FROM budget WHERE certainty = 'planned' GROUP BY rig) b
       USING (rig) WHERE r.total::DECIMAL(18, 2) <> b.all_of`,
    );
    expect(totals).toEqual([]);
  });
});
