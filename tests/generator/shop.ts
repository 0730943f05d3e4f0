// What all rigs of a generated workspace share: materials, and the habits of the shop, with a variant for each coast.

export const sharedFiles: Readonly<Record<string, string>> = {
  'shop/materials.rig': `# What the store rooms hold. Prices are of an invented list, without tax.

tape EdgeTape4 {
  width        4 in
  roll         50 ft at 61.00 USD
  roll         25 ft at 34.50 USD
  bonds-to     epdm, fibreglass, aluminium, abs, solvent-lap, hybrid, tape
  life         14 years, 22 years, 30 years
  apply        50 F to 110 F
}

## Self-levelling, for rubber roofs.
sealant GreyLap {
  family       solvent-lap
  grade        self-levelling
  cartridge    10.3 fl-oz at 9.75 USD
  case         12 cartridges at 105.00 USD
  bead         1 in by 1/4 in
  coats        at most 4
  look-hard    every 18 months
  cover        30 days to 60 days
  bonds-to     epdm, fibreglass, aluminium, abs, solvent-lap
  apply        45 F to 100 F
}

## Stays where it is put, for shells.
sealant ShellSeal {
  family       hybrid
  grade        non-sag
  cartridge    10.1 fl-oz at 12.40 USD
  case         12 cartridges at 134.00 USD
  bead         1/2 in by 1/4 in
  coats        at most 3
  bonds-to     epdm, fibreglass, aluminium, abs, hybrid
  apply        40 F to 100 F
}

## Bought by mistake once. It is kept here so that old records can be read.
sealant ClearSilicone { family silicone  bonds-to epdm, fibreglass, aluminium, abs }

sealant BedStrip { family butyl  cartridge 10.3 fl-oz at 7.60 USD  bonds-to epdm, fibreglass, aluminium, abs, wood }

cleaner MildWash { solvent detergent  container 1 gal at 14.00 USD  covers 400 sq-ft per gal }

cleaner Wipe { solvent isopropyl  container 1 qt at 8.50 USD  covers 200 sq-ft per gal  passes 2 }
`,
  'shop/policy.rig': `use "materials.rig"

policy Shop {
  inspect        every 8 months
  due-soon       30 days
  season         04-15 to 10-31
  currency       USD
  labour         48.00 USD per h
  tax            6.5 % on materials
  horizon        10 years
  spare          8 %
  wash-with      MildWash
  wipe-with      Wipe
}

policy Coast like Shop {
  follow-up      hairline within 9 months
  lead           EdgeTape4 10 days
}

policy Desert like Shop {
  labour         44.00 USD per h
}

group CoastRigs under Coast

group DesertRigs under Desert
`,
};

/** The policies that depots take in turn. The rigs of the first name theirs, those of the others belong to a group. */
export const policies = ['Shop', 'Coast', 'Desert'] as const;
export type PolicyName = (typeof policies)[number];
export const groupOf: Readonly<Record<PolicyName, string | undefined>> = {
  Shop: undefined,
  Coast: 'CoastRigs',
  Desert: 'DesertRigs',
};
