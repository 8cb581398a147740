import type { AnchorMode, AnchorRules } from '../../codes/anchor-rules.ts'
import { distance, type Point } from '../../panel/point.ts'
import type { Region } from '../../panel/region.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'
import type { InsertAction, InsertMode, InsertResistance, ModeLaw } from '../stages/stage.ts'
import { anchorResistance } from './anchor-resistance.ts'

export interface HandlingModesInput {
  readonly rules: AnchorRules
  /** Outline of the panel less its openings. */
  readonly region: Region
  /** mm */
  readonly thickness: number
  /** The insert looked at. */
  readonly mark: string
  readonly at: Point
  /** All other inserts of the panel. */
  readonly others: readonly Point[]
  /** The yard's kind of it; sizes as it lists them. */
  readonly kind: {
    readonly mark: string
    readonly kind: 'face' | 'edge'
    readonly depth?: number | undefined
    readonly head?: number | undefined
    readonly shaft?: number | undefined
    readonly steel?: number | undefined
  }
  readonly cracked: boolean
  /** What pulls on it, one for each angle of the panel. */
  readonly actions: readonly InsertAction[]
}

/** Strength that the nominal values are worked out at, MPa: each mode's law carries them to the strength of the hour. */
const REFERENCE = 20

/** How each mode grows with strength. */
const LAWS: Readonly<Record<AnchorMode, ModeLaw>> = {
  steel: 'constant',
  breakout: 'root',
  pullout: 'linear',
  blowout: 'root',
  splitting: 'root',
  edge: 'root',
  pryout: 'root',
}

/** Left to the maker's rating where the yard does not give what they need: a rated load covers the steel and asks for its own edge distances. */
const RATED: readonly AnchorMode[] = ['steel', 'splitting']

/**
 * Nominal resistances of one lifting insert in its concrete, with the greatest demand on each over all angles: for the family's handling margin.
 *
 * The insert stands alone; shear is taken in every direction. Unknown without the depth or head of its kind, without its shank where there is shear,
 * where another insert is nearer than three depths (they would act as a group) and where `anchorResistance` is. The rules' own range of strength
 * (eu from 12 MPa) does not follow from the laws: ask at the strength of the hour too where it is low.
 */
export function handlingModes(input: HandlingModesInput): Worked<InsertResistance> {
  const { rules, region, thickness, mark, at, others, kind, cracked, actions } = input
  const { depth, head } = kind
  if (depth === undefined) return unknown(`insert ${mark}: depth of ${kind.mark}`)
  if (head === undefined) return unknown(`insert ${mark}: head of ${kind.mark}`)
  if (others.some((other) => distance(other, at) < 3 * depth)) {
    return unknown(`insert ${mark}: another insert within ${3 * depth} mm; they would act as a group`)
  }
  const tension = Math.max(0, ...actions.map((action) => action.tension))
  const shear = Math.max(0, ...actions.map((action) => Math.abs(action.shear)))
  const found = anchorResistance({
    rules,
    at: [at],
    region,
    thickness,
    depth,
    head,
    shaft: kind.shaft ?? null,
    steel: kind.steel ?? null,
    strength: REFERENCE,
    cracked,
    kind: kind.kind,
    tension,
    shear: shear > 0 ? { force: shear } : null,
  })
  if (!found.known) return unknown(...found.gaps.map((gap) => `insert ${mark}: ${gap}`))
  const gaps = found.value.modes.flatMap(({ mode, nominal, unknown: missing = [] }) =>
    nominal === null && !RATED.includes(mode) ? missing.map((gap) => `insert ${mark}: ${gap}`) : [],
  )
  if (gaps.length > 0) return unknown(...gaps)
  const modes = found.value.modes.flatMap(({ mode, action, nominal, demand }): InsertMode[] =>
    nominal === null || demand === null
      ? []
      : [{ mode: `${mode}, ${action}`, nominal, demand, law: LAWS[mode] }],
  )
  return known({ at: REFERENCE, cracked, modes }, found.value.working)
}
