// One seam on the way round: its conditions with their gauges, what stands beside them, and the ways on.
import { QuickPickItemKind } from 'vscode';
import type { SaidOfSeam } from '../../language/authoring/inspection-block.ts';
import type { WalkReply } from '../../language/protocol/index.ts';
import type { LanguageServer } from '../language-server.ts';
import { type Choice, pickOne, type Reply, typed } from './inputs.ts';
import { problemIn } from './read-answer.ts';
import { type Beside, isWaiting, type Round, saidHere } from './said-so-far.ts';

type Station = WalkReply['stations'][number];

/** What is done at a seam. */
export type Move =
  | { readonly kind: 'say'; readonly seen: SaidOfSeam['seen'] }
  | { readonly kind: 'beside'; readonly field: 'note' | 'moisture' | 'stretch' }
  | { readonly kind: 'wet' | 'next' | 'take-back' | 'rest' | 'stop' | 'look' };

/** Asks for one move at a seam. */
export function askAt(walk: WalkReply, round: Round, station: Station): Promise<Reply<Move>> {
  const here = saidHere(round);
  const { beside } = round;
  const whole = here.find(({ stretch }) => stretch === undefined);
  const name = beside.stretch === undefined ? station.item : `${station.item} from ${beside.stretch}`;
  const gauges = station.gauges.map(
    ({ word, gauge }): Choice<Move> => ({
      label: word,
      description: gauge,
      value: { kind: 'say', seen: word },
      picked: whole?.seen === word,
    }),
  );
  const notSeen: Choice<Move> = {
    label: 'not-seen',
    description: 'nobody could look: a note says why',
    value: { kind: 'say', seen: 'not-seen' },
    picked: whole?.seen === 'not-seen',
  };
  const choices: readonly Choice<Move>[] = [
    separator(here.length > 0 && !whole ? 'The other parts of it' : 'How it is'),
    ...gauges,
    notSeen,
    separator('Beside that, before the word is chosen'),
    {
      label: beside.wet ? '$(check) wet' : '$(circle-large-outline) wet',
      description: 'water, a stain, something soft, a smell',
      value: { kind: 'wet' },
    },
    besideChoice('note', '$(note) Note', beside.note),
    besideChoice('moisture', '$(dashboard) Moisture reading', beside.moisture),
    besideChoice('stretch', '$(arrow-both) Only a part of it', beside.stretch && `from ${beside.stretch}`),
    separator('The way on'),
    ...(beside.wet && !whole
      ? [
          {
            label: '$(arrow-right) Only wet',
            description: 'without a word for its condition',
            value: { kind: 'say', seen: undefined } as const,
          },
        ]
      : []),
    ...(whole && !isWaiting(round)
      ? [
          {
            label: '$(arrow-right) Next seam',
            description: 'it stays as it was said',
            value: { kind: 'next' } as const,
          },
        ]
      : []),
    ...(here.length > 0
      ? [
          {
            label: '$(discard) Take back what was said of it',
            description: here.map(words).join('; '),
            value: { kind: 'take-back' } as const,
          },
        ]
      : []),
    { label: '$(check-all) The rest is sound', description: restOf(round, whole), value: { kind: 'rest' } },
    {
      label: '$(debug-stop) Stop here',
      description: 'asks whether to write what was said so far',
      value: { kind: 'stop' },
    },
  ];
  const last = [station.last, ...(station.lastNote ? [`“${station.lastNote}”`] : [])].join(', ');
  return pickOne<Move>({
    title: `${walk.name}: ${name} – ${station.what}`,
    at: { step: round.index + 1, total: round.items.length },
    placeholder: here.length > 0 ? `Said: ${here.map(words).join('; ')}` : `Last: ${last}. ${station.leg}`,
    choices: last.length > placeholderFits ? [...choices, ...lastRows(last)] : choices,
  });
}

/** About what an input shows of its placeholder. */
const placeholderFits = 80;

/** What was found last, where it is too long to be seen at a glance: on lines of its own. */
const lastRows = (last: string): readonly Choice<Move>[] => [
  separator('Found last'),
  ...last.split('; ').map((part): Choice<Move> => ({ label: `$(history) ${part}`, value: { kind: 'look' } })),
];

const separator = (label: string): Choice<Move> => ({ label, kind: QuickPickItemKind.Separator });

const besideChoice = (
  field: 'note' | 'moisture' | 'stretch',
  label: string,
  value: string | undefined,
): Choice<Move> => ({ label: `${label}…`, ...(value ? { description: value } : {}), value: { kind: 'beside', field } });

function restOf({ items, said, index }: Round, whole: SaidOfSeam | undefined): string {
  const spoken = new Set(said.map(({ item }) => item));
  const left = items.filter((item) => !spoken.has(item)).length;
  const here = whole || spoken.has(items[index] ?? '') ? '' : ', this one among them';
  return left === 0 ? 'what is left of it' : `${left} of ${items.length} seams${here}`;
}

const words = ({ seen, wet, stretch, moisture, note }: SaidOfSeam) =>
  [seen, wet && 'wet', stretch && `from ${stretch}`, moisture, note && `“${note}”`].filter(Boolean).join(' ');

const prompts = {
  note: { prompt: 'What is to be remembered of it?', placeholder: 'forward corner, by the rail' },
  moisture: { prompt: 'What does the moisture meter read, inside below the seam?', placeholder: '14 %' },
  stretch: {
    prompt: 'Which part of it? From where to where: of a side from the front, of a cap from the curb side.',
    placeholder: '6 ft to 9 ft',
  },
} as const;

/** Asks for a text beside the condition; an empty one takes it away. */
export async function askBeside(
  server: LanguageServer,
  walk: WalkReply,
  round: Round,
  station: Station,
  field: keyof typeof prompts,
): Promise<Beside | undefined> {
  const kind = field === 'moisture' ? 'percent' : 'stretch';
  const problem = problemIn(server, kind, field === 'stretch' ? station.length : undefined);
  const reply = await typed({
    title: `${walk.name}: ${station.item}`,
    at: { step: round.index + 1, total: round.items.length },
    ...prompts[field],
    value: round.beside[field],
    problem: async (text) =>
      text.trim() === '' || field === 'note' ? undefined : problem(field === 'moisture' ? percent(text) : text),
  });
  if (!('answer' in reply)) return undefined;
  return { [field]: field === 'moisture' ? percent(reply.answer) : reply.answer };
}

/** A meter shows a bare figure: it is one of percent. */
export const percent = (text: string): string => (/^\s*\d+(\.\d+)?\s*$/.test(text) ? `${text.trim()} %` : text);
