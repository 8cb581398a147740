import type { Panel } from '../../panel/panel.ts'
import type { Point } from '../../panel/point.ts'
import type { Yard } from '../../yard/yard.ts'
import type { Obstacle } from './clear-rows.ts'
import type { EdgeRun } from './edge-runs.ts'
import type { KeptClear } from './spread.ts'
import type { Web } from './webs.ts'

/**
 * What the rows of a mat keep clear of, not yet grown by half a bar: the webs of U-bars and hooks along edges that run the same way,
 * inside which the outermost rows lie, and inserts with the distance that their kind asks for.
 */
export function rowObstacles({
  panel,
  yard,
  webs,
  direction,
  behind,
}: {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly webs: ReadonlyMap<EdgeRun, Web>
  readonly direction: 'x' | 'y'
  /** How deep behind the edge cover a row lies beside a web, mm. */
  readonly behind: (web: Web) => number
}): Obstacle[] {
  const edgeCover = panel.drawing.cover?.edge
  const [along, across] = direction === 'x' ? ([0, 1] as const) : ([1, 0] as const)
  const rows =
    edgeCover === undefined
      ? []
      : [...webs].flatMap(([run, web]): Obstacle[] => {
          if (Math.abs(run.inward[along]) > 1e-6) return []
          const ends = [run.from[along], run.to[along]]
          const into = run.inward[across] > 0 ? 1 : -1
          const faces = [edgeCover, edgeCover + behind(web)].map((deep) => run.from[across] + into * deep)
          return [
            {
              from: Math.min(...ends),
              to: Math.max(...ends),
              low: Math.min(...faces),
              high: Math.max(...faces),
              isWeb: true,
            },
          ]
        })
  const inserts = insertsKept(panel, yard).map(({ at, clear }): Obstacle => {
    const [place, aside] = [at[along], at[across]]
    return { from: place - clear, to: place + clear, low: aside - clear, high: aside + clear, isWeb: false }
  })
  return [...rows, ...inserts]
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
