import { demoDrawings, demoYard } from '@castwright/demo'
import { codeFamily } from '@castwright/engine/codes'
import { type Drawing, panelOf, parseDrawing } from '@castwright/engine/panel'
import { plan } from '@castwright/engine/plan'
import { type BenchLine, median, seconds } from './line.ts'

/** Different panels made from the invented job's: each is longer than the one before, so that nothing can be remembered. */
export function manyDrawings(count: number): Drawing[] {
  const drawn = demoDrawings()
  return Array.from({ length: count }, (_, index) => {
    const drawing = drawn[index % drawn.length] as Drawing
    const longer = 1 + 0.0001 * (index + 1)
    const stretch = (points: readonly (readonly [number, number])[]): [number, number][] =>
      points.map(([x, y]) => [x * longer, y])
    return {
      ...drawing,
      mark: `${drawing.mark}-${index}`,
      outline: stretch(drawing.outline),
      ...(drawing.openings
        ? { openings: drawing.openings.map((hole) => ({ ...hole, outline: stretch(hole.outline) })) }
        : {}),
      ...(drawing.inserts
        ? {
            inserts: drawing.inserts.map((insert) => ({
              ...insert,
              at: [insert.at[0] * longer, insert.at[1]] as [number, number],
            })),
          }
        : {}),
    }
  })
}

/** Plans of a job of many panels in one process, beside reading and measuring the same drawings: what no plan can be faster than. */
export function plans(count: number): BenchLine[] {
  const drawings = manyDrawings(count)
  const yard = demoYard()
  const family = codeFamily(yard.code)
  // Warm: the first plans of a process pay for compiling.
  for (const drawing of drawings.slice(0, 20)) plan({ drawing, yard, family })
  const times = drawings.map((drawing) => seconds(() => plan({ drawing, yard, family })))
  const whole = times.reduce((sum, time) => sum + time, 0)
  const bound = seconds(() => {
    for (const drawing of drawings) panelOf(parseDrawing(drawing))
  })
  const bySize = drawings
    .map((drawing, index) => ({ area: panelOf(drawing).faceArea, time: times[index] ?? 0 }))
    .sort((a, b) => a.area - b.area)
  const third = Math.floor(bySize.length / 3)
  const small = bySize.slice(0, third)
  const large = bySize.slice(-third)
  const mean = (items: typeof bySize, of: 'area' | 'time'): number =>
    items.reduce((sum, item) => sum + item[of], 0) / items.length
  const exponent =
    Math.log(mean(large, 'time') / mean(small, 'time')) / Math.log(mean(large, 'area') / mean(small, 'area'))
  return [
    {
      what: `plans of ${count} different panels`,
      value: `${(count / whole).toFixed(0)} panels/s`,
      beside: `reading and measuring alone ${(count / bound).toFixed(0)} panels/s; median ${(median(times) * 1000).toFixed(1)} ms`,
    },
    {
      what: 'growth of a plan with the panel',
      value: `area^${exponent.toFixed(2)}`,
      beside: `${mean(small, 'area').toFixed(1)} m² ${(mean(small, 'time') * 1000).toFixed(1)} ms, ${mean(large, 'area').toFixed(1)} m² ${(mean(large, 'time') * 1000).toFixed(1)} ms`,
    },
  ]
}
