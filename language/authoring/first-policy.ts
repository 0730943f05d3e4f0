// A policy file to begin with: no figure in it but the units that were asked for. The rest waits for the keeper's own.
import type { System } from '../values/display.ts';

export const firstPolicyName = 'Home';

export const firstPolicy = (
  units: System,
): string => `# How you work and what you count with. Whatever is not said here comes from the built-in policy \`Standard\`.
policy ${firstPolicyName} {
  units        ${units}

  # To be filled in from your own figures. Until then an estimate leaves out what needs them.
  #   currency   the code of the currency of your receipts, three letters
  #   labour     what an hour of work costs you: an amount, the currency, and \`per h\`
  #   tax        a percentage, and \`on materials\` or \`on all\`
  #   season     the days of the year on which you work on roofs: MM-DD \`to\` MM-DD
  #   inspect    how often every seam is looked at: \`every\` and a period
  #   horizon    over how many years ways of keeping it tight are compared
  #   wash-with  the cleaner for washing the roof
  #   wipe-with  the cleaner for the wipe before tape or sealant
  # Your own tapes, sealants and cleaners, with the prices of your receipts, go into a file such as materials.rig;
  # \`use "materials.rig"\` at the top of this file brings them in.
}
`;
