import { known, unknown, type Worked } from '../working/worked.ts'
import type { Yard } from '../yard/yard.ts'
import { radiusOfAction } from './vibrator.ts'

type Vibrator = NonNullable<Yard['vibrators']>[number]

/** The heads at work on a panel. */
export interface Heads {
  /** The one with the least radius of action: the pattern is built on it, so that every head reaches with it. */
  readonly least: Vibrator
  /** Mark of each head at work, in the order of the yard's list: vibrator 1, 2, … of the shares. */
  readonly marks: readonly string[]
}

/**
 * Heads at work by what the room chose; the first vibrator of the yard, one head, where nobody chose.
 *
 * Unknown where the yard has no vibrator, where a mark that was chosen is not the yard's, or where the radius of one is not known.
 */
export function headsAtWork(
  yard: Yard | null,
  chosen: Readonly<Record<string, number>> | null,
): Worked<Heads> {
  const own = yard?.vibrators ?? []
  const [first] = own
  if (first === undefined) return unknown('yard.vibrators: a vibrator')
  if (chosen === null) return known({ least: first, marks: [first.mark] }, [])
  const strange = Object.keys(chosen).filter((mark) => !own.some((each) => each.mark === mark))
  if (strange.length > 0)
    return unknown(...strange.map((mark) => `yard.vibrators: ${mark}, which the pour names, is not listed`))
  const working = own.filter(({ mark }) => (chosen[mark] ?? 0) > 0)
  const radii = working.map((each) => each.radius ?? actionOf(each.head))
  const gaps = working.flatMap(({ mark, head }, i) =>
    radii[i] === null ? [`yard.vibrators: radius of action of ${mark}, head ${head} mm`] : [],
  )
  if (gaps.length > 0) return unknown(...gaps)
  const at = radii.reduce<number>(
    (best, radius, i) => ((radius ?? 0) < (radii[best] ?? Number.POSITIVE_INFINITY) ? i : best),
    0,
  )
  const least = working[at]
  if (least === undefined) return unknown('place.vibrators: at least one head')
  return known(
    { least, marks: working.flatMap(({ mark }) => Array.from({ length: chosen[mark] ?? 0 }, () => mark)) },
    [],
  )
}

function actionOf(head: number): number | null {
  const action = radiusOfAction(head)
  return action.known ? action.value : null
}
