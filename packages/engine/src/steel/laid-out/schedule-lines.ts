import { cutLength } from '../cut-length.ts'
import { shapeWord } from '../listed-bars.ts'
import type { Corner, PlacedBar, ScheduledBar } from '../steel-plan.ts'
import type { LaidBars } from './lay-context.ts'

/** Bars within a tenth of a millimetre are one line of the schedule. */
export const SAME = 10

/** A line of the schedule as it is counted. */
export interface Line extends Omit<ScheduledBar, 'mass' | 'count'> {
  count: number
}

/** Bars of one line of the drawing; each shape is a line of the schedule. Gives what keeps a length unknown. */
export function addLaid(
  group: LaidBars,
  {
    bars,
    placed,
    counters,
    taken,
  }: {
    readonly bars: Line[]
    readonly placed: PlacedBar[]
    readonly counters: Map<string, number>
    readonly taken: Set<string>
  },
): string[] {
  const { diameter, grade, role, inside, use, layer, prefix } = group
  const lines = new Map<string, Line>()
  const gaps: string[] = []
  for (const { path, centreline, legs, turns } of group.bars) {
    const shape = [...legs.map((leg) => Math.round(leg * SAME)), ...turns].join(' ')
    let line = lines.get(shape)
    if (line === undefined) {
      const cut = cutLength({ diameter, inside, legs, turns })
      const mark = group.named ? ownMark(prefix, taken) : nextMark(prefix, counters, taken)
      if (!cut.known) gaps.push(...cut.gaps.map((gap) => `${mark}: ${gap}`))
      const word = shapeWord(turns, true)
      const length = cut.known ? cut.value.length : legs.reduce((sum, leg) => sum + leg, 0)
      line = { mark, shape: word, diameter, grade, role, count: 0, cutLength: length, legs, turns, inside }
      lines.set(shape, line)
      bars.push(line)
    }
    line.count += 1
    placed.push({
      id: `${line.mark}#${line.count}`,
      mark: line.mark,
      use,
      layer,
      diameter,
      path,
      height: flatHeight(centreline),
      centreline,
      inside: turns.length > 0 ? inside : null,
    })
  }
  return gaps
}

function flatHeight(centreline: readonly Corner[] | null): number | null {
  const [first] = centreline ?? []
  if (first === undefined || centreline === null) return null
  return centreline.every((corner) => corner[2] === first[2]) ? first[2] : null
}

/** The next free mark of a prefix: `MX1`, `MX2`. */
export function nextMark(prefix: string, counters: Map<string, number>, taken: Set<string>): string {
  let number = counters.get(prefix) ?? 0
  do number += 1
  while (taken.has(`${prefix}${number}`))
  counters.set(prefix, number)
  taken.add(`${prefix}${number}`)
  return `${prefix}${number}`
}

/** The drawing's own mark, with `-2`, `-3` for further shapes of it. */
function ownMark(mark: string, taken: Set<string>): string {
  let [number, name] = [1, mark]
  while (taken.has(name)) {
    number += 1
    name = `${mark}-${number}`
  }
  taken.add(name)
  return name
}
