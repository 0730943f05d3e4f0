// The cautions of a paper: those that apply, the deadliest first, at most seven. Reminders that defer to labels, the
// maker's manual, local codes and licensed trades; no sentence says that a roof bears anybody or that a rig is dry.

/** What is done, as far as it decides which cautions apply. */
export interface Dangers {
  readonly roofWork: boolean;
  readonly solvents: boolean;
  readonly urethane: boolean;
  readonly stripping: boolean;
  readonly washing: boolean;
  /** Openings are taped, sealed or covered. */
  readonly closing: boolean;
  readonly wet: boolean;
  /** Built before 1980, or nobody knows when. */
  readonly old: boolean;
}

interface Caution {
  readonly applies: (dangers: Dangers) => boolean;
  readonly text: string;
  readonly source: string;
}

/** From the deadliest on. */
const cautions: readonly Caution[] = [
  {
    applies: (d) => d.roofWork,
    text: 'Falls kill. A roof edge is 3 to 4 m (10 to 13 ft) up and has no rail: work from a platform or a ladder at the edge first, never alone, never backwards. Foot of a ladder one quarter of its working length out, side rails 3 ft above the landing or the ladder secured. Local rules on work at height come first.',
    source: 'published: 29 CFR 1926.1053(b)(1) and (b)(5)(i) for the ladder; the rest common practice',
  },
  {
    applies: (d) => d.roofWork,
    text: "Whether this roof bears a person is not known here: the maker's manual says it. Spread the load over framing; never step on vents, skylights, soft places or curved fronts. Treat skylights and lids as holes.",
    source: 'common practice; published: OSHA asks to guard skylights or keep off them',
  },
  {
    applies: (d) => d.roofWork,
    text: 'Keep 10 ft (3 m) from overhead lines with ladders and poles. Shore power, inverter and generator off before anything electrical is opened; solar panels stay live in daylight. Come down for wind, lightning and dark.',
    source: 'published: OSHA for the distance from lines; the rest common practice',
  },
  {
    applies: (d) => d.solvents,
    text: 'Solvents burn at any temperature of a working day (flash points: acetone -18 C / 0 F, isopropyl alcohol 12 C / 53 F). Gas, fridge, heater and every pilot flame off; vapour runs down the vents into the rig. Gloves, eye cover, rags into a closed metal can. The label comes first.',
    source:
      'published: NTP chemical repository (acetone), NIOSH Pocket Guide (isopropyl alcohol); the rest common practice',
  },
  {
    applies: (d) => d.closing,
    text: 'Carbon monoxide kills unseen: tape, sealant, cover or tarp never closes a vent of furnace, heater, fridge or generator, and none of them runs while its vent is closed.',
    source: 'from memory',
  },
  {
    applies: (d) => d.urethane,
    text: 'Urethanes and their primers hold isocyanates: one exposure too many can mean asthma for life. Wear what the label asks for.',
    source: 'published: NIOSH HETA 2004-0038-2966',
  },
  {
    applies: (d) => d.old && d.stripping,
    text: 'Old sealant on rigs from before about 1980 may hold PCB or asbestos: no dry sanding; have it tested, and dispose of it as the law asks.',
    source: 'published: EPA-747-F-09-004 for PCB in caulk; asbestos from memory',
  },
  {
    applies: (d) => d.washing || d.roofWork,
    text: 'A wet, soapy, frosty or chalky membrane is as slippery as ice. Wash from the ladder side and walk away from the edge.',
    source: 'common practice',
  },
  {
    applies: (d) => d.roofWork,
    text: 'Full sun adds up to 15 F (8 C) to the heat index. Water, shade and a second person; a dark roof burns knees and hands, a white one blinds.',
    source: 'published: OSHA heat index guidance for the 15 F; the rest common practice',
  },
  {
    applies: (d) => d.roofWork,
    text: 'Chock the wheels, jacks down, keys out, a sign on the wheel: a person is on the roof. Slides locked while anyone is on or under them.',
    source: 'common practice',
  },
  {
    applies: (d) => d.stripping,
    text: 'Cut away from yourself and never on the membrane; plastic scraper first. A heat gun softens membranes, lights foam and hides wiring.',
    source: 'common practice',
  },
  {
    applies: (d) => d.wet,
    text: 'Wet places grow mould within a day or two; more than about 1 m2 (10 sq ft) of it is work for a specialist.',
    source: 'published: EPA 402-K-02-003',
  },
];

/** The cautions that apply, the deadliest first, at most seven. */
export function cautionsFor(dangers: Dangers): readonly { readonly text: string; readonly source: string }[] {
  return cautions
    .filter((caution) => caution.applies(dangers))
    .slice(0, 7)
    .map(({ text, source }) => ({ text, source }));
}

/** Who comes before every paper, and what its figures rest on. */
export const deferral =
  "These are reminders. Labels, the maker's manual, local codes and licensed trades come first. Everything here is computed from what was recorded; what was not recorded it does not know.";
