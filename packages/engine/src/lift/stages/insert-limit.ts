import type { CodeFamily } from '../../codes/family.ts'
import type { EnteredLimit } from '../../steps/facts.ts'
import type { Source } from '../../working/source.ts'
import { STATICS } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import { ratedLoad } from '../rated-load.ts'
import type { InsertMode, InsertResistance, StageInsert } from './stage.ts'

/** Key under which an engineer enters the ratio of failure load to working load of an insert. */
export const INSERT_MARGIN_LIMIT = 'lift.insertMargin'

export interface InsertLimitInput {
  readonly insert: StageInsert
  readonly family: CodeFamily
  readonly limits: Readonly<Record<string, EnteredLimit>>
  /** Strength of the concrete at the hour, MPa. */
  readonly strength: number
}

/**
 * Greatest working load of an insert at a strength: kN along its leg. The least of the maker's rating, scaled down to that strength, and of the nominal
 * resistance of the governing mode over the family's handling margin. A family without anchor rules has the rating alone.
 */
export function insertLimit(input: InsertLimitInput): Worked<number> {
  const { insert, family, strength } = input
  if (insert.rating === null) return unknown(`insert ${insert.mark}: the yard lists no rating of its kind`)
  const rated = ratedLoad({ insert: insert.rating, strength })
  if (!rated.known || !family.lift.anchor) return rated
  const held = resistance(input)
  if (!held.known) return held
  const value = Math.min(rated.value, held.value)
  return known(value, [
    ...rated.working,
    ...held.working,
    {
      symbol: 'F lim',
      formula: 'min(Nr, Fa)',
      given: { Nr: rated.value, Fa: held.value },
      result: value,
      unit: 'kN',
      source:
        held.value < rated.value
          ? (held.working.at(-1)?.source ?? STATICS)
          : (rated.working.at(-1)?.source ?? STATICS),
    },
  ])
}

function resistance({ insert, family, limits, strength }: InsertLimitInput): Worked<number> {
  const margin = handlingMargin(family, limits)
  const { resistance: found, load } = insert
  const gaps = [
    ...(found === null ? [`insert ${insert.mark}: its resistance by the anchor rules of ${family.id}`] : []),
    ...(margin === null
      ? [
          `margin of lifting inserts: no confirmed value for ${family.id}; an engineer enters ${INSERT_MARGIN_LIMIT}`,
        ]
      : []),
    ...(load === null ? [`insert ${insert.mark}: its working load`] : []),
  ]
  if (gaps.length > 0 || found === null || margin === null || load === null) return unknown(...gaps)
  // The laws carry a resistance to any strength; the rules themselves end somewhere, and so does what is known.
  const within = family.lift.anchor?.pullout({ head: 1000, strength, cracked: found.cracked })
  if (within !== undefined && !within.known)
    return unknown(...within.gaps.map((gap) => `insert ${insert.mark}: ${gap}`))
  const worst = governing(found, strength)
  if (worst === null) return unknown(`insert ${insert.mark}: no mode of failure is known`)
  const { mode, nominal } = worst
  // What this mode holds of the working load grows with it: the leg's load at which the mode is used up.
  const value = (load * nominal) / mode.demand / margin.value
  const law: Step = {
    symbol: 'Rn',
    formula: LAWS[mode.law],
    given: mode.law === 'constant' ? { R0: mode.nominal } : { R0: mode.nominal, f: strength, f0: found.at },
    result: nominal,
    unit: 'kN',
    source: STATICS,
    note: `nominal ${mode.mode}, ${found.cracked ? 'cracked' : 'uncracked'} concrete, at ${found.at} MPa: R0`,
  }
  return known(value, [
    law,
    {
      symbol: 'Fa',
      formula: 'F Rn / D / γ',
      given: { F: load, Rn: nominal, D: mode.demand, γ: margin.value },
      result: value,
      unit: 'kN',
      source: margin.source,
      note: `D what ${mode.mode} holds of the working load F; γ failure load over working load`,
    },
  ])
}

const LAWS = { root: 'R0 √(f / f0)', linear: 'R0 f / f0', constant: 'R0' } as const

function governing(
  { modes, at }: InsertResistance,
  strength: number,
): { mode: InsertMode; nominal: number } | null {
  let worst: { mode: InsertMode; nominal: number } | null = null
  for (const mode of modes) {
    if (!(mode.demand > 0)) continue
    const share = strength / at
    const nominal =
      mode.nominal * (mode.law === 'root' ? Math.sqrt(share) : mode.law === 'linear' ? share : 1)
    if (worst === null || mode.demand / nominal > worst.mode.demand / worst.nominal) worst = { mode, nominal }
  }
  return worst
}

/** The family's ratio of failure load to working load, or an engineer's that is not below it. */
export function handlingMargin(
  family: CodeFamily,
  limits: Readonly<Record<string, EnteredLimit>>,
): { readonly value: number; readonly source: Source } | null {
  const rule = family.lift.insertMargin
  const entered = limits[INSERT_MARGIN_LIMIT]
  const usable = entered !== undefined && Number.isFinite(entered.value) && entered.value >= 1
  if (usable && (rule === null || entered.value > rule.value)) {
    return {
      value: entered.value,
      source: { standard: entered.standard, clause: entered.edition, status: 'entered' },
    }
  }
  return rule
}
