// Half-typed and mistaken states of the worked example: each replaces one line of it by what a person may have typed so far.

/** One state. The line is found by its beginning (the `nth` of them). */
export interface State {
  readonly name: string;
  readonly find: string;
  readonly nth?: number;
  readonly put: string | readonly string[];
  /** What the messages must say, each on the line that is wrong. Empty for a state that is right as it stands. */
  readonly says: readonly string[];
  /** The beginning of the line on which the message stands, where that is not the line that was typed. */
  readonly on?: string;
}

const sealed = '  sealed    2026-04-20';

/** The states of a rig, its roof and its records. */
const ofRecords: readonly State[] = [
  { name: 'verb only', find: sealed, put: '  sealed', says: ['`2026-04-18`'] },
  { name: 'half a date', find: sealed, put: '  sealed    2026-04-', says: ['half a date'] },
  { name: 'comma after a seam', find: sealed, put: '  sealed    2026-04-20 bath-vent,', says: ['`bath-vent`'] },
  { name: 'with, no material', find: sealed, put: '  sealed    2026-04-20 bath-vent with', says: ['`GreyLap`'] },
  {
    name: 'material missing in the middle',
    find: sealed,
    put: '  sealed    2026-04-20 bath-vent with used 2 cartridges air 64 F',
    says: ['name of a material', '`GreyLap`'],
  },
  {
    name: 'used, no amount',
    find: sealed,
    put: '  sealed    2026-04-20 bath-vent with GreyLap used',
    says: ['`2 rolls of 50 ft`'],
  },
  {
    name: 'amount without unit',
    find: sealed,
    put: '  sealed    2026-04-20 bath-vent with GreyLap used 2',
    says: ['`2 cartridges`'],
  },
  {
    name: 'air, no value',
    find: sealed,
    put: '  sealed    2026-04-20 bath-vent with GreyLap used 2 cartridges air',
    says: ['`50 F`'],
  },
  {
    name: 'verb misspelt',
    find: sealed,
    put: '  seald     2026-04-20 bath-vent, skylight with GreyLap used 2 cartridges',
    says: ['`sealed`'],
  },
  { name: 'first letters of a verb', find: '  leaked ', put: '  lea', says: ['statement'] },
  {
    name: 'US date with slashes',
    find: sealed,
    put: '  sealed    04/20/2026 bath-vent, skylight with GreyLap',
    says: ['`2026-04-20`'],
  },
  {
    name: 'date forgotten',
    find: sealed,
    put: '  sealed    bath-vent, skylight with GreyLap',
    says: ['date', '`2026-04-18`'],
  },
  { name: 'seam without condition', find: '    bath-vent ', put: '    bath-vent', says: ['condition', '`sound`'] },
  { name: 'photo, no file', find: '    bath-vent ', put: '    bath-vent   cracked   photo', says: ['text in quotes'] },
  {
    name: 'photo, open text',
    find: '    bath-vent ',
    put: '    bath-vent   cracked   photo "heron/bath',
    says: ['not closed', '`"`'],
  },
  { name: 'moisture without unit', find: '    front ', put: '    front       sound     moisture 14', says: ['`14 %`'] },
  { name: 'from without to', find: '    curbside ', put: '    curbside    hairline  from 6 ft', says: ['`to`'] },
  {
    name: 'by, no name, before {',
    find: '  inspected ',
    put: '  inspected 2026-04-18 by {',
    says: ['text in quotes', '`by`'],
  },
  {
    name: 'open text swallows {',
    find: '  inspected ',
    put: '  inspected 2026-04-18 by "R. Adeyemi {',
    says: ['`"`', '`{`'],
  },
  { name: '} of inspected missing', find: '  }', put: [], says: ['`}`'], on: '  inspected ' },
  { name: '} of model missing', find: '}', nth: 4, put: [], says: ['`}`'], on: 'model ' },
  { name: '} at the end of the file missing', find: '}', nth: 6, put: [], says: ['`}`'], on: 'fleet ' },
  { name: '{ of rig missing', find: 'rig Heron', put: 'rig Heron like Alder28 under Yard', says: ['`{`'] },
  {
    name: 'new heading above a rig',
    find: 'rig Heron',
    put: ['rig New', '', 'rig Heron like Alder28 under Yard {'],
    says: [],
  },
  {
    name: 'the word rig alone above a rig',
    find: 'rig Heron',
    put: ['rig', 'rig Heron like Alder28 under Yard {'],
    says: ['name', '`Heron`'],
  },
  { name: 'like, no model', find: 'rig Heron', put: 'rig Heron like under Yard {', says: ['`like`'] },
  {
    name: 'roof, last unit missing',
    find: '  roof ',
    put: '  roof         28 ft by 8 ft 2',
    says: ['`8 ft 2 in`'],
  },
  { name: 'by, no length', find: '  opening      bath', put: '  opening      bath-vent   16 in by', says: ['`14 in`'] },
  {
    name: 'comma in a place',
    find: '  opening      skyl',
    put: '  opening      skylight    32 in by 24 in      at 23 ft,',
    says: ['`14 in`'],
  },
  { name: 'cap alone', find: '  cap          rear', put: '  cap', says: ['`front`'] },
  {
    name: 'inch marks',
    find: '  opening      bath',
    put: `  opening      bath-vent   16" by 16"      at 18', 2'`,
    says: ['`16 in`'],
  },
  {
    name: 'thousands comma',
    find: '  quote ',
    put: '  quote    "shop A" 1,450 USD for recoat until 2027-03-31',
    says: ['`1450'],
  },
  {
    name: 'dollar sign',
    find: '  quote ',
    put: '  quote    "shop A" $1450 for recoat until 2027-03-31',
    says: ['`1450 USD`'],
  },
  {
    name: 'a stray }',
    find: '  leaked ',
    put: ['  }', '  leaked    2026-06-11 inside "over the shower, wind from ahead" suspect bath-vent'],
    says: ['closes nothing'],
  },
  {
    name: 'a line of prose',
    find: '  leaked ',
    put: [
      '  Dad says the vent was replaced (again) in spring!',
      '  leaked    2026-06-11 inside "over the shower, wind from ahead" suspect bath-vent',
    ],
    says: ['`Dad`', '#'],
  },
  {
    name: 'marks of a merge conflict',
    find: '  leaked ',
    put: [
      '<<<<<<< HEAD',
      '  leaked    2026-06-11 inside "over the shower, wind from ahead" suspect bath-vent',
      '=======',
      '  leaked    2026-06-12 inside "over the shower"',
      '>>>>>>> other',
    ],
    says: ['not merged'],
  },
  {
    name: 'two facts on one line',
    find: '  leaked ',
    put: '  leaked    2026-06-11 suspect bath-vent  stripped 2026-06-20 bath-vent',
    says: ['`stripped`', 'line of its own'],
  },
];

/** The states of materials, policies and fleets. */
const ofYard: readonly State[] = [
  { name: 'property only', find: '  width ', put: '  width', says: ['`14 in`'] },
  { name: 'length without unit', find: '  width ', put: '  width        4', says: ['`4 in`'] },
  { name: 'price missing after at', find: '  roll         50', put: '  roll         50 ft at', says: ['`61.00 USD`'] },
  {
    name: 'most missing after a comma',
    find: '  life ',
    put: '  life         8 years, 15 years,',
    says: ['`6 months`'],
  },
  {
    name: 'comma after a surface',
    find: '  bonds-to     epdm, fibreglass, aluminium, abs, solvent-lap, tape',
    put: '  bonds-to     epdm, fibreglass,',
    says: ['surface', '`epdm`'],
  },
  { name: 'crew for nothing', find: '  crew ', put: '  crew         2 for', says: ['`1 h 30 min`'] },
  { name: 'closed to nothing', find: '  closed ', put: '  closed       2026-12-24 to', says: ['`2026-04-18`'] },
  {
    name: 'a price without its currency',
    find: '  roll         50',
    put: '  roll         50 ft at 61.00',
    says: ['`61.00 USD`'],
  },
  {
    name: 'a length where money stands',
    find: '  day-rate ',
    put: '  day-rate     140 ft',
    says: ['Money', 'is a length'],
  },
  { name: 'a unit misspelt', find: '  end-lap ', put: '  end-lap      2 inn', says: ['`in`'] },
  { name: 'a family misspelt', find: '  family ', put: '  family       solvent-lapp', says: ['`solvent-lap`'] },
  { name: 'a bead half typed', find: '  bead ', put: '  bead         1 in by 1/', says: ['in'] },
  { name: 'coats without at most', find: '  coats ', put: '  coats        4', says: ['`at most 4`'] },
  {
    name: 'look-hard without every',
    find: '  look-hard ',
    put: '  look-hard    18 months',
    says: ['`every 18 months`'],
  },
  { name: 'every, no period', find: '  look-hard ', put: '  look-hard    every', says: ['`6 months`'] },
  { name: 'a cover that never ends', find: '  cover ', put: '  cover        30 days to', says: ['`12 h`'] },
  { name: 'a heading misspelt', find: 'sealant GreyLap', put: 'sealent GreyLap {', says: ['`sealant`'] },
  {
    name: 'a heading without a name',
    find: 'primer  EdgePrimer',
    put: 'primer { container 1 qt at 24 USD }',
    says: ['name'],
  },
  {
    name: 'a one-line block half typed',
    find: 'primer  EdgePrimer',
    put: 'primer  EdgePrimer { container 1 qt at 24 USD  covers 100 sq-ft per }',
    says: ['`100 sq-ft per gal`'],
  },
  {
    name: 'within, no period',
    find: '  follow-up ',
    put: '  follow-up    hairline within 6 months, cracked within',
    says: ['`6 months`'],
  },
  {
    name: 'a condition without within',
    find: '  follow-up ',
    put: '  follow-up    hairline within 6 months, cracked',
    says: ['`within`'],
  },
  { name: 'half a season', find: '  season ', put: '  season       04-15 to', says: ['`10-15`'] },
  { name: 'a season without its end', find: '  season ', put: '  season       04-15', says: ['`to'] },
  {
    name: 'a day that no month has',
    find: '  season ',
    put: '  season       04-31 to 10-15',
    says: ['30 days', '`04-31`'],
  },
  { name: 'tax on nothing', find: '  tax ', put: '  tax          6.5 % on', says: ['`materials`'] },
  { name: 'tax without on', find: '  tax ', put: '  tax          6.5 %', says: ['`on`'] },
  { name: 'labour without its hour', find: '  labour ', put: '  labour       48 USD per', says: ['`48 USD per h`'] },
  { name: 'labour as money alone', find: '  labour ', put: '  labour       48 USD', says: ['`48 USD per h`'] },
  { name: 'a fleet pattern without quotes', find: '  rigs ', put: '  rigs         heron', says: ['`"heron"`'] },
  {
    name: 'days misspelt',
    find: '  crew ',
    put: '  crew         2 for 8 h each on mon to fir',
    says: ['day of the week'],
  },
  { name: 'a bay neither in nor out', find: '  bay ', put: '  bay          Shed indoors 40 ft', says: ['`indoor`'] },
  {
    name: 'bought, no amount',
    find: '  bought       2026-03-01 GreyLap',
    put: '  bought       2026-03-01 GreyLap',
    says: ['`2 rolls of 50 ft`'],
  },
  {
    name: 'rolls of nothing',
    find: '  bought       2026-03-01 Edge',
    put: '  bought       2026-03-01 EdgeTape4 2 rolls of',
    says: ['`14 in`'],
  },
  {
    name: 'on-hand with half a pair',
    find: '  on-hand ',
    put: '  on-hand      EdgeTape4 18 ft, GreyLap',
    says: ['`2 rolls of 50 ft`'],
  },
  {
    name: 'a booking that names no rig',
    find: '  booked ',
    put: '  booked       2027-06-10 to 2027-06-24',
    says: ['name of a rig'],
  },
  { name: 'a use without its quotes closed', find: 'use "models.rig"', put: 'use "models.rig', says: ['not closed'] },
  { name: 'a use of nothing', find: 'use "models.rig"', put: 'use', says: ['text in quotes'] },
];

/** More states of rigs: histories, stretches, rough dates, `like` and `without`, plans. */
const ofHistories: readonly State[] = [
  { name: 'a year alone', find: '  built ', put: '  built        2016', says: ['`about 2016`'] },
  { name: 'about nothing', find: '  built ', put: '  built        about', says: ['`2026-04-18`'] },
  { name: 'about a year', find: '  built ', put: '  built        about 2016', says: [] },
  { name: '30 February', find: '  acquired ', put: '  acquired     2021-02-30', says: ['February 2021 has 28 days'] },
  { name: 'day before month', find: '  acquired ', put: '  acquired     2021-18-04', says: ['`2021-04-18`'] },
  { name: 'month of one digit', find: '  acquired ', put: '  acquired     2021-4-10', says: ['`2021-04-10`'] },
  {
    name: 'half a time',
    find: '  leaked ',
    put: '  leaked    2026-06-11 14: inside "over the shower"',
    says: ['time of day'],
  },
  {
    name: 'a time of one digit',
    find: '  leaked ',
    put: '  leaked    2026-06-11 9:05 suspect bath-vent',
    says: ['09:05'],
  },
  {
    name: 'a stretch half typed',
    find: '  taped     2026-07-05 curb',
    put: '  taped     2026-07-05 curbside from 0 ft to',
    says: ['`14 in`'],
  },
  {
    name: 'a stretch without its first figure',
    find: '  taped     2026-07-05 curb',
    put: '  taped     2026-07-05 curbside from to 14 ft with EdgeTape4',
    says: ['`14 in`'],
  },
  {
    name: 'a stretch without to',
    find: '  taped     2026-07-05 curb',
    put: '  taped     2026-07-05 curbside from 0 ft 14 ft with EdgeTape4',
    says: ['`to`'],
  },
  {
    name: 'used and nothing',
    find: '  taped     2026-07-05 rear',
    put: '  taped     2026-07-05 rear with EdgeTape4 used 1 roll of 25 ft and',
    says: ['`2 rolls of 50 ft`'],
  },
  {
    name: 'used twice over',
    find: '  taped     2026-07-05 rear',
    put: '  taped     2026-07-05 rear with EdgeTape4 used 1 roll of 25 ft and 6 ft air 71 F',
    says: [],
  },
  {
    name: 'a roll of a volume',
    find: '  taped     2026-07-05 rear',
    put: '  taped     2026-07-05 rear with EdgeTape4 used 1 roll of 25 F air 71 F',
    says: ['length', 'temperature'],
  },
  {
    name: 'a second material half typed',
    find: sealed,
    put: '  sealed    2026-04-20 bath-vent with EdgePrimer with',
    says: ['`GreyLap`'],
  },
  { name: 'two conditions', find: '    skylight ', put: '    skylight    lifting, open', says: ['one condition'] },
  { name: 'a defect misspelt', find: '    skylight ', put: '    skylight    blisterd', says: ['`blistered`'] },
  {
    name: 'a defect and where',
    find: '    skylight ',
    put: '    skylight    blistered, wet from 1 ft',
    says: ['`to`'],
  },
  {
    name: 'a remark without note',
    find: '    skylight ',
    put: '    skylight    lifting   "forward corner"',
    says: ['`note "forward corner"`'],
  },
  { name: 'rest alone', find: '    rest ', put: '    rest', says: ['condition'] },
  { name: 'a finding whose seam is being typed', find: '    skylight ', put: '    sky', says: ['condition'] },
  { name: 'a comma after a finding', find: '    skylight ', put: '    skylight    lifting,', says: ['comma'] },
  {
    name: 'a path with backslashes',
    find: '    bath-vent ',
    put: '    bath-vent   cracked   photo "photos\\vent.jpg"',
    says: ['`"photos/vent.jpg"`'],
  },
  { name: 'without nothing', find: '  unit ', put: '  without', says: ['`bath-vent`'] },
  { name: 'without and a comma', find: '  unit ', put: '  without      skylight,', says: ['`bath-vent`'] },
  { name: 'like misspelt', find: 'rig Heron', put: 'rig Heron lik Alder28 under Yard {', says: ['`like`'] },
  { name: 'under nothing', find: 'rig Heron', put: 'rig Heron like Alder28 under {', says: ['`under`'] },
  {
    name: 'a rig without a name',
    find: 'rig Heron',
    put: 'rig Heron like Alder28 like Alder28 under Yard {',
    says: ['twice'],
  },
  {
    name: 'accept without a reason',
    find: '  accept ',
    put: '  accept   look-hard-due until 2027-04-15',
    says: ['`because'],
  },
  {
    name: 'accept without an end',
    find: '  accept ',
    put: '  accept   look-hard-due because "spring"',
    says: ['`until'],
  },
  {
    name: 'a plan after nothing',
    find: '  tape     front',
    put: '  tape     front with EdgeTape4 after',
    says: ['`2026-04-18`'],
  },
  {
    name: 'a quote for a job unknown',
    find: '  quote ',
    put: '  quote    "shop A" 1450 USD for recoats',
    says: ['`recoat`'],
  },
  { name: 'a quote without its price', find: '  quote ', put: '  quote    "shop A"', says: ['Money', '`61.00 USD`'] },
  { name: 'curly quotes', find: '  unit ', put: '  unit         \u201c1042\u201d', says: ['`"1042"`'] },
  { name: 'no quotes', find: '  unit ', put: '  unit         1042', says: ['text in quotes', '`"1042"`'] },
  { name: 'a blank inside a number', find: '  day-rate ', put: '  day-rate     1 140 USD', says: ['`1140 USD`'] },
  {
    name: 'a name with a hyphen at its end',
    find: '  joint ',
    put: '  joint        drip-rail- 26 ft',
    says: ['hyphen'],
  },
  { name: 'a clause word as a name', find: '  joint ', put: '  joint        flange 26 ft', says: ['`flange`', 'name'] },
  {
    name: 'a slide on no side',
    find: '  slide ',
    put: '  slide        dinette     11 ft by 3 ft 6 in  on',
    says: ['`roadside`'],
  },
  { name: 'falls to nowhere', find: '  falls ', put: '  falls        to', says: ['`edges`'] },
  { name: 'falls alone', find: '  falls ', put: '  falls', says: ['`to`'] },
  {
    name: 'a second place half typed',
    find: '  mount ',
    put: '  mount        ladder-feet 3 in by 4 in        at 27 ft, 1 ft and',
    says: ['`14 in`'],
  },
  { name: 'round nothing', find: '  opening      stack-1', put: '  opening      stack-1     round', says: ['`14 in`'] },
  {
    name: 'of nothing',
    find: '  opening      bath',
    put: '  opening      bath-vent   16 in by 16 in      at 18 ft, 2 ft  of',
    says: ['`epdm`'],
  },
  {
    name: 'words that are half a number',
    find: '  opening      bath',
    put: '  opening      bath-vent   2x4 in',
    says: ['length'],
  },
  { name: 'a dash for a range', find: '  apply        50 F to 95', put: '  apply        50-95 F', says: ['to'] },
];

/** A file of records of another rig, put in place of the last line of the fleet. */
const inHistoryFiles: readonly State[] = [
  {
    name: 'a history begun at the end of the file',
    find: 'fleet ',
    put: ['history Heron {', '  washed 2026-04-17', '}', 'fleet Saltmarsh under Yard {'],
    says: [],
  },
  {
    name: 'a history whose brace is missing',
    find: 'fleet ',
    put: ['history Heron {', '  washed 2026-04-17', '  dried', '', 'fleet Saltmarsh under Yard {'],
    says: ['`}`'],
  },
  {
    name: 'a history with a fact of a rig',
    find: 'fleet ',
    put: ['history Heron {', '  vin "1M8GDM9AXKP042788"', '}', 'fleet Saltmarsh under Yard {'],
    says: ['history'],
  },
];

export const states: readonly State[] = [...ofRecords, ...ofYard, ...ofHistories, ...inHistoryFiles];

/** The worked example with one state in it: the text, the first and the last line that were typed (from 0), the line that was replaced. */
export function textOf(state: State, whole: string) {
  const lines = whole.split('\n');
  let seen = 0;
  const at = lines.findIndex((line) =>
    (state.find.trim() === '}' ? line === state.find : line.startsWith(state.find))
      ? ++seen === (state.nth ?? 1)
      : false,
  );
  if (at < 0) throw new Error(`no line begins with ${state.find}`);
  const put = typeof state.put === 'string' ? [state.put] : state.put;
  const text = [...lines.slice(0, at), ...put, ...lines.slice(at + 1)].join('\n');
  return { text, first: at, last: at + Math.max(0, put.length - 1), replaced: at };
}
