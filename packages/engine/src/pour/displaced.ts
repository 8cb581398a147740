import type { Panel } from '../panel/panel.ts'
import type { Ring } from '../panel/point.ts'
import { clipRegions, type Region, regionArea, unite } from '../panel/region.ts'
import { ductStrip } from '../panel/void-bodies.ts'

/** What a void former or duct takes from the concrete. */
export interface Displaced {
  /** Seen from above. */
  readonly plan: Region
  /** m³ */
  readonly volume: number
}

/** Every void former and duct of a panel; empty for a full one. */
export function displacedBy({ bodies, drawing }: Pick<Panel, 'bodies' | 'drawing'>): Displaced[] {
  return bodies.flatMap(({ kind, mark, volume }): Displaced[] => {
    const former = kind === 'void' ? drawing.voids?.find((one) => one.mark === mark) : undefined
    const duct = kind === 'duct' ? drawing.ducts?.find((one) => one.mark === mark) : undefined
    if (former !== undefined) return [{ plan: unite([former.outline as unknown as Ring]), volume }]
    return duct === undefined ? [] : [{ plan: ductStrip(duct), volume }]
  })
}

/** m³ */
export function wholeOf(displaced: readonly Displaced[]): number {
  return displaced.reduce((sum, { volume }) => sum + volume, 0)
}

/** What is taken in a part of the panel, by the share of each plan that lies in it, m³. */
export function displacedIn(outlines: readonly Ring[], displaced: readonly Displaced[]): number {
  if (displaced.length === 0) return 0
  const part = unite(outlines)
  return displaced.reduce(
    (sum, { plan, volume }) =>
      sum + (volume * regionArea(clipRegions('both', plan, part))) / regionArea(plan),
    0,
  )
}
