// How long the seam of an item is: along its flange or along its run, for one and for all that are alike.
import type { Input } from '../explain.ts';
import type { Item, Roof } from '../resolve/types.ts';
import { lengthText, type System } from '../values/display.ts';
import type { Length } from '../values/length.ts';
import { done, type Read, refused } from '../values/quantity.ts';
import { countInput, type Long, lengthInput, long, type Working } from './figure.ts';

/** The seam of one item, and of all that it stands for (`count`, several places). */
export interface SeamLength {
  readonly each: Long;
  readonly all: Long;
}

/** A part of a seam, in nanometres from its beginning. A missing end is that of the seam. */
export interface Stretch {
  readonly from?: number;
  readonly to?: number;
}

/** The straight sides that a seam is made of, in order from its beginning; a flange is one side all round. */
export interface Side {
  readonly what: 'seam' | 'front end' | 'outer side' | 'rear end';
  readonly length: Length;
}

interface Rule {
  readonly nm: number;
  readonly working: Working;
}

/**
 * The length of an item's seam. An edge runs the length of the roof, a cap its width; a slide its outer side and two
 * ends; an opening or mount the outside of its flange, rectangle 2 (W + L), round pi D; a joint, channel or insert what
 * is written. A written `length` wins. Refused, with the reason, for what has no seam or no size.
 */
export function seamLength(item: Item, roof: Roof | undefined, system: System): Read<SeamLength> {
  const rule = ruleOf(item, roof, system);
  if (!rule.ok) return rule;
  const { nm, working } = rule.value;
  const each = long(nm, system, working);
  if (item.count === 1) return done({ each, all: each });
  const all = long(nm * item.count, system, {
    rule: `${working.rule}, times their number`,
    formula: `count * (${working.formula})`,
    inputs: [countInput('count', item.count, item.origin), ...working.inputs],
  });
  return done({ each, all });
}

/** The length of a stretch of a seam that is `whole` nanometres long; 0 where the stretch lies beyond its end. */
export function stretchLength(stretch: Stretch, whole: number): number {
  return Math.max(0, Math.min(stretch.to ?? whole, whole) - Math.max(0, stretch.from ?? 0));
}

/** True if the stretch is less than the whole seam. */
export function isPart(stretch: Stretch | undefined, whole: number): stretch is Stretch {
  return stretch !== undefined && ((stretch.from ?? 0) > 0 || (stretch.to ?? whole) < whole);
}

/** A stretch of a seam, for all copies together; the whole seam where the stretch is no part of it; undefined beyond its end. */
export function stretchOf(item: Item, stretch: Stretch, seam: SeamLength, system: System): Long | undefined {
  const whole = seam.each.nm;
  if (!isPart(stretch, whole)) return seam.all;
  const nm = stretchLength(stretch, whole);
  if (nm === 0) return undefined;
  return long(nm * item.count, system, {
    rule: 'the stretch that is meant',
    formula: 'count * stretch',
    inputs: [
      countInput('count', item.count, item.origin),
      lengthInput('stretch', { nm, text: lengthText(nm, system) }, system),
    ],
  });
}

/** The straight sides of a seam; undefined for flanges and for what has no seam. */
export function straightSides(item: Item, roof: Roof | undefined): readonly Side[] | undefined {
  if (item.length !== undefined && item.kind !== 'opening' && item.kind !== 'mount') {
    return [{ what: 'seam', length: item.length }];
  }
  switch (item.kind) {
    case 'edge':
      return roof && [{ what: 'seam', length: roof.along }];
    case 'cap':
      return roof && [{ what: 'seam', length: roof.across }];
    case 'joint':
    case 'channel':
    case 'insert':
      return item.run && [{ what: 'seam', length: item.run }];
    case 'slide': {
      if (item.size?.shape !== 'rectangle') return undefined;
      const { along, across } = item.size;
      const [outer, end] = item.side === 'front' || item.side === 'rear' ? [across, along] : [along, across];
      return [
        { what: 'front end', length: end },
        { what: 'outer side', length: outer },
        { what: 'rear end', length: end },
      ];
    }
    default:
      return undefined;
  }
}

function ruleOf(item: Item, roof: Roof | undefined, system: System): Read<Rule> {
  const input = (name: string, length: Length): Input => lengthInput(name, length, system, item.origin);
  if (item.length !== undefined) {
    const inputs = [input('length', item.length)];
    return done({ nm: item.length.nm, working: { rule: 'as written', formula: 'length', inputs } });
  }
  switch (item.kind) {
    case 'edge':
    case 'cap':
      return roof === undefined ? refused('the roof has no size') : done(alongRoof(item.kind, roof, system));
    case 'slide': {
      const sides = straightSides(item, roof);
      if (sides === undefined) return refused('a slide is measured by two figures: along the roof and out from it');
      const [end, outer] = [sides[0]!.length, sides[1]!.length];
      return done({
        nm: outer.nm + 2 * end.nm,
        working: {
          rule: 'outer side and two ends',
          formula: 'outer + 2 * end',
          inputs: [input('outer', outer), input('end', end)],
        },
      });
    }
    case 'opening':
    case 'mount':
      return item.size === undefined ? refused('it has no size') : done(aroundFlange(item, input));
    case 'joint':
    case 'channel':
    case 'insert':
      if (item.run === undefined) return refused('it has no length');
      return done({
        nm: item.run.nm,
        working: { rule: 'as written', formula: 'run', inputs: [input('run', item.run)] },
      });
    case 'gasket':
      return refused('it sits on a gasket: there is no seam');
    case 'drain':
      return refused('a drain has no seam');
    case 'field':
      return refused('the membrane itself is no seam');
  }
}

function alongRoof(kind: 'edge' | 'cap', roof: Roof, system: System): Rule {
  const [name, length, rule] =
    kind === 'edge'
      ? (['roof_length', roof.along, 'an edge runs the length of the roof'] as const)
      : (['roof_width', roof.across, 'a cap runs the width of the roof'] as const);
  const inputs = [lengthInput(name, length, system, roof.origin)];
  return { nm: length.nm, working: { rule, formula: name, inputs } };
}

function aroundFlange(item: Item, input: (name: string, length: Length) => Input): Rule {
  const size = item.size!;
  if (size.shape === 'round') {
    return {
      nm: Math.PI * size.diameter.nm,
      working: {
        rule: 'round the outside of the flange',
        formula: 'pi * diameter',
        inputs: [input('diameter', size.diameter)],
      },
    };
  }
  return {
    nm: 2 * (size.along.nm + size.across.nm),
    working: {
      rule: 'round the outside of the flange',
      formula: '2 * (along + across)',
      inputs: [input('along', size.along), input('across', size.across)],
    },
  };
}
