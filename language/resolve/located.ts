// A problem and the file it stands in.
import type { Problem } from '../grammar/problem.ts';
import type { FollowUp, Related } from '../rules/finding.ts';

export interface Located extends Problem {
  readonly file: string;
  readonly related?: readonly Related[];
  /** The rig and the item that it is about, for `accept`. */
  readonly rig?: string;
  readonly item?: string;
  readonly followUp?: FollowUp;
}
