export const STEP_IDS = [
  'steel-in',
  'cut-bend',
  'cage',
  'mould',
  'set',
  'deliver',
  'place',
  'finish',
  'cure',
  'strip',
  'as-built',
  'store',
  'load',
  'hand-over',
] as const

/** One of the fourteen steps of a panel's life, in their order. */
export type StepId = (typeof STEP_IDS)[number]

export interface PanelStep {
  readonly id: StepId
  /** Short name for the ladder and the title block. */
  readonly name: string
  /** The card's question, in the words of the person doing it. */
  readonly question: string
  /** A hold point: every check must pass and somebody entitled must sign. */
  readonly hold: boolean
  /** The caution that closes the card: first a short order, then the reason or the limit of what we know. */
  readonly caution: { readonly order: string; readonly text: string }
}

/** The fourteen steps with what their cards say. */
export const STEPS: readonly PanelStep[] = [
  {
    id: 'steel-in',
    name: 'Steel in',
    question: 'Is this the steel that was ordered?',
    hold: false,
    caution: {
      order: 'Keep clear of the load while bundles are lifted.',
      text: 'What is rolled on the bar decides, not the docket. A bundle that is not accepted is kept apart and not cut.',
    },
  },
  {
    id: 'cut-bend',
    name: 'Cut and bend',
    question: 'Is every bar cut to length and bent no tighter than allowed?',
    hold: false,
    caution: {
      order: 'Hands clear of the shear and the turning pin.',
      text: 'A bar bent too tight is scrap: do not bend it back. The drawing and the engineer’s schedule outrank this list.',
    },
  },
  {
    id: 'cage',
    name: 'Cage',
    question: 'Is the cage tied as drawn?',
    hold: false,
    caution: {
      order: 'Cap or guard bar ends at eye height.',
      text: 'Laps are as long as drawn, in contact, and tied. A short lap is for the engineer to decide.',
    },
  },
  {
    id: 'mould',
    name: 'Mould',
    question: 'Is the mould clean, oiled, square and stiff?',
    hold: false,
    caution: {
      order: 'Ventilate and glove up before oiling.',
      text: 'Follow the release agent’s data sheet. Oiled steel is slippery. No oil on the reinforcement.',
    },
  },
  {
    id: 'set',
    name: 'Set',
    question: 'Is everything in the mould as drawn, ready for concrete?',
    hold: true,
    caution: {
      order: 'Nobody under the cage while it is craned in.',
      text: 'After the pour nothing here can be put right. The lead decides; planned figures do not replace the drawing or the engineer.',
    },
  },
  {
    id: 'deliver',
    name: 'Concrete arrives',
    question: 'Is this the concrete that was ordered, and is it still good?',
    hold: false,
    caution: {
      order: 'Gloves, boots and eye protection: fresh concrete burns.',
      text: 'Stay out of the path of the reversing truck. Water only within what the ticket allows.',
    },
  },
  {
    id: 'place',
    name: 'Place and compact',
    question: 'Has every part been filled and vibrated, in order?',
    hold: false,
    caution: {
      order: 'Check the vibrator’s cable and guard before it runs.',
      text: 'Limit the time on the tool to what its data sheet gives for hand-arm vibration. Do not stand on the cage.',
    },
  },
  {
    id: 'finish',
    name: 'Finish',
    question: 'Is the surface ready for the next pass?',
    hold: false,
    caution: {
      order: 'Keep feet and cables clear of the power float.',
      text: 'The times are planned; the surface decides. Working in bleed water weakens the skin.',
    },
  },
  {
    id: 'cure',
    name: 'Cure',
    question: 'Is it covered, warm enough, and gaining strength?',
    hold: false,
    caution: {
      order: 'Hot covers and steam scald.',
      text: 'An estimated strength rests on the mix’s own tests and the logged temperature; it does not replace a test of this pour.',
    },
  },
  {
    id: 'strip',
    name: 'Strip and lift',
    question: 'What is still open before this lift?',
    hold: true,
    caution: {
      order: 'Nobody under or beside the panel.',
      text: 'Planned figures do not replace the lift supervisor, the local code or the engineer. If it sticks, stop: do not jerk it free.',
    },
  },
  {
    id: 'as-built',
    name: 'As built',
    question: 'Is it the size and shape that was drawn?',
    hold: false,
    caution: {
      order: 'Measure with the panel landed and steadied.',
      text: 'Do not reach under a hanging panel. Out-of-tolerance is recorded, then decided by somebody entitled.',
    },
  },
  {
    id: 'store',
    name: 'Store',
    question: 'Does it stand so that it cannot fall or bow?',
    hold: false,
    caution: {
      order: 'A panel on edge can topple: keep it tied until the rack holds it.',
      text: 'Supports where the drawing or plan says. Ground must carry the rack; wind counts.',
    },
  },
  {
    id: 'load',
    name: 'Load',
    question: 'Is it the right panel, sound, and restrained for the road?',
    hold: false,
    caution: {
      order: 'Do not release the hook until the restraint is on.',
      text: 'Load and axle limits are those of the road authority and the carrier. A panel with an open defect stays here.',
    },
  },
  {
    id: 'hand-over',
    name: 'Hand over',
    question: 'Is the passport complete and handed over?',
    hold: false,
    caution: {
      order: 'The site’s lifting plan takes over from here.',
      text: 'The passport proves what was recorded. It does not judge the erection, the bracing or the design.',
    },
  },
]

const BY_ID = new Map(STEPS.map((step) => [step.id, step]))

export function panelStep(id: StepId): PanelStep {
  const step = BY_ID.get(id)
  if (step === undefined) throw new Error(`no step ${id}`)
  return step
}

export function isStepId(value: unknown): value is StepId {
  return (STEP_IDS as readonly unknown[]).includes(value)
}
