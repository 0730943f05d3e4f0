// A case for each row of the table of advice. The days are worked out by hand from the policy in `ask.ts`: hairline 6 months,
// cracked 30 days, lifting 7 days, open 1 day, wet 14 days, leak 7 days, a repaired leak 30 days, a reading of 20 % 7 days.
import type { Action } from '../../language/advice/index.ts';
import type { Asked } from './ask.ts';

export interface Case extends Asked {
  readonly row: string;
  readonly item: string;
  readonly lines: string;
  readonly action: Action;
  /** What the first reason says. */
  readonly because: string;
  readonly by?: string;
  /** The row of what is done until then, and by when. */
  readonly interim?: readonly [row: string, by?: string];
}

const inspected = (seen: string) => `inspected 2026-05-02 { ${seen} }`;
const allSound = 'inspected 2026-05-02 { rest sound }';

const grave: readonly Case[] = [
  {
    row: 'structure',
    item: 'vent',
    lines: inspected('vent soft'),
    action: 'call a professional',
    because: 'Found open (soft) on 2026-05-02.',
    by: '2026-05-03',
    interim: ['cover-open', '2026-05-03'],
  },
  {
    row: 'open-up',
    item: 'front',
    lines: inspected('front sound moisture 26 %'),
    action: 'call a professional',
    because: '26 % was read on 2026-05-02.',
    by: '2026-05-09',
  },
  {
    row: 'leak-third',
    item: 'vent',
    lines: `leaked 2025-06-01 suspect vent
  sealed 2025-06-05 vent with Lap
  leaked 2025-09-01 suspect vent
  sealed 2025-09-03 vent with Lap
  leaked 2026-05-10 inside "over the shower" suspect vent`,
    action: 'call a professional',
    because:
      'Water came in on 2026-05-10, seen inside: over the shower, for the third time; no repair is recorded since.',
    by: '2026-05-17',
    interim: ['cover-leak', '2026-05-17'],
  },
  {
    row: 'leak-second',
    item: 'vent',
    lines: `leaked 2025-06-01 suspect vent
  sealed 2025-06-05 vent with Lap
  leaked 2026-05-10 suspect vent`,
    action: 'look again',
    because: 'Water came in on 2026-05-10, for the second time; no repair is recorded since.',
    by: '2026-05-17',
    interim: ['cover-leak', '2026-05-17'],
  },
];

const openParts: readonly Case[] = [
  {
    row: 'gasket-leaks',
    item: 'air-con',
    lines: 'leaked 2026-05-10 suspect air-con',
    action: 'replace the part',
    because: 'Water came in on 2026-05-10; no repair is recorded since.',
    by: '2026-05-17',
    interim: ['cover-leak', '2026-05-17'],
  },
  {
    row: 'gasket-again',
    item: 'air-con',
    lines: `inspected 2025-10-01 { air-con flattened }
  tightened 2025-10-02 air-con
  ${inspected('air-con hairline')}`,
    action: 'replace the part',
    because: 'Found hairline on 2026-05-02.',
    by: '2026-11-02',
  },
  {
    row: 'gasket-loose',
    item: 'air-con',
    lines: inspected('air-con cracked'),
    action: 'touch up',
    because: 'Found cracked on 2026-05-02.',
    by: '2026-06-01',
  },
  {
    row: 'drain-broken',
    item: 'spout',
    lines: inspected('spout torn'),
    action: 'replace the part',
    because: 'Found open (torn) on 2026-05-02.',
    by: '2026-05-03',
  },
  {
    row: 'drain-blocked',
    item: 'spout',
    lines: inspected('spout blocked'),
    action: 'touch up',
    because: 'Found cracked (blocked) on 2026-05-02.',
    by: '2026-06-01',
  },
  {
    row: 'insert-worn',
    item: 'trim',
    lines: inspected('trim hairline'),
    action: 'replace the part',
    because: 'Found hairline on 2026-05-02.',
    by: '2026-11-02',
  },
];

const membrane: readonly Case[] = [
  {
    row: 'field-thermoplastic',
    item: 'membrane',
    surface: 'tpo',
    lines: inspected('membrane torn'),
    action: 'call a professional',
    because: 'Found open (torn) on 2026-05-02.',
    by: '2026-05-09',
    interim: ['cover-open', '2026-05-03'],
  },
  {
    row: 'field-loose',
    item: 'membrane',
    lines: inspected('membrane lifting'),
    action: 'call a professional',
    because: 'Found lifting on 2026-05-02.',
    by: '2026-05-09',
  },
  {
    row: 'field-torn',
    item: 'membrane',
    lines: inspected('membrane cracked'),
    action: 'touch up',
    because: 'Found cracked on 2026-05-02.',
    by: '2026-06-01',
  },
  {
    row: 'field-worn',
    item: 'membrane',
    lines: inspected('membrane crazed'),
    action: 'look again',
    because: 'Found hairline (crazed) on 2026-05-02.',
    by: '2026-11-02',
  },
];

const lettingGo: readonly Case[] = [
  {
    row: 'bare',
    item: 'vent',
    lines: 'replaced 2026-05-10 vent',
    action: 'recoat',
    because: 'It was replaced on 2026-05-10, and nothing was laid on it since.',
    by: '2026-05-11',
    interim: ['cover-bare', '2026-05-11'],
  },
  {
    row: 'tape-thermoplastic',
    item: 'front',
    surface: 'tpo',
    lines: `taped 2025-08-01 front with Strip
  ${inspected('front lifting')}`,
    action: 'call a professional',
    because: 'Found lifting on 2026-05-02.',
    by: '2026-05-09',
  },
  {
    row: 'part-broken',
    item: 'dome',
    lines: inspected('dome cracked crazed'),
    action: 'replace the part',
    because: 'Found cracked (crazed) on 2026-05-02.',
    by: '2026-06-01',
  },
  {
    row: 'part-at-end',
    item: 'vent',
    lines: `part-life vent 6 years to 12 years
  ${inspected('vent cracked')}`,
    action: 'replace the part',
    because: 'Found cracked on 2026-05-02.',
    by: '2026-06-01',
  },
  {
    row: 'tape-letting-go',
    item: 'front',
    lines: `taped 2025-08-01 front with Strip
  ${inspected('front lifting')}`,
    action: 'tape',
    because: 'Found lifting on 2026-05-02.',
    by: '2026-05-09',
  },
  {
    row: 'open',
    item: 'vent',
    lines: inspected('vent open'),
    action: 'strip and recoat',
    because: 'Found open on 2026-05-02.',
    by: '2026-05-09',
    interim: ['cover-open', '2026-05-03'],
  },
  {
    row: 'lifting',
    item: 'vent',
    lines: inspected('vent lifting'),
    action: 'strip and recoat',
    because: 'Found lifting on 2026-05-02.',
    by: '2026-05-09',
  },
];

const damp: readonly Case[] = [
  {
    row: 'wet',
    item: 'vent',
    lines: inspected('vent sound wet'),
    action: 'look again',
    because: 'Found wet on 2026-05-02; no drying is recorded since.',
    by: '2026-05-16',
  },
  {
    row: 'find-source',
    item: 'vent',
    lines: inspected('vent sound moisture 22 %'),
    action: 'look again',
    because: '22 % was read on 2026-05-02.',
    by: '2026-05-09',
  },
  {
    row: 'leak',
    item: 'vent',
    lines: 'leaked 2026-05-10 suspect vent',
    action: 'look again',
    because: 'Water came in on 2026-05-10; no repair is recorded since.',
    by: '2026-05-17',
    interim: ['cover-leak', '2026-05-17'],
  },
  {
    row: 're-read',
    item: 'vent',
    lines: inspected('vent sound moisture 17 %'),
    action: 'look again',
    because: '17 % was read on 2026-05-02.',
    by: '2026-05-16',
  },
];

const threeCoats = `sealed 2022-06-01 front with Lap
  sealed 2023-06-01 front with Lap
  sealed 2024-06-01 front with Lap`;

const beads: readonly Case[] = [
  {
    row: 'harmful-bead',
    item: 'curbside',
    lines: `found 2026-04-01 curbside with Tar
  ${inspected('curbside sound')}`,
    action: 'strip and recoat',
    because: 'On it lies Tar (found on 2026-04-01).',
    by: '2026-11-02',
  },
  {
    row: 'tape-edge',
    item: 'front',
    lines: `taped 2025-08-01 front with Strip
  ${inspected('front wrinkled')}`,
    action: 'touch up',
    because: 'Found hairline (wrinkled) on 2026-05-02.',
    by: '2026-11-02',
  },
  {
    row: 'screws',
    item: 'front',
    lines: inspected('front backed-out'),
    action: 'touch up',
    because: 'Found cracked (backed-out) on 2026-05-02.',
    by: '2026-06-01',
  },
  {
    row: 'coating-worn',
    item: 'front',
    lines: `coated 2025-08-01 with Cream
  ${inspected('front hairline')}`,
    action: 'recoat',
    because: 'Found hairline on 2026-05-02.',
    by: '2026-11-02',
  },
  {
    row: 'cracked-silicone',
    item: 'front',
    lines: `found 2026-04-01 front with Sil
  ${inspected('front cracked')}`,
    action: 'strip and recoat',
    because: 'Found cracked on 2026-05-02.',
    by: '2026-06-01',
  },
  {
    row: 'cracked-unknown',
    item: 'front',
    lines: `found 2026-04-01 front with unknown
  ${inspected('front cracked')}`,
    action: 'strip and recoat',
    because: 'Found cracked on 2026-05-02.',
    by: '2026-06-01',
  },
  {
    row: 'cracked-at-limit',
    item: 'front',
    lines: `${threeCoats}
  ${inspected('front cracked')}`,
    action: 'strip and recoat',
    because: 'Found cracked on 2026-05-02.',
    by: '2026-06-01',
  },
  {
    row: 'cracked-part',
    item: 'curbside',
    lines: inspected('curbside cracked from 6 ft to 9 ft'),
    action: 'touch up',
    because: 'Found cracked on 2026-05-02.',
    by: '2026-06-01',
  },
  {
    row: 'cracked',
    item: 'front',
    lines: inspected('front cracked'),
    action: 'recoat',
    because: 'Found cracked on 2026-05-02.',
    by: '2026-06-01',
  },
  {
    row: 'hairline-silicone',
    item: 'front',
    lines: `found 2026-04-01 front with Sil
  ${inspected('front hairline')}`,
    action: 'touch up',
    because: 'Found hairline on 2026-05-02.',
    by: '2026-11-02',
  },
  {
    row: 'hairline-unknown',
    item: 'front',
    lines: `found 2026-04-01 front with unknown
  ${inspected('front hairline')}`,
    action: 'look again',
    because: 'Found hairline on 2026-05-02.',
    by: '2026-11-02',
  },
  {
    row: 'hairline-at-limit',
    item: 'front',
    lines: `${threeCoats}
  ${inspected('front hairline')}`,
    action: 'strip and recoat',
    because: 'Found hairline on 2026-05-02.',
    by: '2026-11-02',
  },
  {
    row: 'hairline-part',
    item: 'curbside',
    lines: inspected('curbside hairline from 6 ft to 9 ft'),
    action: 'touch up',
    because: 'Found hairline on 2026-05-02.',
    by: '2026-11-02',
  },
  {
    row: 'hairline-again',
    item: 'curbside',
    lines: `sealed 2024-06-01 curbside with Lap
  ${inspected('curbside hairline')}`,
    action: 'tape',
    because: 'Found hairline on 2026-05-02.',
    by: '2026-11-02',
  },
  {
    row: 'hairline',
    item: 'curbside',
    lines: inspected('curbside hairline'),
    action: 'recoat',
    because: 'Found hairline on 2026-05-02.',
    by: '2026-11-02',
  },
];

const looks: readonly Case[] = [
  {
    row: 'leak-repaired',
    item: 'vent',
    lines: `leaked 2026-04-10 suspect vent
  sealed 2026-04-15 vent with Lap`,
    action: 'look again',
    because: 'Water came in on 2026-04-10; it was sealed on 2026-04-15, and no look since has found it sound and dry.',
    by: '2026-05-15',
  },
  {
    row: 'struck',
    item: 'front',
    lines: `${allSound}
  struck 2026-05-10 front by branch`,
    action: 'look again',
    because: 'The roof was struck by branch on 2026-05-10, and nobody has looked here since.',
    by: '2026-05-11',
  },
  {
    row: 'not-seen',
    item: 'front',
    lines: inspected('front not-seen'),
    action: 'look again',
    because: 'It could not be seen on 2026-05-02.',
    by: '2026-11-02',
  },
  {
    row: 'under-cover',
    item: 'vent',
    lines: `${allSound}
  covered 2026-05-10 vent until 2026-05-25`,
    action: 'look again',
    because: 'It was covered on 2026-05-10; the cover does until 2026-05-25.',
    by: '2026-05-25',
  },
  {
    row: 'unreadable',
    item: 'vent',
    broken: true,
    lines: `${allSound}
  sealed 2026-05-10 vent wiht Lap`,
    action: 'look again',
    because: 'Lines about it could not be read.',
  },
  {
    row: 'renewed',
    item: 'vent',
    lines: `${allSound}
  sealed 2026-05-10 vent with Lap`,
    action: 'look again',
    because: 'It was sealed with Lap on 2026-05-10, and not looked at since.',
    by: '2026-11-02',
  },
  {
    row: 'never-looked',
    item: 'vent',
    lines: '',
    action: 'look again',
    because: 'No look at it is on record.',
    by: '2020-09-10',
  },
  {
    row: 'unknown-underneath',
    item: 'vent',
    lines: 'found 2026-04-01 all with unknown',
    action: 'look again',
    because: 'On it lies a sealant that nobody knows (found on 2026-04-01).',
    by: '2026-10-01',
  },
  {
    row: 'no-condition',
    item: 'vent',
    lines: 'inspected 2026-05-02',
    action: 'look again',
    because: 'Last looked at on 2026-05-02.',
    by: '2026-11-02',
  },
  {
    row: 'look-overdue',
    item: 'vent',
    lines: 'inspected 2025-04-18 { rest sound }',
    action: 'look again',
    because: 'Found sound on 2025-04-18.',
    by: '2025-10-18',
  },
  {
    row: 'chalky',
    item: 'vent',
    lines: inspected('vent chalky'),
    action: 'leave',
    because: 'Found chalky on 2026-05-02.',
  },
  { row: 'sound', item: 'vent', lines: allSound, action: 'leave', because: 'Found sound on 2026-05-02.' },
];

const covers: readonly Case[] = [
  {
    row: 'open',
    item: 'vent',
    lines: `${inspected('vent open')}
  covered 2026-05-02 vent until 2026-05-12`,
    action: 'strip and recoat',
    because: 'Found open on 2026-05-02.',
    by: '2026-05-09',
    interim: ['cover-expired', '2026-05-12'],
  },
];

export const cases: readonly Case[] = [
  ...grave,
  ...openParts,
  ...membrane,
  ...lettingGo,
  ...damp,
  ...beads,
  ...looks,
  ...covers,
];
