// The built-in library: generic surfaces and materials, and the policy that holds where no other does. It is text in the
// language itself, always visible, weakest, and each of its figures says in its `source` how far it can be trusted.
import cleaners from './cleaners.rig';
import coatings from './coatings.rig';
import policy from './policy.rig';
import primers from './primers.rig';
import sealants from './sealants.rig';
import surfaces from './surfaces.rig';
import tapes from './tapes.rig';

/** Raised whenever a figure of the library changes, so that an output can say which one it was reckoned with. */
export const libraryVersion = '1';

/** The files of the library, under paths that no file of a workspace is known by. */
export const libraryFiles: readonly { readonly path: string; readonly text: string }[] = [
  { path: 'library/surfaces.rig', text: surfaces },
  { path: 'library/tapes.rig', text: tapes },
  { path: 'library/sealants.rig', text: sealants },
  { path: 'library/primers.rig', text: primers },
  { path: 'library/cleaners.rig', text: cleaners },
  { path: 'library/coatings.rig', text: coatings },
  { path: 'library/policy.rig', text: policy },
];

export { surfaceLeftBy } from './left-behind.ts';
