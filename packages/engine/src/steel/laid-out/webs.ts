import type { SteelRules } from '../../codes/steel-rules.ts'
import { type DrawnEdgeBars, isEdgeBars, type Layer } from '../../panel/drawn-steel.ts'
import type { Panel } from '../../panel/panel.ts'
import { type EdgeRun, runsAt } from './edge-runs.ts'

/** What stands along an edge: the webs of its U-bars and hooks, and their bends. */
export interface Web {
  /** Of the thickest bar, mm. */
  readonly diameter: number
  /** From the outer side of the web to where the legs of each layer run straight, mm; 0 without a leg there. */
  readonly bend: Readonly<Record<Layer, number>>
}

/** U-bars and hooks along each edge, the most of all of its lines; edges without are left out. */
export function websOn(
  { drawing }: Panel,
  runs: readonly EdgeRun[],
  rules: SteelRules,
): ReadonlyMap<EdgeRun, Web> {
  const webs = new Map<EdgeRun, Web>()
  for (const steel of drawing.steel ?? []) {
    if (!isEdgeBars(steel)) continue
    const web = webOf(steel, rules)
    for (const run of runsAt(steel.edge, runs)) {
      const other = webs.get(run)
      webs.set(run, {
        diameter: Math.max(other?.diameter ?? 0, web.diameter),
        bend: {
          mould: Math.max(other?.bend.mould ?? 0, web.bend.mould),
          top: Math.max(other?.bend.top ?? 0, web.bend.top),
        },
      })
    }
  }
  return webs
}

function webOf({ diameter, grade, inside, layer }: DrawnEdgeBars, rules: SteelRules): Web {
  const least = rules.leastBend({ diameter, grade, role: 'main', plain: false, galvanised: false })
  const bend = diameter + (inside ?? (least.known ? least.value : 0)) / 2
  return {
    diameter,
    bend: { mould: layer === 'top' ? 0 : bend, top: layer === 'mould' ? 0 : bend },
  }
}

export interface BehindWeb {
  readonly web: Web | undefined
  /** Of the bar that runs along the edge, mm. */
  readonly diameter: number
  /** Layers in which the bar lies over the legs, not between them and the face. */
  readonly over: readonly Layer[]
}

/**
 * How deep behind the cover of an edge the outer side of a bar along it lies, mm: inside the webs there, and where it lies over
 * their legs, where these run straight; 0 without webs.
 */
export function behindWeb({ web, diameter, over }: BehindWeb): number {
  if (web === undefined) return 0
  const bend = Math.max(0, ...over.map((layer) => web.bend[layer]))
  return Math.max(web.diameter, bend - diameter / 2)
}
