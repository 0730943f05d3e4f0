import { expect, it } from 'vitest';
import { scheduleOfRig } from '../../language/schedule/index.ts';
import { projectOf } from '../project/workspace.ts';

const asOf = '2026-11-25';

it('the sides of a slide are laid in the order in which their pieces are numbered: both ends, then the outer side over them', () => {
  const [view] = projectOf({
    'a.rig': `tape Strip { width 4 in  roll 50 ft at 58 USD  bonds-to epdm }
rig Teal {
  roof 20 ft by 8 ft epdm
  slide sofa 6 ft by 2 ft on roadside at 8 ft
  cap front wide 5 in
  tape sofa, front with Strip after 2027-05-01
}
`,
  }).rigs('a.rig');
  const labels = scheduleOfRig(view!, { asOf, today: asOf }).visits.flatMap(({ tasks }) =>
    tasks.map(({ label }) => label),
  );
  expect(labels).toContain('lay tape on sofa: rear end, then front end, then outer side');
  // A wide cap: the rear strip first, the forward one over it.
  expect(labels).toContain('lay tape on front: rear strip, then forward strip');
});

it('says what is open over night, and no word of it where all is closed on its day', () => {
  const because = (hours: string) => {
    const [view] = projectOf({
      'a.rig': `sealant Lap {
  family solvent-lap
  bead 1 in by 1/4 in
  cartridge 10.3 fl-oz at 9 USD
}
policy P {
  workday ${hours}
}
rig Teal under P {
  roof 20 ft by 8 ft epdm
  edge curbside, roadside
  sealed 2024-05-01 all with Lap
  strip curbside after 2027-05-01
  seal curbside with Lap after 2027-05-01
}
`,
    }).rigs('a.rig');
    return scheduleOfRig(view!, { asOf, today: asOf })
      .visits.flatMap((visit) => visit.because)
      .join(' ');
  };
  expect(because('3 h')).toMatch(/Open over night: curbside from 2027-05-\d\d to 2027-05-\d\d: cover it every evening/);
  expect(because('12 h')).not.toContain('Open over night');
});
