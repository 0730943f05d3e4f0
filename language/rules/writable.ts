// May papers be written for what a file declares? Not from records that could not be read: a figure would be missing.
import type { Project } from '../resolve/project.ts';
import type { Dates } from '../resolve/types.ts';
import { checkFile } from './check.ts';
import type { Finding } from './finding.ts';
import { naming } from './naming.ts';
import { reading } from './reading.ts';

const stops = new Set([
  ...Object.keys(reading.rules),
  ...Object.keys(naming.rules),
  'bookings-missing',
  'booking-unreadable',
]);

/** The errors that keep papers from being written: what could not be read or found, in the file and in all that it depends on. */
export function findingsThatStopWriting(project: Project, path: string, dates: Dates): readonly Finding[] {
  // Tables are judged with the fleet that names them.
  const files = [...project.dependsOn(path)].filter((file) => file.endsWith('.rig')).sort();
  return files
    .flatMap((file) => checkFile(project, file, dates))
    .filter((finding) => finding.severity === 'error' && stops.has(finding.rule));
}
