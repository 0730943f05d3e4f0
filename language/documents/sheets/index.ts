// The papers that people carry up: work sheet, inspection sheet, roof plan.

import type { TextFile } from '../../protocol/index.ts';
import { folderOf } from '../../resolve/paths.ts';
import type { Dates, RigView } from '../../resolve/types.ts';
import { rigState } from '../../seams/index.ts';
import type { Papers, Subject } from '../papers.ts';
import { roofPlan } from '../roof/index.ts';
import { inspectionSheet } from './inspection.ts';
import { workSheet } from './worksheet.ts';

export { type InspectionInput, inspectionSheet } from './inspection.ts';
export { type WorkSheetInput, workSheet } from './worksheet.ts';

/** A document file whose text is a page or a picture. */
export interface SheetFile {
  readonly name: string;
  readonly text: string;
}

/**
 * `NAME.worksheet.html`, `NAME.inspection.html` and `NAME.roof.svg` of a rig. Of a fleet the two sheets of each rig that
 * has a visit, as `RIG.FLEET.worksheet.html`: a rig has other days and other rolls when it is looked at with its fleet.
 */
export function sheetsOf(subject: Subject, papers: Papers, { asOf }: Dates): TextFile[] {
  if (subject.kind === 'rig') {
    const { view } = subject;
    const { name, file } = view.rig;
    return [
      ...sheetsFor(view, name, papers, asOf, folderOf(file)),
      { name: `${name}.roof.svg`, text: roofPlan(view, rigState(view, asOf)) },
    ];
  }
  const { fleet, views } = subject;
  const visited = new Set(papers.schedule.schedule.visits.map(({ rig }) => rig));
  return views
    .filter(({ rig }) => visited.has(rig.name))
    .flatMap((view) => sheetsFor(view, `${view.rig.name}.${fleet.name}`, papers, asOf, folderOf(fleet.file)));
}

function sheetsFor(view: RigView, name: string, papers: Papers, asOf: string, folder: string): TextFile[] {
  const { estimates, together, kind } = papers.estimate;
  const { visits, dues } = papers.schedule.schedule;
  const estimate = estimates.find(({ rig }) => rig.name === view.rig.name);
  if (estimate === undefined) return [];
  const state = rigState(view, asOf);
  // Who buys together cuts by the lists of all; without them each rig cuts for itself.
  const pooled = together.flatMap(({ cutting }) => (cutting ? [cutting] : []));
  const mine = <T extends { readonly rig: string }>(all: readonly T[]) =>
    all.filter(({ rig }) => rig === view.rig.name);
  const input = {
    view,
    state,
    estimate,
    visits: mine(visits),
    cutting: kind === 'fleet' ? pooled : estimate.cutting,
    folder,
  };
  return [
    { name: `${name}.worksheet.html`, text: workSheet(input) },
    { name: `${name}.inspection.html`, text: inspectionSheet({ view, state, dues: mine(dues) }) },
  ];
}
