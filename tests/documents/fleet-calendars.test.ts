// The calendars of the bays of a fleet, read back by an independent reader (npm node-ical).
import nodeIcal, { type VEvent } from 'node-ical';
import { describe, expect, it } from 'vitest';
import { namePartsOf } from '../../language/documents/file-names.ts';
import { fileNameSchema } from '../../language/protocol/index.ts';
import { fleetPapers, twoYards } from './fleets.ts';

// In winter an open roof needs a bay; its silicone takes days until rain does it no harm.
const oneYard = `${twoYards
  .replaceAll(/( (?:strip|seal) skylight.*) after 2027-06-01/g, '$1 before 2027-04-12')
  .replace(/ {2}yard North [\s\S]*/, '')}
  crew 2 for 8 h each on mon to fri
  bay Shed indoor 40 ft
  bay Hall indoor
}
`;
const { texts, scene } = fleetPapers({ 'a.rig': oneYard }, '2027-04-05', 'a.rig');
const read = (name: string) => nodeIcal.sync.parseICS(texts.get(name) as string);
const events = (name: string) => Object.values(read(name)).filter((one): one is VEvent => one?.type === 'VEVENT');
const day = (date: Date) =>
  `${date.getFullYear()}-${`${date.getMonth() + 1}`.padStart(2, '0')}-${`${date.getDate()}`.padStart(2, '0')}`;
const baysIn = (all: typeof texts) => [...all.keys()].filter((name) => name.includes('.bay-')).sort();
const names = baysIn(texts);

describe('a calendar for each bay', () => {
  it('is written for every indoor bay, of two with one name by its yard', () => {
    expect(names).toEqual(['Yard.bay-Hall.ics', 'Yard.bay-Shed.ics']);
    expect(baysIn(fleetPapers({ 'a.rig': twoYards }, '2027-04-05', 'a.rig').texts)).toEqual([
      'Yard.bay-Long-barn.ics',
      'Yard.bay-North-Shed.ics',
      'Yard.bay-South-Shed.ics',
    ]);
  });

  it('has the visits that stand there, as the calendar of the fleet has them, and nothing else', () => {
    const whole = new Map(events('Yard.schedule.ics').map((event) => [event.uid, event]));
    const indoors = scene.schedule.visits.filter(({ bay }) => bay !== undefined);
    expect(indoors.length).toBeGreaterThan(0);
    const mine = names.flatMap(events);
    const visits = mine.filter(({ uid }) => uid.includes('visit/'));
    expect(visits).toHaveLength(indoors.length);
    for (const event of visits) {
      expect(whole.get(event.uid)).toMatchObject({ summary: event.summary, description: event.description });
      expect(day(event.start)).toBe(day(whole.get(event.uid)!.start));
    }
    expect(mine.filter(({ uid }) => !/visit\/|stay\//.test(uid))).toEqual([]);
  });

  it('has the days on which a rig stays until rain does no harm', () => {
    const visit = scene.schedule.visits.find(({ rig, bay }) => rig === 'Coot' && bay !== undefined)!;
    const rain = visit.clocks.find(({ clock }) => clock === 'rain')!;
    const stay = names.flatMap(events).find(({ uid }) => uid.includes('stay/'))!;
    expect(stay.summary).toContain('Coot: stays in');
    expect(day(stay.start) > visit.days.at(-1)!).toBe(true);
    // The end of an event is exclusive: it leaves on the day from which rain does no harm.
    expect(day(stay.end as Date)).toBe(rain.safeFrom);
  });

  it('is written for every crew too, each with its own visits', () => {
    const two = fleetPapers({ 'a.rig': twoYards.replace('crew 2 for', 'crew Ladder 2 for') }, '2027-04-05', 'a.rig');
    const crews = [...two.texts.keys()].filter((name) => name.includes('.crew-')).sort();
    expect(crews).toEqual(['Yard.crew-Ladder.ics', 'Yard.crew-South.ics']);
    const uids = (name: string) =>
      Object.values(nodeIcal.sync.parseICS(two.texts.get(name) as string)).flatMap((one) =>
        one?.type === 'VEVENT' ? [one.uid.replace(/.*visit\//, '').replace(/@.*/, '')] : [],
      );
    const of = (yard: string) => two.scene.rigs.filter((rig) => rig.yard === yard).flatMap(({ visits }) => visits);
    expect(of('North').map(({ crewName }) => crewName)).toEqual(['Ladder', 'Ladder']);
    expect(uids('Yard.crew-Ladder.ics')).toHaveLength(2);
    expect(uids('Yard.crew-Ladder.ics').every((uid) => uid.startsWith('Auk/'))).toBe(true);
    expect(uids('Yard.crew-South.ics')).toHaveLength(of('South').length);
  });

  it('is not written where there is only one', () => {
    const one = fleetPapers({ 'a.rig': oneYard.replace('bay Hall indoor', '') }, '2027-04-05', 'a.rig');
    expect(one.scene.schedule.visits.some(({ bay }) => bay === 'Shed')).toBe(true);
    expect(baysIn(one.texts)).toEqual([]);
  });
});

describe('names as parts of file names', () => {
  it('are taken by every file system and told apart', () => {
    const parts = namePartsOf(['Barn', 'barn', 'A/B', 'A:B', '..', 'Größe 3', 'x'.repeat(300)]);
    expect(parts.slice(0, 6)).toEqual(['Barn', 'barn-2', 'A-B', 'A-B-2', 'unnamed', 'Größe-3']);
    for (const part of parts) expect(fileNameSchema.safeParse(`Yard.bay-${part}.ics`).success).toBe(true);
    expect(new Set(parts.map((part) => part.toLowerCase())).size).toBe(parts.length);
  });
});
