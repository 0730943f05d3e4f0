// What work does to a stretch of a seam.
import type { Event, MaterialsOf } from '../resolve/types.ts';
import { layersOf } from './layers.ts';
import { withReading } from './looks.ts';
import { damp } from './moisture.ts';
import type { Layer, SeamState, Stretch, Verb } from './state.ts';

/** Records that may mend a leak. Taking things off mends nothing. */
export const repairs: ReadonlySet<Verb> = new Set([
  'sealed',
  'taped',
  'patched',
  'coated',
  'replaced',
  'rebedded',
  'tightened',
]);

/** Work without places that is about the whole roof; other work that names no place is about nothing. */
export const aboutAll: ReadonlySet<Verb> = new Set(['washed', 'dried', 'coated']);

type Role = SeamState['role'];

/** A stretch after work. Records of other kinds leave it as it is, apart from being the last of their kind. */
export function afterWork(stretch: Stretch, event: Event, role: Role, material: MaterialsOf): Stretch {
  const { record } = event;
  const noted: Stretch = { ...stretch, lastOf: { ...stretch.lastOf, [record.word]: event } };
  switch (record.word) {
    case 'sealed':
      return laid(noted, event, role, layersOf(event, record.materials, 'sealant', 'work', material));
    case 'taped':
      return laid(noted, event, role, layersOf(event, record.materials, 'tape', 'work', material));
    case 'patched':
      return laid(noted, event, role, layersOf(event, record.materials, 'patch', 'work', material));
    case 'coated':
      return coated(noted, event, role, layersOf(event, record.materials, 'coating', 'work', material));
    case 'primed': {
      if (role === 'open') return noted;
      const primer = layersOf(event, record.materials, 'primer', 'work', material);
      return { ...noted, layers: [...noted.layers, ...primer] };
    }
    case 'stripped':
      return emptied(noted, event, role);
    case 'replaced':
    case 'rebedded':
      return role === 'sealed' ? emptied(noted, event, role) : renewed(uncovered(noted), event);
    case 'tightened':
      return tightened(noted, event, role);
    case 'covered':
      return { ...noted, temporary: { event, ...(record.until ? { until: record.until } : {}) } };
    case 'dried':
      return dried(noted, event);
    case 'leaked':
      return record.moisture ? withReading(noted, event, record.moisture, record.inside) : noted;
    default:
      return noted;
  }
}

/** Mended is not sound: somebody has to look. */
function renewed(stretch: Stretch, event: Event): Stretch {
  const { sound: _, ...rest } = stretch;
  return { ...rest, condition: { word: 'renewed', event }, defects: [], onset: {} };
}

function uncovered(stretch: Stretch): Stretch {
  const { temporary: _, ...rest } = stretch;
  return rest;
}

/** What must stay open takes no layer: a record that says so is a mistake that a rule speaks of. */
function laid(stretch: Stretch, event: Event, role: Role, layers: readonly Layer[]): Stretch {
  if (role === 'open') return stretch;
  const { bare: _, film: _f, ...rest } = uncovered(stretch);
  return renewed({ ...rest, layers: [...stretch.layers, ...layers] }, event);
}

function coated(stretch: Stretch, event: Event, role: Role, layers: readonly Layer[]): Stretch {
  const coating = layers.findLast((layer) => layer.kind === 'coating');
  return role === 'open' || !coating ? stretch : { ...laid(stretch, event, role, layers), coating };
}

/** Down to the surface. The coating of the roof beside the seam stays, unless it is the field itself that was stripped. */
function emptied(stretch: Stretch, event: Event, role: Role): Stretch {
  if (role === 'open') return stretch;
  const { condition: _c, sound: _s, coating, ...rest } = uncovered(stretch);
  const film = stretch.layers.findLast(({ family }) => family === 'silicone' || family === 'acetoxy-silicone');
  return {
    ...rest,
    ...(film && role === 'sealed' ? { film } : {}),
    ...(coating && role === 'sealed' ? { coating } : {}),
    layers: [],
    defects: [],
    onset: {},
    ...(role === 'sealed' ? { bare: event } : {}),
  };
}

/** Tightening mends a gasket, and a fastener that was only backed out. */
function tightened(stretch: Stretch, event: Event, role: Role): Stretch {
  const others = stretch.defects.filter((defect) => defect !== 'backed-out');
  const mended = role === 'open' || (stretch.defects.length > 0 && others.length === 0);
  return mended ? renewed(stretch, event) : { ...stretch, defects: others };
}

function dried(stretch: Stretch, event: Event): Stretch {
  const { record } = event;
  if (record.word !== 'dried') return stretch;
  const { wet, ...rest } = stretch;
  const out: Stretch = wet && damp(record.moisture) ? stretch : rest;
  return record.moisture ? withReading(out, event, record.moisture, record.inside) : out;
}
