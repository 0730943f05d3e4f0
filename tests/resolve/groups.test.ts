// Which policy a rig is under, by its group; what a fleet and its yards are made of.
import { describe, expect, it } from 'vitest';
import { seenFrom, sitesOf } from '../../language/resolve/yards.ts';
import { projectOf } from '../project/workspace.ts';

const policies = `policy Salt { inspect every 3 months }
policy Fresh { inspect every 9 months }
policy Own { inspect every 2 months }
`;
const groups = 'use "policy.rig"\ngroup Coastal under Salt { note "salt air" }\ngroup Lakes under Fresh\ngroup Loose\n';
const roof = 'roof 20 ft by 8 ft epdm';

function rigOf(text: string, more: Readonly<Record<string, string>> = {}) {
  const texts = { 'policy.rig': policies, 'groups.rig': groups, 'a.rig': `use "groups.rig"\n${text}`, ...more };
  const project = projectOf(texts);
  const rig = project.rigs('a.rig').at(-1)?.rig;
  if (!rig) throw new Error('no rig');
  return { rig, project, texts };
}
const policyOf = (text: string) => rigOf(text).rig.policy.name;

describe('the policy of a rig', () => {
  it('is its own, else that of its group, else that of its base in the same way, else the built-in one', () => {
    expect(policyOf(`rig Auk under Own { group Coastal }`)).toBe('Own');
    expect(policyOf(`rig Auk { group Coastal }`)).toBe('Salt');
    expect(policyOf(`model Alder { ${roof} group Lakes }\nrig Auk like Alder`)).toBe('Fresh');
    expect(policyOf(`model Alder { ${roof} group Lakes }\nrig Auk like Alder { group Coastal }`)).toBe('Salt');
    expect(policyOf(`rig Base under Own { ${roof} }\nrig Auk like Base { group Coastal }`)).toBe('Salt');
    expect(policyOf(`rig Base under Own { ${roof} }\nrig Auk like Base { group Loose }`)).toBe('Own');
    expect(policyOf(`rig Auk { group Loose }`)).toBe('Standard');
    expect(policyOf(`rig Auk { group Nowhere }`)).toBe('Standard');
  });
  it('needs the group only: what that is under is looked up where the group is written', () => {
    const { rig, texts } = rigOf('rig Auk { group Coastal }');
    expect(texts['a.rig']).not.toContain('policy.rig');
    expect(rig.policy.inspect.value.text).toBe('3 months');
  });
  it('changes with its group', () => {
    const texts: Record<string, string> = { ...rigOf('rig Auk { group Coastal }').texts };
    const project = projectOf(texts);
    expect(project.rigs('a.rig')[0]?.rig.policy.name).toBe('Salt');
    texts['groups.rig'] = groups.replace('under Salt', 'under Fresh');
    project.changed(['groups.rig']);
    expect(project.rigs('a.rig')[0]?.rig.policy.name).toBe('Fresh');
  });
  it('is never that of the fleet', () => {
    const { project } = rigOf('rig Auk { group Loose }\nfleet Yards under Own { rigs "a.rig" }', {});
    expect(project.fleets('a.rig')[0]?.fleet.rigs[0]?.policy.name).toBe('Standard');
  });
});

describe('a group', () => {
  it('is described like the roof: a rig has that of its model', () => {
    expect(rigOf(`model Alder { ${roof} group Lakes }\nrig Auk like Alder`).rig.group?.value).toBe('Lakes');
    expect(rigOf(`model Alder { ${roof} group Lakes }\nrig Auk like Alder { group Loose }`).rig.group?.value).toBe(
      'Loose',
    );
  });
});

describe('a fleet of yards', () => {
  const fleet = `fleet Yards {
  rigs "a.rig"
  closed 2026-12-24 to 2027-01-03
  on-hand Lap 9 cartridges
  off Ladder 2027-07-01 to 2027-07-14 note "course"
  skill Ladder tape
  yard Harbour {
    crew Ladder 2 for 8 h each on mon to thu
    skill Ladder seal, tape
    bay Shed indoor 40 ft
    closed 2027-05-01
    on-hand Lap 5 cartridges
    normals jul 62 F to 84 F
    slack apr 30 %
    before-noon 06-01 to 08-31
    serves Coastal, Brant
  }
  crew Road 4 for 16 h on sat
}`;
  const { project } = rigOf(`rig Auk { group Coastal }\nrig Brant\nrig Curlew\n${fleet}`);
  const [found] = project.fleets('a.rig');
  it('has crews with their skills and days off, whatever block speaks of them', () => {
    expect(found?.fleet.yards[0]?.crews).toMatchObject([
      {
        name: 'Ladder',
        people: 2,
        minutes: 480,
        days: [1, 2, 3, 4],
        skills: ['tape', 'seal'],
        off: [{ first: '2027-07-01', last: '2027-07-14' }],
      },
    ]);
    expect(found?.fleet.crews).toMatchObject([{ name: 'Road', people: 4, minutes: 240, days: [6], off: [] }]);
    expect(found?.fleet.crews[0]?.skills).toBeUndefined();
  });
  it('knows which yard serves a rig, by its name or its group', () => {
    const names = found?.fleet.rigs.map((rig) => found.fleet.yardOf(rig)?.name);
    expect(names).toEqual(['Harbour', 'Harbour', undefined]);
  });
  it('is seen from each place with what is there', () => {
    const sites = sitesOf(found!.fleet, found!.views);
    expect(sites.map(({ fleet: { yard }, views }) => [yard?.name, views.map(({ rig }) => rig.name)])).toEqual([
      ['Harbour', ['Auk', 'Brant']],
      [undefined, ['Curlew']],
    ]);
    const [harbour, rest] = sites.map((site) => site.fleet);
    expect(harbour?.closed.map(({ first }) => first)).toEqual(['2026-12-24', '2027-05-01']);
    expect(rest?.closed.map(({ first }) => first)).toEqual(['2026-12-24']);
    expect(harbour?.crew?.name).toBe('Ladder');
    expect(harbour?.bays.map(({ name }) => name.name)).toEqual(['Shed']);
    expect(rest?.bays).toEqual([]);
    expect(Object.keys(harbour?.yard?.climate.normals ?? {})).toEqual(['jul']);
    expect(harbour?.yard?.climate.slack.apr?.value.text).toBe('30 %');
    expect(harbour?.yard?.climate.beforeNoon?.value.text).toBe('06-01 to 08-31');
    expect(seenFrom(undefined, found!.fleet)).toBe(found!.fleet);
  });
  it('without yards is one place', () => {
    const one = rigOf('rig Auk\nfleet Yard { rigs "a.rig"\n crew 2 for 8 h each }').project.fleets('a.rig')[0];
    expect(sitesOf(one!.fleet, one!.views)).toEqual([{ fleet: one!.fleet, views: one!.views }]);
    expect(one?.fleet.crews[0]).not.toHaveProperty('name');
  });
});
