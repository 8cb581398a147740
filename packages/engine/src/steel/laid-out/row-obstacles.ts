import { isEdgeBars } from '../../panel/drawn-steel.ts'
import type { Panel } from '../../panel/panel.ts'
import type { Point } from '../../panel/point.ts'
import type { Yard } from '../../yard/yard.ts'
import type { Obstacle } from './clear-rows.ts'
import { type EdgeRun, runsAt } from './edge-runs.ts'
import type { KeptClear } from './spread.ts'

/**
 * What the rows of mats of a direction keep clear of, not yet grown by half a bar: the webs of U-bars and hooks along edges that run the same
 * way, inside which the outermost rows lie, and inserts with the distance that their kind asks for.
 */
export function rowObstacles({
  panel,
  yard,
  runs,
  direction,
}: {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly runs: readonly EdgeRun[]
  readonly direction: 'x' | 'y'
}): Obstacle[] {
  const edgeCover = panel.drawing.cover?.edge
  const [along, across] = direction === 'x' ? ([0, 1] as const) : ([1, 0] as const)
  const webs =
    edgeCover === undefined
      ? []
      : [...websOn(panel, runs)].flatMap(([run, wide]): Obstacle[] => {
          if (Math.abs(run.inward[along]) > 1e-6) return []
          const ends = [run.from[along], run.to[along]]
          const into = run.inward[across] > 0 ? 1 : -1
          const faces = [edgeCover, edgeCover + wide].map((deep) => run.from[across] + into * deep)
          return [
            {
              from: Math.min(...ends),
              to: Math.max(...ends),
              low: Math.min(...faces),
              high: Math.max(...faces),
            },
          ]
        })
  const inserts = insertsKept(panel, yard).map(({ at, clear }): Obstacle => {
    const [place, aside] = [at[along], at[across]]
    return { from: place - clear, to: place + clear, low: aside - clear, high: aside + clear }
  })
  return [...webs, ...inserts]
}

/** Diameter of the thickest U-bar or hook that stands along each edge, mm; edges without are left out. */
export function websOn({ drawing }: Panel, runs: readonly EdgeRun[]): ReadonlyMap<EdgeRun, number> {
  const webs = new Map<EdgeRun, number>()
  for (const steel of drawing.steel ?? []) {
    if (!isEdgeBars(steel)) continue
    for (const run of runsAt(steel.edge, runs)) {
      webs.set(run, Math.max(webs.get(run) ?? 0, steel.diameter))
    }
  }
  return webs
}

/** Inserts whose kind says how far bars keep from them. */
export function insertsKept({ drawing }: Panel, yard: Yard | null): KeptClear[] {
  return (drawing.inserts ?? []).flatMap(({ at, type }): KeptClear[] => {
    const clear = insertClear(yard, type)
    return clear === null ? [] : [{ at: at as Point, clear }]
  })
}

/** How far bars keep from the axis of an insert of that kind, mm; null where the yard does not say. */
export function insertClear(yard: Yard | null, type: string | undefined): number | null {
  return (yard?.insertKinds ?? []).find(({ mark }) => mark === type)?.clear ?? null
}
