import { GEOMETRY } from '../../working/source.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'
import type { Corner, PlacedBar, SteelPlan } from '../steel-plan.ts'

export interface CageMass {
  /** All bars of the schedule, kg; null where one's mass is not known. */
  readonly mass: number | null
  /** Mass of the bars whose place is known, kg. */
  readonly placed: number
  /** Centre of mass of those, mm: x and y of the drawing, z above the mould face; null where there are none. */
  readonly placedCentre: Corner | null
  /** Centre of mass of the whole cage; unknown while a bar has no place. */
  readonly centre: Worked<Corner>
}

/** Mass and centre of mass of all bars. Bends count as sharp corners; tying wire and chairs are left out. */
export function cageMass({ bars, placed, mass }: Pick<SteelPlan, 'bars' | 'placed' | 'mass'>): CageMass {
  const lines = new Map(bars.map((bar) => [bar.mark, bar]))
  const found = new Map<string, number>()
  const gaps: string[] = []
  let [total, mx, my, mz] = [0, 0, 0, 0]
  for (const bar of placed) {
    const line = lines.get(bar.mark)
    const middle = middleOf(bar)
    if (line === undefined || middle === null) continue
    found.set(bar.mark, (found.get(bar.mark) ?? 0) + 1)
    const one = line.mass / line.count
    total += one
    mx += one * middle[0]
    my += one * middle[1]
    mz += one * middle[2]
  }
  for (const { mark, count } of bars) {
    const have = found.get(mark) ?? 0
    if (have < count) gaps.push(`place of ${count - have} of the ${count} bars ${mark}`)
  }
  if (bars.length === 0) gaps.push('steel: no bars')
  if (mass === null) gaps.push('mass of every bar')
  const placedCentre: Corner | null = total > 0 ? [mx / total, my / total, mz / total] : null
  const centre =
    gaps.length > 0 || placedCentre === null
      ? unknown(...(gaps.length > 0 ? gaps : ['cover: sets the height of the bars']))
      : known(placedCentre, [
          {
            symbol: 'M_cage',
            formula: 'sum of the bars where they lie, each at the middle of its length',
            given: { n: placed.length },
            result: total,
            unit: 'kg',
            source: GEOMETRY,
            by: 'search',
          },
        ])
  return { mass, placed: total, placedCentre, centre }
}

/** Middle of mass of a bar along its centreline, mm; null where its height is not known. */
function middleOf({ centreline }: PlacedBar): Corner | null {
  if (centreline === null || centreline.length === 0) return null
  let [length, x, y, z] = [0, 0, 0, 0]
  for (let i = 1; i < centreline.length; i += 1) {
    const [a, b] = [centreline[i - 1] as Corner, centreline[i] as Corner]
    const part = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2])
    length += part
    x += (part * (a[0] + b[0])) / 2
    y += (part * (a[1] + b[1])) / 2
    z += (part * (a[2] + b[2])) / 2
  }
  return length > 0 ? [x / length, y / length, z / length] : (centreline[0] as Corner)
}
