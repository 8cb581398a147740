import { demoYard } from '@castwright/demo'
import { codeFamily } from '@castwright/engine/codes'
import { benchOf, type LiftStage, liftStages } from '@castwright/engine/lift'
import { panelOf } from '@castwright/engine/panel'
import { type BenchLine, median, seconds } from './line.ts'
import { manyDrawings } from './plans.ts'

/** Every stage of handling of a job of many panels in one process, beside mesh and factor of the same plates alone. */
export function stages(count: number): BenchLine[] {
  // Thicker by a millimetre than those whose plans were timed before: their bending is kept.
  const panels = manyDrawings(count + 20).map((drawing) =>
    panelOf({ ...drawing, thickness: drawing.thickness + 1 }),
  )
  const yard = demoYard()
  const family = codeFamily(yard.code)
  for (const panel of panels.slice(count)) liftStages({ panel, yard, family })
  const runs = panels.slice(0, count).map((panel) => {
    let found: readonly LiftStage[] = []
    const time = seconds(() => {
      found = liftStages({ panel, yard, family })
    })
    return { panel, time, unknowns: unknownsOf(found) }
  })
  const whole = runs.reduce((sum, { time }) => sum + time, 0)
  const some = runs.filter((_, i) => i % Math.max(1, Math.floor(count / 50)) === 0)
  const plates = seconds(() => {
    for (const { panel } of some) {
      const piece = panel.region[0]
      if (piece === undefined) continue
      const picks = (panel.drawing.inserts ?? []).map(({ at }) => at)
      benchOf({ piece, thickness: panel.drawing.thickness, pressure: 0.00375, picks })
    }
  })
  const solved = runs.filter(({ unknowns }) => unknowns > 0)
  const sizes = solved.map(({ unknowns }) => unknowns)
  return [
    {
      what: `all stages of ${count} different panels`,
      value: `${(count / whole).toFixed(1)} panels/s`,
      beside: `mesh and factor alone ${(some.length / plates).toFixed(1)} panels/s; median ${(median(runs.map(({ time }) => time)) * 1000).toFixed(0)} ms`,
    },
    {
      what: 'growth of the stages with the unknowns',
      value: `unknowns^${slope(solved).toFixed(2)}`,
      beside: `${Math.min(...sizes)} to ${Math.max(...sizes)} unknowns`,
    },
  ]
}

/** Six unknowns at each node of the plate. */
function unknownsOf(found: readonly LiftStage[]): number {
  const nodes = found.flatMap(({ working }) => working).find(({ given }) => 'nodes' in given)?.given.nodes
  return typeof nodes === 'number' ? 6 * nodes : 0
}

/** Slope of the logarithms, least squares. */
function slope(runs: readonly { readonly time: number; readonly unknowns: number }[]): number {
  const points = runs.map(({ time, unknowns }) => [Math.log(unknowns), Math.log(time)] as const)
  const mean = (of: 0 | 1): number => points.reduce((sum, point) => sum + point[of], 0) / points.length
  const [x, y] = [mean(0), mean(1)]
  const up = points.reduce((sum, point) => sum + (point[0] - x) * (point[1] - y), 0)
  return up / points.reduce((sum, point) => sum + (point[0] - x) ** 2, 0)
}
