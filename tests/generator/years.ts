// Ten years in the life of a rig, as a careful yard would have written them down: nothing is left open at the end.
import type { Draw } from './draw.ts';
import { type Model, small } from './models.ts';
import type { Done, Look } from './records.ts';

const people = ['R. Adeyemi', 'L. Brandt', 'S. Okafor', 'M. Ilves', 'T. Marsh'] as const;
const rooms = ['ceiling over the bed', 'cupboard over the sink', 'wall behind the table'] as const;

/** The first year of records, and the last. */
export const firstYear = 2017;
export const lastYear = 2026;

/** The records of a rig from its purchase in `firstYear` to the autumn of `lastYear`. */
export function years(draw: Draw, model: Model): readonly Done[] {
  const taped = draw.whole(firstYear + 1, firstYear + 4);
  const leaky = draw.chance(0.25) ? draw.whole(firstYear + 2, lastYear - 2) : undefined;
  const done: Done[] = [
    { verb: 'found', date: `${firstYear}-01-20`, seams: ['all'], with: [model.sealant], by: draw.pick(people) },
  ];
  for (let year = firstYear; year <= lastYear; year++) {
    done.push(...spring(draw, model, year));
    if (year === taped) done.push(...tape(draw, year));
    if (draw.chance(0.3)) done.push({ verb: 'trip', date: `${year}-07-${draw.whole(10, 14)}`, until: `${year}-07-26` });
    if (year === leaky) done.push(...leak(draw, model, year));
    done.push(...autumn(draw, year, year === leaky));
  }
  return done;
}

const lot = (draw: Draw) => `K${draw.whole(1000, 9999)}`;
const weather = (draw: Draw) => {
  const air = draw.whole(62, 76);
  return { air: `${air} F`, surface: `${air + draw.whole(4, 9)} F`, humidity: `${draw.whole(35, 50)} %` };
};

/** Washed, looked at; what is cracked is stripped and sealed anew within the fortnight. */
function spring(draw: Draw, model: Model, year: number): Done[] {
  const day = draw.whole(1, 6);
  const weak = [...new Set([draw.pick(small), draw.pick(small)])];
  const worker = draw.pick(people);
  const work = `${year}-05-${draw.whole(10, 20)}`;
  const looks: Look[] = [
    ...weak.map(
      (seam, i): Look => ({
        seam,
        condition: i === 0 ? 'cracked' : 'hairline',
        ...(draw.chance(0.5)
          ? { note: draw.pick(['forward corner', 'flange dry to the touch', 'seen from the ladder']) }
          : {}),
      }),
    ),
    { seam: 'front', condition: 'sound', moisture: `${draw.whole(9, 12)} %`, inside: 'panel over the cab' },
    { seam: 'rest', condition: 'sound' },
  ];
  return [
    { verb: 'washed', date: `${year}-04-2${day}`, with: ['MildWash'], by: draw.pick(people) },
    { verb: 'inspected', date: `${year}-04-2${day + 2}`, air: `${draw.whole(52, 64)} F`, by: draw.pick(people), looks },
    { verb: 'stripped', date: work, seams: weak, took: '2 h' },
    {
      verb: 'sealed',
      date: work,
      seams: weak,
      with: ['Wipe', model.sealant],
      lot: lot(draw),
      air: `${draw.whole(62, 76)} F`,
      took: '1 h',
      by: worker,
    },
  ];
}

/** Rear, sides, front, so that the wind blows over every lap. Months after anything was sealed there. */
function tape(draw: Draw, year: number): Done[] {
  const date = `${year}-06-${draw.whole(10, 25)}`;
  const common = {
    verb: 'taped',
    date,
    with: ['Wipe', 'EdgeTape4'],
    lot: lot(draw),
    ...weather(draw),
    by: draw.pick(people),
  };
  return [
    { ...common, time: '09:30', seams: ['rear'], took: '45 min' },
    { ...common, time: '10:30', seams: ['curbside', 'roadside'], took: '3 h' },
    { ...common, time: '14:00', seams: ['front'], took: '1 h', note: 'rolled across, then along' },
  ];
}

/** A leak, opened up, dried, bedded and sealed anew; the autumn look finds it dry. */
function leak(draw: Draw, model: Model, year: number): Done[] {
  const seam = draw.pick(['vent-1', 'vent-2', 'skylight']);
  const inside = draw.pick(rooms);
  const by = draw.pick(people);
  return [
    { verb: 'leaked', date: `${year}-08-02`, inside, suspect: seam, moisture: `${draw.whole(17, 19)} %` },
    { verb: 'covered', date: `${year}-08-02`, seams: [seam], until: `${year}-08-12`, note: 'tarp, weighted' },
    { verb: 'stripped', date: `${year}-08-04`, seams: [seam], took: '3 h', by },
    { verb: 'dried', date: `${year}-08-09`, seams: [seam], moisture: `${draw.whole(10, 13)} %` },
    { verb: 'rebedded', date: `${year}-08-10`, seams: [seam], with: ['BedStrip'], took: '1 h', by },
    {
      verb: 'sealed',
      date: `${year}-08-10`,
      seams: [seam],
      with: ['Wipe', model.sealant],
      lot: lot(draw),
      ...weather(draw),
      took: '1 h',
      by,
    },
    {
      verb: 'inspected',
      date: `${year}-08-${draw.whole(24, 29)}`,
      by,
      looks: [
        { seam, condition: 'sound', moisture: `${draw.whole(9, 12)} %`, inside, note: 'two nights of rain in between' },
        { seam: 'rest', condition: 'sound' },
      ],
    },
  ];
}

/** Looked at; one winter in four laid up, with a look on the day before and one after. */
function autumn(draw: Draw, year: number, leaked: boolean): Done[] {
  const day = draw.whole(12, 28);
  const looks: Look[] = [{ seam: 'all', condition: 'sound', ...(leaked ? { note: 'dry inside' } : {}) }];
  const out: Done[] = [
    { verb: 'inspected', date: `${year}-10-${day}`, air: `${draw.whole(48, 58)} F`, by: draw.pick(people), looks },
  ];
  if (draw.chance(0.25))
    out.push(
      { verb: 'stored', date: `${year}-10-30`, until: `${year + 1}-03-25` },
      ...(year < lastYear
        ? [
            {
              verb: 'inspected',
              date: `${year + 1}-03-2${draw.whole(6, 9)}`,
              by: draw.pick(people),
              looks: [{ seam: 'all', condition: 'sound' }],
            },
          ]
        : []),
    );
  return out;
}
