import { describe, expect, it } from 'vitest';
import { visitsOf } from '../../language/estimate/index.ts';
import { planText } from '../../language/estimate/plan.ts';
import { asOf, estimate, rigWith, viewOf } from './asked.ts';

const visits = (...lines: readonly string[]) =>
  visitsOf(viewOf(rigWith('edge curbside', 'cap front', ...lines)).rig.plans, asOf).map(({ from, to, plans }) => ({
    from,
    to,
    plans: plans.map((plan) => planText(plan, 'us')),
  }));

describe('visits', () => {
  it('are one where no date keeps plans apart', () => {
    expect(visits('seal front with Lap', 'tape curbside with Tape4 before 2026-12-01')).toEqual([
      { from: asOf, to: '2026-12-01', plans: ['seal front', 'tape curbside'] },
    ]);
  });

  it('are as few as the dates allow', () => {
    expect(
      visits(
        'inspect before 2026-12-31',
        'tape curbside with Tape4 after 2027-04-15',
        'seal front with Lap after 2027-05-01 before 2027-06-01',
        'wash on 2027-05-10',
      ),
    ).toEqual([
      { from: asOf, to: '2026-12-31', plans: ['inspect'] },
      { from: '2027-05-10', to: '2027-05-10', plans: ['tape curbside', 'seal front', 'wash'] },
    ]);
  });

  it('what is late is done at once', () => {
    expect(visits('seal front with Lap before 2026-05-01')).toEqual([{ from: asOf, to: asOf, plans: ['seal front'] }]);
  });

  it('are each set up, and each begins with a wash where something is taped or sealed', () => {
    const { labour } = estimate(
      rigWith('cap front', 'inspect before 2026-12-31', 'seal front with Lap after 2027-04-15', 'edge curbside'),
    );
    expect(labour.map(({ visit, task }) => `${visit} ${task}`)).toEqual([
      '1 set-up',
      '1 inspect',
      '1 inspect-inside',
      '2 set-up',
      '2 wash',
      '2 wipe',
      '2 gun',
    ]);
  });
});
