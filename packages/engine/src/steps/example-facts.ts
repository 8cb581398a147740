import { codeFamily, type FamilyId } from '../codes/index.ts'
import { planLift } from '../lift/plan-lift.ts'
import { casting, liftYard } from '../lift/reference-panels.ts'
import { LEAST_STRENGTH_LIMIT } from '../lift/wanted-strength.ts'
import type { Plan } from '../plan.ts'
import type { Asked } from '../working/asked.ts'
import type { Check } from '../working/check.ts'
import type { CardRow } from './card.ts'
import { type CardInput, cardOf } from './card-of.ts'
import { emptyPanelFacts } from './empty-facts.ts'
import type {
  PanelFacts,
  Recorded,
  Signed,
  SignedDifference,
  Signer,
  SpecimenResult,
  YardFacts,
} from './facts.ts'
import type { StepId } from './steps.ts'

/** A panel, its yard and its record by hand, for tests of cards. */
export const LEAD: Signer = { id: 'p1', name: 'Nora Quill', role: 'lead' }
export const ENGINEER: Signer = { id: 'p2', name: 'Ada Roe', role: 'engineer' }
export const NOW = '2026-06-02T06:00:00.000Z'
const CAST = '2026-06-01T12:00:00.000Z'

export function recorded(value: unknown, change: Partial<Recorded> = {}): Recorded {
  return {
    entry: `v-${String(value)}`,
    value,
    verdict: 'pass',
    by: LEAD,
    seen: NOW,
    stored: NOW,
    revision: 'A',
    reason: null,
    corrects: [],
    attachments: [],
    ...change,
  }
}

export function signed(entry: string, change: Partial<Signed> = {}): Signed {
  return { entry, by: LEAD, seen: NOW, stored: NOW, reason: null, revision: 'A', ...change }
}

export function specimen(strength: number, change: Partial<SpecimenResult> = {}): SpecimenResult {
  return {
    entry: `s-${strength}`,
    specimen: 'CY1',
    kind: 'cylinder',
    age: 17,
    strength,
    by: LEAD,
    seen: NOW,
    ...change,
  }
}

/** The parts of a plan that a card reads, the lift computed, other checks and asked items as given. */
export function liftOnlyPlan({
  drawing = {},
  yard = liftYard(),
  family = 'eu',
  limits = {},
  checks = [],
  asked = [],
}: {
  readonly drawing?: object
  readonly yard?: YardFacts['yard']
  readonly family?: FamilyId
  readonly limits?: YardFacts['limits']
  readonly checks?: readonly Check[]
  readonly asked?: readonly Asked[]
} = {}): Plan {
  const panel = casting(drawing)
  const lift = planLift({ panel, yard, family: codeFamily(family), limits })
  const parts = {
    family,
    centre: panel.centre,
    thickness: panel.drawing.thickness,
    checks: [...lift.checks, ...checks],
    toRecord: [...lift.toRecord, ...asked],
    lift,
    pour: { mix: 'M40' },
  }
  // Only what cards read: a whole plan of every room is tested with the plan.
  return parts as unknown as Plan
}

export function yardFacts(change: Partial<YardFacts> = {}): YardFacts {
  return { yard: liftYard(), gear: {}, limits: {}, ...change }
}

export const ENTERED_LEAST = {
  [LEAST_STRENGTH_LIMIT]: {
    entry: 'l1',
    value: 12,
    unit: 'MPa',
    standard: 'Works rule 4',
    edition: '2025',
    by: ENGINEER,
  },
}

/** Everything on record that the strip hold asks for. */
export function readyToStrip(): PanelFacts {
  const { drawing } = casting()
  const empty = emptyPanelFacts({ job: 'J1', mark: 'P6' })
  const values: Record<string, Recorded> = {
    crane: recorded('C1'),
    'crane-radius': recorded(8000),
    'below-hook': recorded(700),
  }
  for (const tick of ['edges-free', 'inserts-clean', 'release', 'zone-clear', 'wind']) {
    values[tick] = recorded(true, { entry: `v-${tick}` })
  }
  return {
    ...empty,
    revision: 'A',
    drawing,
    cast: { entry: 'c1', at: CAST, bed: 'B1', mix: 'M40' },
    design: signed('d1', { by: ENGINEER }),
    specimens: [specimen(24)],
    steps: {
      ...empty.steps,
      set: { ...empty.steps.set, opening: { ...signed('o1'), rests: [] } },
      strip: { ...empty.steps.strip, values },
    },
  }
}

/** The same facts with another value at one item of one step; undefined takes it away. */
export function withValue(
  facts: PanelFacts,
  step: StepId,
  id: string,
  value: Recorded | undefined,
): PanelFacts {
  const values = { ...facts.steps[step].values }
  if (value === undefined) delete values[id]
  else values[id] = value
  return { ...facts, steps: { ...facts.steps, [step]: { ...facts.steps[step], values } } }
}

/** What an engineer signs on a row of the strip card: the row as it stands. */
export function differenceOf(row: CardRow, change: Partial<SignedDifference> = {}): SignedDifference {
  const figure = (value: number | string | null): number | null => (typeof value === 'number' ? value : null)
  return {
    ...signed(`diff-${row.id}`, { by: ENGINEER, reason: 'held beside the design by hand' }),
    reference: 'LD-3',
    verdict: row.verdict === 'fail' ? 'fail' : 'unknown',
    demand: figure(row.demand),
    limit: figure(row.limit),
    unit: row.unit,
    missing: row.unknown,
    ...change,
  }
}

/** The same facts with a difference at some rows of the strip card. */
export function withDifference(facts: PanelFacts, differences: Readonly<Record<string, SignedDifference>>) {
  const { strip } = facts.steps
  return {
    ...facts,
    steps: {
      ...facts.steps,
      strip: { ...strip, differences: { ...strip.differences, ...differences } },
    },
  } satisfies PanelFacts
}

/** The same facts with every difference signed that an engineer may sign now. */
export function differencesSigned(input: Omit<CardInput, 'step'>): PanelFacts {
  const rows = cardOf({ ...input, step: 'strip' }).rows.filter(({ difference }) => difference?.may)
  return withDifference(input.facts, Object.fromEntries(rows.map((row) => [row.id, differenceOf(row)])))
}
