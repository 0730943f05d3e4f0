import type { Status } from '../language/protocol/index.ts';

/** What the status bar item says, or undefined when there is nothing to say. */
export interface StatusText {
  readonly text: string;
  readonly tooltip: string;
  /** Whether the item is coloured as a warning. */
  readonly warning: boolean;
}

/** Puts the state of the workspace into the few words that fit. */
export function statusText(status: Status): StatusText | undefined {
  const asOf = status.asOf === status.today ? undefined : `as of ${status.asOf}`;
  if (status.busy) return { text: '$(sync~spin) Rigseam', tooltip: 'Rigseam is reading the rigs.', warning: false };
  if (status.rigs === 0 && asOf === undefined) return undefined;
  const overdue = status.overdue > 0;
  const rigs = overdue ? `${status.overdue} overdue` : `${status.rigs} ${status.rigs === 1 ? 'rig' : 'rigs'}`;
  const sentences = [
    `${status.overdue} of ${status.rigs} ${status.rigs === 1 ? 'rig has' : 'rigs have'} something overdue.`,
    asOf === undefined ? '' : `Everything is shown ${asOf}; today is ${status.today}.`,
    'Click for the list of problems.',
  ];
  return {
    text: `$(${overdue ? 'warning' : 'calendar'}) ${[rigs, asOf].filter(Boolean).join(', ')}`,
    tooltip: sentences.filter(Boolean).join('\n'),
    warning: overdue,
  };
}
