// What a material is as a surface, once it is on the roof and something else is to lie on it.
import type { MaterialKind } from '../statements/file.ts';
import type { Family } from '../statements/words.ts';

/**
 * The built-in surface that a material of this family leaves behind: a bead bears the name of its family (`acrylic` is
 * the name of a plastic, so a bead of latex caulk is `acrylic-caulk`), a coating ends in `-coating`, tape is `tape`.
 * Undefined for what leaves the surface under it as it was, and for a coating of a family of which no coating is known;
 * a sealant of which nobody knows the family is `unknown-sealant`.
 */
export function surfaceLeftBy(kind: MaterialKind, family?: Family): string | undefined {
  switch (kind) {
    case 'tape':
      return 'tape';
    case 'sealant':
      if (family === undefined) return 'unknown-sealant';
      return family === 'acrylic' ? 'acrylic-caulk' : family;
    case 'coating':
      return family === 'acrylic' || family === 'urethane' || family === 'silicone' ? `${family}-coating` : undefined;
    case 'primer':
    case 'cleaner':
      return undefined;
  }
}
