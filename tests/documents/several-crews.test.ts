// What the papers of a schedule say of yards and crews, where there is more than one.
import { describe, expect, it } from 'vitest';
import { textDocumentsOf } from '../../language/documents/index.ts';
import { projectOf } from '../project/workspace.ts';
import { materials, rig } from '../schedule/yard.ts';

function papersOf(lines: string) {
  const rigs = `${rig('Auk', 'group Coastal\n strip vent\n seal vent with Lap')}${rig('Brant', 'tape front with Strip')}`;
  const text = `${materials}group Coastal\n${rigs}fleet Yards under Home {\n  rigs "a.rig"\n${lines}\n}\n`;
  const [found] = projectOf({ 'a.rig': text }).fleets('a.rig');
  if (!found) throw new Error('no fleet');
  const on = { asOf: '2027-01-10', today: '2027-01-10' };
  const papers = textDocumentsOf({ kind: 'fleet', fleet: found.fleet, views: found.views }, on);
  return (ending: string) => papers.find(({ name }) => name === `Yards.schedule.${ending}`)?.text ?? '';
}

const several = papersOf(`
  yard Harbour {
    crew Ladder 2 for 8 h each on mon to fri
    bay Shed indoor 40 ft
    serves Coastal
  }
  crew Road 2 for 8 h each on mon to fri`);
const one = papersOf('  crew 2 for 8 h each on mon to fri\n  bay Shed indoor 40 ft');

describe('papers of several crews', () => {
  it('name crew and yard in the Markdown', () => {
    expect(several('md')).toContain('2 people of crew Ladder at Harbour');
    expect(several('md')).toContain('2 people of crew Road.');
    expect(one('md')).toContain('2 people.');
  });
  it('have columns for them in the CSV', () => {
    const [head = ''] = several('csv').split('\r\n');
    expect(head.endsWith(',yard,crew,bay')).toBe(true);
    expect(several('csv')).toMatch(/Harbour,Ladder,Shed\r\n/);
    expect(one('csv').split('\r\n')[0]).not.toContain('yard');
  });
  it('have the place in the calendar', () => {
    const unfolded = several('ics').replaceAll('\r\n ', '');
    expect(unfolded).toContain('LOCATION:Shed\\, Harbour');
    expect(unfolded).toContain('By crew Ladder.');
    expect(one('ics')).not.toContain('LOCATION');
  });
  it('have them in the JSON', () => {
    expect(several('json')).toContain('"crewName": "Ladder"');
    expect(several('json')).toContain('"yard": "Harbour"');
  });
});
