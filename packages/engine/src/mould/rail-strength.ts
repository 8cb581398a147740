import { type Check, compare } from '../working/check.ts'
import { enteredBy, STATICS } from '../working/source.ts'
import type { Step } from '../working/worked.ts'

/**
 * Largest moment over w L² of a rail on so many equal spans under an even load, and the largest push on one prop over w L; more than four spans are
 * below four. Computed by the three-moment equation; second method: stiffness of the line of spans in the test.
 */
const SPANS: readonly { readonly moment: number; readonly push: number }[] = [
  { moment: 1 / 8, push: 1 / 2 },
  { moment: 1 / 8, push: 5 / 4 },
  { moment: 1 / 10, push: 11 / 10 },
  { moment: 3 / 28, push: 8 / 7 },
]

export function spanFactors(spans: number): { readonly moment: number; readonly push: number } {
  const factors = SPANS[Math.min(Math.max(1, Math.floor(spans)), SPANS.length) - 1]
  if (factors === undefined) throw new Error(`spanFactors: found ${spans} spans, expected 1 or more`)
  return factors
}

/** What a yard says of the strength of a side form and its props. */
export interface RailStrength {
  /** Section modulus bending sideways, mm³. */
  readonly section?: number | undefined
  /** Bending stress that is allowed at work, MPa. */
  readonly bending?: number | undefined
  /** Push that one prop or magnet takes at work, kN. */
  readonly propRating?: number | undefined
  /** Push at the top edge that one brace takes at work, kN. */
  readonly braceRating?: number | undefined
}

/** Largest moment of a side, kN·m, and push on a prop, kN; thrust kN/m, spacing mm. */
export function railLoads(
  spans: number,
  thrust: number,
  spacing: number,
): { readonly moment: number; readonly push: number } {
  const { moment, push } = spanFactors(spans)
  const length = spacing / 1000
  return { moment: moment * thrust * length ** 2, push: push * thrust * length }
}

/** Part of the thrust that a brace at the top edge of the concrete holds against turning over about the bed: it acts at a third of the depth. */
export const BRACE_SHARE = 1 / 3

/** Bending of the rail, push on the prop and force in the brace, at the sides where they are largest, against what the yard says of them; no check where it says nothing. */
export function strengthChecks(
  {
    thrust,
    bend,
    push: pushed,
  }: {
    readonly thrust: number
    readonly bend: { readonly spans: number; readonly spacing: number }
    readonly push: { readonly spans: number; readonly spacing: number }
  },
  { section, bending, propRating, braceRating }: RailStrength,
): Check[] {
  const { moment } = railLoads(bend.spans, thrust, bend.spacing)
  const { push } = railLoads(pushed.spans, thrust, pushed.spacing)
  const moments: Step = {
    symbol: 'M',
    formula: 'k w (L / 1000)²',
    given: { k: spanFactors(bend.spans).moment, w: thrust, L: bend.spacing },
    result: moment,
    unit: 'kN·m',
    source: STATICS,
    note: `${bend.spans} equal span${bend.spans === 1 ? '' : 's'}`,
  }
  const checks: Check[] = []
  if (section !== undefined || bending !== undefined) {
    const stress = section === undefined ? null : (moment * 1e6) / section
    checks.push(
      compare({
        id: 'side-form-strength',
        step: 'mould',
        what: 'Bending of the side forms between props',
        demand: stress,
        limit: bending ?? null,
        unit: 'MPa',
        sense: 'at most',
        source: enteredBy('yard: forms'),
        missing: [
          ...(section === undefined ? ['yard.forms.section: section modulus, mm³'] : []),
          ...(bending === undefined ? ['yard.forms.bending: stress allowed at work, MPa'] : []),
        ],
        working:
          section === undefined || stress === null
            ? [moments]
            : [
                moments,
                {
                  symbol: 'σ',
                  formula: '10⁶ M / W',
                  given: { M: moment, W: section },
                  result: stress,
                  unit: 'MPa',
                  source: STATICS,
                },
              ],
      }),
    )
  }
  const pushStep: Step = {
    symbol: 'R',
    formula: 'r w L / 1000',
    given: { r: spanFactors(pushed.spans).push, w: thrust, L: pushed.spacing },
    result: push,
    unit: 'kN',
    source: STATICS,
  }
  if (propRating !== undefined)
    checks.push(
      compare({
        ...RATED,
        id: 'prop-push',
        what: 'Push on one prop or magnet',
        demand: push,
        limit: propRating,
        working: [pushStep],
      }),
    )
  if (braceRating !== undefined) {
    const brace = push * BRACE_SHARE
    checks.push(
      compare({
        ...RATED,
        id: 'brace-force',
        what: 'Force in one brace at the top edge',
        demand: brace,
        limit: braceRating,
        working: [
          pushStep,
          {
            symbol: 'F',
            formula: 'R / 3',
            given: { R: push },
            result: brace,
            unit: 'kN',
            source: STATICS,
            note: 'level, at the top of the concrete; a brace that slopes carries more along itself',
          },
        ],
      }),
    )
  }
  return checks
}

const RATED = {
  step: 'mould',
  unit: 'kN',
  sense: 'at most',
  source: enteredBy('yard: forms'),
  note: 'The maker’s rating, less what heat, oil and dirt take.',
} as const
