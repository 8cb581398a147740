import { type Check, compare } from '../../working/check.ts'
import { GEOMETRY } from '../../working/source.ts'
import type { PlacedBar } from '../steel-plan.ts'
import { emptySpace, solidsOf } from './space.ts'

/** Two placed bars that would be in the same place, by their ids. */
export type Clash = readonly [one: string, other: string]

/** Every pair of placed bars that would be in the same place; bars without height are not known and left out. */
export function clashesOf(placed: readonly PlacedBar[]): Clash[] {
  const space = emptySpace()
  return placed.flatMap((bar) => {
    const solids = solidsOf(bar)
    const found = space.clashes(solids).map((other): Clash => [other, bar.id])
    space.add(solids)
    return found
  })
}

/** Pairs that a check names. */
const NAMED = 6

/** Whether any two bars of the plan would be in the same place. */
export function clashCheck(clashes: readonly Clash[], unplaced: readonly string[]): Check {
  const names = clashes.slice(0, NAMED).map(([one, other]) => `${one} and ${other}`)
  const more = clashes.length > NAMED ? ` and ${clashes.length - NAMED} more` : ''
  return compare({
    id: 'same-place',
    step: 'cage',
    what: 'Pairs of bars that would be in the same place',
    demand: clashes.length,
    limit: 0,
    unit: '',
    sense: 'at most',
    source: GEOMETRY,
    missing: clashes.length > 0 ? [] : unplaced,
    ...(names.length > 0 ? { note: `${names.join(', ')}${more}` } : {}),
  })
}
