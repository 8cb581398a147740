import type { AgedStrength } from './aged-strength.ts'
import { OPEN_DATA } from './open-data.ts'

/** Proportions of a mix, kg/m³. */
export interface MixProportions {
  readonly cement: number
  readonly slag: number
  readonly flyAsh: number
  readonly water: number
  readonly superplasticizer: number
  readonly coarse: number
  readonly fine: number
}

/** The order of the fields in the open data. */
export const PROPORTIONS = [
  'cement',
  'slag',
  'flyAsh',
  'water',
  'superplasticizer',
  'coarse',
  'fine',
] as const satisfies readonly (keyof MixProportions)[]

export interface OpenMix {
  readonly mark: string
  readonly proportions: MixProportions
  /** In order of age, as listed: repeats included. */
  readonly tests: readonly AgedStrength[]
}

let read: readonly OpenMix[] | null = null

/** The mixes of the open data; read at the first call and kept. */
export function openMixes(): readonly OpenMix[] {
  read ??= OPEN_DATA.trim().split('\n').map(mixOf)
  return read
}

function mixOf(line: string): OpenMix {
  const [mark = '', ...fields] = line.split(' ')
  const numbers = fields.slice(0, PROPORTIONS.length).map(Number)
  const tests = fields.slice(PROPORTIONS.length).map((field): AgedStrength => {
    const [days, strength] = field.split(':').map(Number)
    if (!(days !== undefined && days > 0 && strength !== undefined && strength > 0))
      throw new Error(`open data: found ${field} at ${mark}, expected days:MPa`)
    return { days, strength }
  })
  const proportions = Object.fromEntries(PROPORTIONS.map((name, at) => [name, numbers[at]]))
  return { mark, proportions: proportions as unknown as MixProportions, tests }
}

/** Proportions closer than this in each, kg/m³, are one mix written down twice. */
const ALIKE = 3

/**
 * Number of the group that each mix belongs to. Mixes of nearly the same proportions, directly or through others, are in
 * one group: what is held out is held out with all that is alike.
 */
export function alikeGroups(mixes: readonly OpenMix[]): number[] {
  const group = mixes.map((_, at) => at)
  for (const [at, { proportions }] of mixes.entries()) {
    for (let before = 0; before < at; before += 1) {
      const other = mixes[before]?.proportions
      if (other === undefined || group[at] === group[before]) continue
      if (PROPORTIONS.some((name) => !(Math.abs(proportions[name] - other[name]) < ALIKE))) continue
      const [from, to] = [group[at], group[before] ?? 0]
      for (const [each, number] of group.entries()) if (number === from) group[each] = to
    }
  }
  return group
}
