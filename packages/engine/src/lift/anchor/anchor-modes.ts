import type { AnchorAction, AnchorInteraction, AnchorMode, AnchorRules } from '../../codes/anchor-rules.ts'
import { verdictOf } from '../../working/check.ts'
import { belowZero } from '../../working/guard.ts'
import type { Source } from '../../working/source.ts'
import { joinVerdicts, type Verdict } from '../../working/verdict.ts'
import type { Assumed, Step, Worked } from '../../working/worked.ts'
import type { ModeFound } from './anchor-group.ts'
import { type AnchorModesInput, type AskedMode, askedModes } from './asked-modes.ts'

/** One way to fail. Null where not known, beside `unknown`. */
export interface AnchorModeResult {
  readonly mode: AnchorMode
  readonly action: AnchorAction
  /** Whether resistance and demand are of the whole group or of its most loaded insert. */
  readonly of: 'group' | 'insert'
  /** kN */
  readonly nominal: number | null
  readonly factor: number | null
  /** Nominal × factor, kN. */
  readonly design: number | null
  /** kN */
  readonly demand: number | null
  /** Demand over design. */
  readonly ratio: number | null
  readonly verdict: Verdict
  readonly source: Source
  readonly unknown?: readonly string[]
  readonly working: readonly Step[]
}

export interface AnchorFound {
  readonly modes: readonly AnchorModeResult[]
  /** Modes that the code does not ask for here, and why. */
  readonly notNeeded: readonly { readonly mode: AnchorMode; readonly why: string }[]
  /** The mode of the greatest demand over design, of those that are known. */
  readonly governing: AnchorMode | null
  /** Demand of the governing mode, kN. */
  readonly demand: number | null
  /** Demand over design of the governing mode. */
  readonly ratio: number | null
  /** The mode of the greatest demand over nominal, of those that are known. */
  readonly governingNominal: {
    readonly mode: AnchorMode
    readonly nominal: number
    readonly demand: number
    readonly ratio: number
  } | null
  readonly interaction: readonly (AnchorInteraction & { readonly verdict: Verdict })[]
  /** The anchor code's alone: neither φ nor 1/γ is a lifting margin. */
  readonly verdict: Verdict
  readonly unknown: readonly string[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

/**
 * Every mode of one insert or a group in concrete, by the family's anchor code: nominal, design, demand, verdict.
 *
 * A mode whose data is missing is unknown, and so is the verdict unless another mode fails.
 */
export function anchorModes(input: AnchorModesInput): AnchorFound {
  const { rules, tension, shear } = input
  const asked = askedModes(input)
  const notNeeded = asked.flatMap(({ mode, found, why }) => (found === null ? [{ mode, why }] : []))
  const assumed: Assumed[] = [
    { field: 'concrete', value: 'normal weight', unit: '', why: 'lightweight concrete is not covered' },
  ]
  const modes = asked.flatMap(({ found, ...mode }) => {
    if (found === null) return []
    const total = mode.action === 'tension' ? tension : (shear?.force ?? 0)
    const result = resultOf(input, mode, found, total)
    for (const one of result.assumed) if (!assumed.some(({ field }) => field === one.field)) assumed.push(one)
    return [result.mode]
  })
  const together = interactionOf(rules, modes)
  const unknowns = [...new Set(modes.flatMap((mode) => mode.unknown ?? []))]
  const governing = greatest(modes, ({ ratio }) => ratio)
  const nominal = greatest(modes, ({ demand, nominal: of }) =>
    demand === null || of === null ? null : demand / of,
  )
  return {
    modes,
    notNeeded,
    governing: governing?.one.mode ?? null,
    demand: governing?.one.demand ?? null,
    ratio: governing?.value ?? null,
    governingNominal:
      nominal === null
        ? null
        : {
            mode: nominal.one.mode,
            nominal: nominal.one.nominal as number,
            demand: nominal.one.demand as number,
            ratio: nominal.value,
          },
    interaction: together.found,
    verdict: joinVerdicts([
      ...modes.map(({ verdict }) => verdict),
      ...together.found.map(({ verdict }) => verdict),
    ]),
    unknown: unknowns,
    working: [...modes.flatMap(({ working }) => working), ...together.working],
    assumed,
  }
}

function resultOf(
  { rules, supplementary, ductile, yieldRatio }: AnchorModesInput,
  { mode, action, of }: Pick<AskedMode, 'mode' | 'action' | 'of'>,
  found: Worked<ModeFound>,
  total: number,
): { readonly mode: AnchorModeResult; readonly assumed: readonly Assumed[] } {
  const source = rules.sources[mode]
  const factor = rules.factor({ mode, action, supplementary, ductile, yieldRatio })
  const gaps = [...(found.known ? [] : found.gaps), ...(factor.known ? [] : factor.gaps)]
  if (!found.known || !factor.known) {
    return {
      mode: {
        mode,
        action,
        of,
        nominal: found.known ? found.value.nominal : null,
        factor: factor.known ? factor.value : null,
        design: null,
        demand: of === 'group' ? total : null,
        ratio: null,
        verdict: 'unknown',
        source,
        unknown: gaps.map((gap) => `${mode}: ${gap}`),
        working: [],
      },
      assumed: [],
    }
  }
  const { nominal, share } = found.value
  const design = nominal * factor.value
  const demand = total * share
  const force = action === 'tension' ? 'N' : 'V'
  return {
    mode: {
      mode,
      action,
      of,
      nominal,
      factor: factor.value,
      design,
      demand,
      ratio: demand / design,
      verdict: verdictOf(demand, design, 'at most'),
      source,
      working: [
        ...found.working,
        ...factor.working,
        {
          symbol: `${force}d ${mode}`,
          formula: 'R k',
          given: { R: nominal, k: factor.value },
          result: design,
          unit: 'kN',
          source,
          note: 'design resistance: no lifting margin is in it',
        },
        {
          symbol: `${force} ${mode}`,
          formula: 'F p / (R k)',
          given: { F: total, p: share, R: nominal, k: factor.value },
          result: demand / design,
          unit: '',
          source,
          note: of === 'group' ? 'the whole group' : 'the most loaded insert',
        },
      ],
    },
    assumed: factor.assumed ?? [],
  }
}

function interactionOf(
  rules: AnchorRules,
  modes: readonly AnchorModeResult[],
): {
  readonly found: readonly (AnchorInteraction & { readonly verdict: Verdict })[]
  readonly working: readonly Step[]
} {
  const most = (action: AnchorAction, steel: boolean) =>
    Math.max(
      0,
      ...modes
        .filter((one) => one.action === action && (one.mode === 'steel') === steel)
        .map(({ ratio }) => ratio ?? 0),
    )
  const ratios = {
    steelTension: most('tension', true),
    concreteTension: most('tension', false),
    steelShear: most('shear', true),
    concreteShear: most('shear', false),
  }
  if (belowZero(ratios).length > 0) return { found: [], working: [] }
  const together = rules.interaction(ratios)
  if (!together.known) return { found: [], working: [] }
  return {
    found: together.value.map((one) => ({ ...one, verdict: verdictOf(one.value, one.limit, 'at most') })),
    working: together.working,
  }
}

function greatest<T>(
  items: readonly T[],
  of: (item: T) => number | null,
): { readonly one: T; readonly value: number } | null {
  let found: { readonly one: T; readonly value: number } | null = null
  for (const one of items) {
    const value = of(one)
    if (value !== null && (found === null || value > found.value)) found = { one, value }
  }
  return found
}
