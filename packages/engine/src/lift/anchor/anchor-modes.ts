import type { AnchorAction, AnchorInteraction, AnchorMode, AnchorRules } from '../../codes/anchor-rules.ts'
import type { Point } from '../../panel/point.ts'
import { verdictOf } from '../../working/check.ts'
import { belowZero } from '../../working/guard.ts'
import { enteredBy, type Source } from '../../working/source.ts'
import { joinVerdicts, type Verdict } from '../../working/verdict.ts'
import { type Assumed, known, type Step, unknown, type Worked } from '../../working/worked.ts'
import { type AnchorGroup, type LaidGroup, laid, type ModeFound } from './anchor-group.ts'
import { blowoutMode } from './blowout-mode.ts'
import { breakoutMode } from './breakout-mode.ts'
import { edgeMode } from './edge-mode.ts'
import { shearShare, tensionShares } from './shares.ts'
import { splittingMode } from './splitting-mode.ts'

export interface AnchorModesInput {
  readonly rules: AnchorRules
  readonly group: Omit<AnchorGroup, 'shares'>
  /** Resultant from the centroid of the inserts, mm. */
  readonly eccentricity: Point
  /** Design tension of the whole group, kN; not below 0. */
  readonly tension: number
  /** Design shear of the whole group, kN; `direction` in degrees from x, null where not known. */
  readonly shear: { readonly force: number; readonly direction: number | null } | null
  readonly supplementary: boolean
  readonly ductile: boolean | null
  readonly yieldRatio: number | null
}

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

/** A mode before its factor: what was found, null where the code does not ask. */
interface Asked {
  readonly mode: AnchorMode
  readonly action: AnchorAction
  readonly of: 'group' | 'insert'
  readonly found: Worked<ModeFound> | null
  readonly why: string
}

/**
 * Every mode of one insert or a group in concrete, by the family's anchor code: nominal, design, demand, verdict.
 *
 * A mode whose data is missing is unknown, and so is the verdict unless another mode fails.
 */
export function anchorModes(input: AnchorModesInput): AnchorFound {
  const { rules, tension, shear } = input
  const asked = modesOf(input)
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

/** Every mode that the actions ask for, tension first. */
function modesOf(input: AnchorModesInput): Asked[] {
  const { rules, group: given, eccentricity } = input
  const shares = tensionShares({ at: given.at, eccentricity })
  if (!shares.known)
    return [...tensionModes(input, shares, null, null), ...shearModes(input, shares, null, null)]
  const group = laid({ ...given, shares: shares.value })
  // Asked for in tension and again for pry-out: found once.
  const cone = breakoutMode(rules, group)
  return [...tensionModes(input, shares, group, cone), ...shearModes(input, shares, group, cone)]
}

function tensionModes(
  { rules, group: given, tension }: AnchorModesInput,
  shares: Worked<readonly number[]>,
  group: LaidGroup | null,
  cone: Worked<ModeFound> | null,
): Asked[] {
  const action = 'tension'
  const none = 'no tension'
  const found = (of: (known: LaidGroup) => Worked<ModeFound> | null) => {
    if (tension === 0) return null
    return group === null ? (shares as Worked<ModeFound>) : of(group)
  }
  const most = shares.known ? Math.max(...shares.value) : 1
  const single = (worked: Worked<number>) => found(() => onInsert(worked, most, shares.working ?? []))
  const why = (reason: string) => (tension === 0 ? none : reason)
  const { steel, head } = given
  const noSteel = unknown('steel: resistance of the steel of one insert, kN')
  const noHead = unknown('head: bearing area of the head, mm²')
  return [
    {
      mode: 'steel',
      action,
      of: 'insert',
      found: single(steel === null ? noSteel : entered(steel)),
      why: none,
    },
    { mode: 'breakout', action, of: 'group', found: found(() => cone), why: none },
    {
      mode: 'pullout',
      action,
      of: 'insert',
      found: single(head === null ? noHead : rules.pullout({ ...given, head })),
      why: none,
    },
    {
      mode: 'blowout',
      action,
      of: 'insert',
      found: found((known) => blowoutMode(rules, known)),
      why: why(`no side face so near that ${rules.standard} asks`),
    },
    {
      mode: 'splitting',
      action,
      of: 'group',
      found: found((known) => splittingMode(rules, known)),
      why: why('edges and spacing as far as the product asks'),
    },
  ]
}

function shearModes(
  { rules, group: given, eccentricity, shear }: AnchorModesInput,
  shares: Worked<readonly number[]>,
  group: LaidGroup | null,
  cone: Worked<ModeFound> | null,
): Asked[] {
  if (shear === null || shear.force === 0) return []
  const action = 'shear'
  const found = (of: (known: LaidGroup) => Worked<ModeFound> | null) =>
    group === null ? (shares as Worked<ModeFound>) : of(group)
  const most = shearShare({ at: given.at, eccentricity, direction: shear.direction })
  const { steel } = given
  const across =
    steel === null ? unknown('steel: resistance of the steel of one insert, kN') : rules.steelShear({ steel })
  return [
    {
      mode: 'steel',
      action,
      of: 'insert',
      found: found(() => onInsert(across, most.share, most.working)),
      why: '',
    },
    {
      mode: 'edge',
      action,
      of: 'group',
      found: found((known) => edgeMode(rules, known, shear.direction)),
      why: 'the shear pulls away from every edge in sight',
    },
    {
      mode: 'pryout',
      action,
      of: 'group',
      found: found(() => pryoutMode(rules, given.depth, cone)),
      why: '',
    },
  ]
}

function pryoutMode(
  rules: AnchorRules,
  depth: number,
  cone: Worked<ModeFound> | null,
): Worked<ModeFound> | null {
  if (cone === null || !cone.known) return cone
  const pry = rules.pryout({ depth, breakout: cone.value.nominal })
  return pry.known ? known({ nominal: pry.value, share: 1 }, [...cone.working, ...pry.working]) : pry
}

function onInsert(worked: Worked<number>, share: number, shares: readonly Step[]): Worked<ModeFound> {
  return worked.known ? known({ nominal: worked.value, share }, [...shares, ...worked.working]) : worked
}

function entered(steel: number): Worked<number> {
  return known(steel, [
    {
      symbol: 'Ns',
      formula: 'steel of one insert',
      given: {},
      result: steel,
      unit: 'kN',
      source: enteredBy('the case'),
      by: 'table',
    },
  ])
}

function resultOf(
  { rules, supplementary, ductile, yieldRatio }: AnchorModesInput,
  { mode, action, of }: Pick<Asked, 'mode' | 'action' | 'of'>,
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
