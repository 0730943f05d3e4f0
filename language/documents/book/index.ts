// The service book of a rig, and a file for each of its leaks.

import type { TextFile } from '../../protocol/index.ts';
import type { Dates } from '../../resolve/types.ts';
import type { Papers, Subject } from '../papers.ts';
import { accountOf } from './account.ts';
import { incidentFile } from './file-names.ts';
import { historyBook } from './history.ts';
import { incidentPage } from './incident.ts';

/**
 * `NAME.history.html` and `NAME.incident-N.html` of a rig, leaks numbered in order of time. Nothing of a fleet: each of its
 * rigs has a book of its own, to be handed over with that rig.
 */
export function bookOf(subject: Subject, papers: Papers, { asOf }: Dates): TextFile[] {
  if (subject.kind === 'fleet') return [];
  const account = accountOf(subject.view, papers, asOf);
  const { name } = subject.view.rig;
  return [
    { name: `${name}.history.html`, text: historyBook(account) },
    ...account.state.leaks.map((leak, i) => ({ name: incidentFile(name, i), text: incidentPage(leak, i, account) })),
  ];
}
