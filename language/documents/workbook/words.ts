// The sheets of words: advice, assumptions, open points, cautions.
import type { Assumption } from '../../estimate/index.ts';
import type { EstimatePaper } from '../papers.ts';
import { text } from './cells.ts';
import type { Column, Table } from './table.ts';

const rigColumn = (kind: EstimatePaper['kind']): readonly Column[] =>
  kind === 'fleet' ? [{ key: 'rig', title: 'rig', width: 14 }] : [];

export function adviceSheet({ kind, advice }: EstimatePaper): Table {
  return {
    name: 'Advice',
    title: 'The advice, the most pressing first',
    notes: ['What follows from the records, seam by seam.'],
    columns: [
      ...rigColumn(kind),
      { key: 'item', title: 'seam', width: 20 },
      { key: 'action', title: 'do', width: 20 },
      { key: 'by', title: 'by', width: 13 },
      { key: 'what', title: 'what', width: 50 },
      { key: 'why', title: 'why', width: 70 },
    ],
    rows: advice.flatMap(({ rig, seams }) =>
      seams.map(({ item = 'the roof', where, action, by, what, interim, reasons }) => ({
        rig: text(rig),
        item: text(where === undefined ? item : `${item} (${where})`),
        action: text(action, 'strong'),
        by: text(by && `${by.date}${by.status === 'overdue' ? ' (overdue)' : ''}`),
        what: text(interim ? `${what} Until then: ${interim.what}` : what),
        why: text(
          reasons.map((one) => `${one.text}${one.kind === 'record' ? '' : ` (${one.source ?? one.kind})`}`).join(' '),
        ),
      })),
    ),
    landscape: true,
  };
}

/** The default figures, each once, with the rigs that rest on it. */
export function assumptionsSheet({ kind, estimates, comparisons }: EstimatePaper): Table {
  const told = new Map<string, { readonly one: Assumption; readonly rigs: Set<string> }>();
  estimates.forEach(({ rig, assumptions }, i) => {
    const comparison = comparisons[i]?.comparison;
    const more = comparison && 'assumptions' in comparison ? comparison.assumptions : [];
    for (const one of [...assumptions, ...more]) {
      const key = JSON.stringify([one.name, one.text, one.kind, one.source, one.usedFor]);
      const known = told.get(key) ?? { one, rigs: new Set() };
      known.rigs.add(rig.name);
      told.set(key, known);
    }
  });
  return {
    name: 'Assumptions',
    title: 'What is assumed',
    notes: ['Every figure that no record says, and how far it can be trusted.'],
    columns: [
      ...rigColumn(kind),
      { key: 'figure', title: 'figure', width: 32 },
      { key: 'value', title: 'value', width: 38 },
      { key: 'kind', title: 'kind', width: 17 },
      { key: 'source', title: 'source', width: 40 },
      { key: 'for', title: 'used for', width: 34 },
    ],
    rows: [...told.values()].map(({ one, rigs }) => ({
      rig: text(rigs.size === estimates.length ? 'all' : [...rigs].join(', ')),
      figure: text(one.name),
      value: text(one.text),
      kind: text(one.kind),
      source: text(one.source),
      for: text(one.usedFor),
    })),
    landscape: true,
  };
}

export function openPointsSheet({ kind, estimates, unsummed, unplanned }: EstimatePaper): Table {
  return {
    name: 'Open points',
    title: 'Open points',
    notes: ['Questions that the estimate leaves open, and what falls due but is not planned.'],
    columns: [
      ...rigColumn(kind),
      { key: 'about', title: 'about', width: 30 },
      { key: 'when', title: 'when', width: 20 },
      { key: 'what', title: 'what', width: 80 },
    ],
    rows: [
      ...unsummed.map((one) => ({ rig: text('all'), about: text('the sum'), what: text(one) })),
      ...estimates.flatMap(({ rig, questions }) =>
        questions.map((one) => ({ rig: text(rig.name), about: text(one.about), what: text(one.text) })),
      ),
      ...unplanned.map(({ rig, title, date, status, because }) => ({
        rig: text(rig),
        about: text(title),
        when: text(`${date}${status === 'overdue' ? ' (overdue)' : ''}`),
        what: text(because),
      })),
    ],
    landscape: true,
  };
}

export function cautionsSheet({ cautions, note }: EstimatePaper): Table {
  return {
    name: 'Cautions',
    title: 'Cautions',
    notes: ['The deadliest first.'],
    columns: [
      { key: 'text', title: 'caution', width: 70 },
      { key: 'source', title: 'source', width: 40 },
    ],
    rows: [
      ...cautions.map((one) => ({ text: text(one.text), source: text(one.source) })),
      { text: text(note, 'strong') },
    ],
  };
}
