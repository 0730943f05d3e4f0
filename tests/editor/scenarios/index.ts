// All scenarios, in the order in which they are run.
import type { Scenario } from '../scenario.ts';
import { browser } from './browser.ts';
import { compare } from './compare.ts';
import { firstMinutes } from './first-minutes.ts';
import { mainJob } from './main-job.ts';
import { navigation } from './navigation.ts';
import { reading } from './reading.ts';
import { records } from './records.ts';
import { restricted } from './restricted.ts';
import { roofPlan } from './roof-plan.ts';
import { tables } from './tables.ts';
import { views } from './views.ts';
import { writing } from './writing.ts';

export const scenarios: readonly Scenario[] = [
  mainJob,
  reading,
  browser,
  restricted,
  roofPlan,
  navigation,
  views,
  records,
  firstMinutes,
  compare,
  tables,
  writing,
];
