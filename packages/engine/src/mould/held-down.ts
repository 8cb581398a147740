import type { DrawnDuct, DrawnVoid } from '../panel/drawn-voids.ts'
import type { Point, Ring } from '../panel/point.ts'
import { area } from '../panel/polygon.ts'
import { formerMass } from '../panel/void-bodies.ts'
import { alongLine, lengthOf } from '../panel/way.ts'
import { commonPractice, GEOMETRY } from '../working/source.ts'
import { type Assumed, known, type Step, type Worked } from '../working/worked.ts'
import type { YardStrap } from '../yard/yard.ts'
import { longWay, strapPlaces } from './strap-places.ts'
import { unequalPush, voidFormer } from './void-former.ts'

/** Farthest from one strap or tie to the next where the yard gives none, mm. Common practice, no source. */
export const LONGEST_STRAP_SPACING = 1000
/** A former on one strap turns over. */
const LEAST_STRAPS = 2
const SPACING = commonPractice('spacing of straps and ties')

/** A void former while the concrete is fluid, and what holds it. */
export interface HeldVoid {
  readonly mark: string
  /** Concrete gets under it; false: it sits sealed on the bed. */
  readonly floats: boolean
  /** mm */
  readonly above: number
  readonly depth: number
  readonly length: number
  readonly width: number
  /** Uplift, kN; of a sealed one that which a leak would give. */
  readonly gross: number
  readonly net: number
  /** To be held down, kN; 0 where sealed. */
  readonly hold: number
  /** The same where the first layer stops at half its depth and no longer flows, kN. */
  readonly holdInTwo: number
  /** Top of that first layer above the mould face, mm. */
  readonly firstLayer: number
  /** Null where the yard gives no strap; 0 where nothing lifts it. */
  readonly straps: number | null
  /** From one to the next, mm. */
  readonly spacing: number | null
  /** On one strap, kN. */
  readonly load: number | null
  /** Where each crosses it, mm. */
  readonly at: readonly (readonly [Point, Point])[]
  /** Push on a metre of its side with concrete to the top face there and none beyond, kN/m. */
  readonly push: number
}

/** A duct while the concrete is fluid, and what holds it. */
export interface HeldDuct {
  readonly mark: string
  readonly diameter: number
  /** Axis above the mould face, mm. */
  readonly height: number
  /** mm */
  readonly length: number
  /** kN/m */
  readonly gross: number
  readonly net: number
  readonly hold: number
  /** From one tie to the next, mm; null where the yard gives no strap. */
  readonly spacing: number | null
  readonly ties: number | null
  readonly by: 'strength of a tie' | 'longest spacing' | null
  /** On one tie, kN. */
  readonly load: number | null
  readonly at: readonly Point[]
}

const STRAP_GAP = 'yard.strap: working load of one strap or tie-down'

/** What lets straps and ties not be counted; null where the yard gives them. */
export function strapGap(strap: YardStrap | null): string | null {
  return strap === null ? STRAP_GAP : null
}

function longestOf(strap: YardStrap | null): {
  readonly longest: number
  readonly assumed: readonly Assumed[]
} {
  const longest = strap?.longest ?? LONGEST_STRAP_SPACING
  return {
    longest,
    assumed:
      strap?.longest === undefined
        ? [
            {
              field: 'longest spacing of straps and ties',
              value: longest,
              unit: 'mm',
              why: 'common practice',
            },
          ]
        : [],
  }
}

/**
 * Uplift of a void former, straps by the load on them and by their spacing, and the push from one side. Thickness mm.
 *
 * Unknown for sizes not above 0. Example: foam 1.0 × 0.6 × 0.1 m of 20 kg/m³, straps of 0.8 kN: 2.142 kN to hold, 3 straps 333 mm apart.
 */
export function heldVoid({
  former,
  thickness,
  strap,
  weight,
}: {
  readonly former: DrawnVoid
  readonly thickness: number
  readonly strap: YardStrap | null
  /** Of fresh concrete, kN/m³; 24 assumed. */
  readonly weight?: number | undefined
}): Worked<HeldVoid> {
  const ring = former.outline as unknown as Ring
  const { mark, above, depth } = former
  const floats = above > 0
  const size = { volume: (area(ring) * depth) / 1e9, mass: formerMass(former) }
  const lifted = voidFormer({ ...size, weight, floats: true })
  const asSet = voidFormer({ ...size, weight, floats })
  const inTwo = voidFormer({ ...size, volume: size.volume / 2, weight, floats })
  const heads = { high: thickness - above, low: thickness - above - depth }
  const push = unequalPush(weight === undefined ? heads : { ...heads, weight })
  if (!lifted.known) return lifted
  if (!asSet.known) return asSet
  if (!inTwo.known) return inTwo
  if (!push.known) return push
  const { longest, assumed } = longestOf(strap)
  const { length, width } = longWay(ring)
  const { hold } = asSet.value
  const straps = hold === 0 ? 0 : strap === null ? null : strapsFor(hold, length, strap.rated, longest)
  const counted = straps ?? 0
  const steps: Step[] =
    strap === null || counted === 0
      ? []
      : [
          {
            symbol: `n ${mark}`,
            formula: 'max(ceil(F / R), ceil(L / s), n0)',
            given: { F: hold, R: strap.rated, L: length, s: longest, n0: LEAST_STRAPS },
            result: counted,
            unit: '',
            source: SPACING,
            note: 'straps: by their working load, by their longest spacing, and two at least',
          },
          {
            symbol: `F1 ${mark}`,
            formula: 'F / n',
            given: { F: hold, n: counted },
            result: hold / counted,
            unit: 'kN',
            source: GEOMETRY,
            note: 'on one strap, all alike',
          },
        ]
  return known(
    {
      mark,
      floats,
      above,
      depth,
      length,
      width,
      gross: lifted.value.gross,
      net: lifted.value.net,
      hold,
      holdInTwo: inTwo.value.hold,
      firstLayer: above + depth / 2,
      straps,
      spacing: counted === 0 ? null : length / counted,
      load: counted === 0 ? null : hold / counted,
      at: counted === 0 ? [] : strapPlaces(ring, counted),
      push: push.value,
    },
    [...asSet.working, ...steps, ...push.working].map((step) => named(step, `void former ${mark}`)),
    [...ofUplift(asSet), ...(counted === 0 ? [] : assumed)],
  )
}

function strapsFor(hold: number, length: number, rated: number, longest: number): number {
  return Math.max(Math.ceil(hold / rated - 1e-9), Math.ceil(length / longest - 1e-9), LEAST_STRAPS)
}

/**
 * Uplift of a metre of duct and how far apart its ties may be: by the load on them, by their longest spacing.
 *
 * Unknown for sizes not above 0. Example: ⌀100 of no mass: 0.188 kN/m, 0.283 to hold; ties of 0.8 kN stand 1000 mm apart by spacing.
 */
export function heldDuct({
  duct,
  strap,
  weight,
}: {
  readonly duct: DrawnDuct
  readonly strap: YardStrap | null
  /** Of fresh concrete, kN/m³; 24 assumed. */
  readonly weight?: number | undefined
}): Worked<HeldDuct> {
  const { mark, diameter, height, mass = 0 } = duct
  const line = duct.line as unknown as readonly Point[]
  // A metre of it.
  const found = voidFormer({ volume: (Math.PI * (diameter / 1000) ** 2) / 4, mass, weight, floats: true })
  if (!found.known) return found
  const { longest, assumed } = longestOf(strap)
  const { gross, net, hold } = found.value
  const length = lengthOf(line)
  const strong = strap === null ? null : hold > 0 ? (1000 * strap.rated) / hold : Number.POSITIVE_INFINITY
  const allowed = strong === null ? null : Math.min(strong, longest)
  const at = allowed === null ? [] : alongLine(line, allowed).map((one) => one.at)
  const spacing = allowed === null ? null : Math.max(...alongLine(line, allowed).map((one) => one.length))
  const steps: Step[] =
    strap === null || spacing === null
      ? []
      : [
          {
            symbol: `s ${mark}`,
            formula: hold > 0 ? 'min(1000 R / F, s0)' : 'min(s0, s0)',
            given: { R: strap.rated, F: hold, s0: longest },
            result: allowed ?? longest,
            unit: 'mm',
            source: SPACING,
            note: 'farthest from tie to tie; they stand evenly on each straight, half a spacing from its ends',
          },
          {
            symbol: `F1 ${mark}`,
            formula: 'F s / 1000',
            given: { F: hold, s: spacing },
            result: (hold * spacing) / 1000,
            unit: 'kN',
            source: GEOMETRY,
            note: 'on one tie',
          },
        ]
  return known(
    {
      mark,
      diameter,
      height,
      length,
      gross,
      net,
      hold,
      spacing,
      ties: spacing === null ? null : at.length,
      by: strong === null ? null : strong < longest ? 'strength of a tie' : 'longest spacing',
      load: spacing === null ? null : (hold * spacing) / 1000,
      at,
    },
    [...found.working, ...steps].map((step) => named(step, `a metre of duct ${mark}`)),
    [...ofUplift(found), ...(spacing === null ? [] : assumed)],
  )
}

/** Named apart from the weight that presses on side forms. */
function ofUplift({ assumed = [] }: Worked<unknown>): Assumed[] {
  return assumed.map((line) => ({ ...line, field: `uplift of void formers and ducts: ${line.field}` }))
}

function named(step: Step, of: string): Step {
  return { ...step, note: step.note === undefined ? of : `${of}: ${step.note}` }
}
