// Statements with their blocks as somebody begins them: only what nearly every one of its kind says. To be typed over.

/** By statement word. Where a word is missing its example stands for it. No prices and no one's name: nobody could mean those. */
export const wholeRecords: Readonly<Record<string, string>> = {
  use: 'use "materials.rig"',
  tape: 'tape SeamTape { width 4 in  roll 50 ft  bonds-to epdm, aluminium }',
  sealant:
    'sealant LapSealant { family solvent-lap  grade self-levelling  cartridge 10.3 fl-oz  bonds-to epdm, aluminium }',
  primer: 'primer TapePrimer { covers 100 sq-ft per gal  needed-on tpo }',
  cleaner: 'cleaner RoofWash { covers 400 sq-ft per gal  safe-on epdm, tpo }',
  coating: 'coating RoofCoat { family acrylic  covers 100 sq-ft per gal  passes 2 }',
  surface: 'surface sheet { group rubber }',
  policy: 'policy Home { units us  inspect every 6 months  season 04-15 to 10-15 }',
  model: 'model Trailer28 { roof 28 ft by 8 ft epdm  edge curbside, roadside  cap front  cap rear  field membrane }',
  rig: 'rig Trailer { roof 28 ft by 8 ft epdm  edge curbside, roadside  cap front  cap rear  field membrane }',
  history: 'history Trailer { inspected 2026-04-18 { rest not-seen } }',
  fleet: 'fleet Yard { rigs "rigs/*.rig"  crew 2 for 8 h each on mon to fri }',
  // What nobody has looked at is never written as sound.
  inspected: 'inspected 2026-04-18 { rest not-seen }',
  found: 'found 2021-04-10 all with unknown',
};
