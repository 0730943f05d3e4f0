// What the take-offs of one rig share.
import type { RigView } from '../resolve/types.ts';
import type { SeamState } from '../seams/index.ts';
import type { System } from '../values/display.ts';

/** A rig with its surroundings, the state of its seams on the as-of date, and the units to work in. */
export interface Scene {
  readonly view: RigView;
  readonly asOf: string;
  readonly states: ReadonlyMap<string, SeamState>;
  readonly system: System;
}
