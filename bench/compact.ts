import { regionArea, subtract } from '@castwright/engine/panel'
import { compact } from '@castwright/engine/pour'
import { COMPACT_BEST } from './compact-best.ts'
import { COMPACT_PANELS, type CompactPanel } from './compact-panels.ts'
import { type BenchLine, median } from './line.ts'

interface Run {
  readonly panel: CompactPanel
  readonly insertions: number
  readonly uncovered: number
  readonly seconds: number
  /** Insertions of an unbounded plane of the same area (Kershner 1939). */
  readonly plane: number
  /** Fewest that the long search found. */
  readonly best: number
}

/** Insertions and time on every panel, beside the long search, the plane's bound and a plain triangular grid. */
export function compaction(short: boolean): BenchLine[] {
  const runs = COMPACT_PANELS.filter((_, i) => !short || i % 4 === 0).map(run)
  const ratios = runs.map(({ insertions, best }) => insertions / best)
  const worst = runs.reduce((a, b) => (b.insertions / b.best > a.insertions / a.best ? b : a))
  const held = ratios.filter((ratio) => ratio <= 1.05).length
  const six = runs.filter(({ panel }) => panel.name.startsWith('six openings'))
  const all = (of: (run: Run) => number): number => runs.reduce((sum, each) => sum + of(each), 0)
  const slow = runs.reduce((a, b) => (b.seconds > a.seconds ? b : a))
  return [
    {
      what: `pattern of insertions, ${runs.length} panels`,
      value: `${runs.filter(({ uncovered }) => uncovered === 0).length} of ${runs.length}`,
      beside: 'proven covered, uncovered 0; goal all',
    },
    {
      what: 'insertions over the long search',
      value: `× ${median(ratios).toFixed(3)}`,
      beside: `median, ${held} of ${runs.length} within the goal of 1.05; worst × ${(worst.insertions / worst.best).toFixed(3)}, ${worst.panel.name}`,
    },
    {
      what: 'insertions over the plane’s bound',
      value: `× ${(all(({ insertions }) => insertions) / all(({ plane }) => plane)).toFixed(3)}`,
      beside: `long search × ${(all(({ best }) => best) / all(({ plane }) => plane)).toFixed(3)}: edges need more than an unbounded plane`,
    },
    {
      what: 'beside a plain triangular grid, mended',
      value: `× ${(all(({ panel }) => COMPACT_BEST[panel.name]?.grid ?? Number.NaN) / all(({ insertions }) => insertions)).toFixed(3)}`,
      beside:
        'its insertions over ours: fitted rows over the bounds, insertions added where a place is missed, none taken out',
    },
    ...six.map(({ panel, insertions, best, plane, seconds }) => ({
      what: panel.name,
      value: `${seconds.toFixed(2)} s`,
      beside: `goal 0.5 s; ${insertions} insertions, long search ${best}, plane ${plane.toFixed(0)}`,
    })),
    {
      what: 'the slowest of them',
      value: `${slow.seconds.toFixed(2)} s`,
      beside: `${slow.panel.name}, ${slow.insertions} insertions`,
    },
    growth(short),
  ]
}

/** Time by the area: plain rectangles of 24 and of 96 m². */
function growth(short: boolean): BenchLine {
  const [small, large] = [1, 2].map((scale) => {
    const [right, top] = [6000 * scale, 4000 * scale]
    const outline = [
      [0, 0],
      [right, 0],
      [right, top],
      [0, top],
    ] as const
    const panel = { name: 'plain', region: subtract(outline, []), radius: 0.866 * 150, margin: 75 }
    return median(Array.from({ length: short ? 1 : 3 }, () => run(panel).seconds))
  }) as [number, number]
  return {
    what: 'four times the area, plain',
    value: `× ${(large / small).toFixed(1)}`,
    beside: `in time: ${small.toFixed(2)} s for 24 m², ${large.toFixed(2)} s for 96 m²`,
  }
}

function run(panel: CompactPanel): Run {
  const { region, radius, margin } = panel
  const from = performance.now()
  const found = compact({ region, radius, margin, thickness: 150, chute: [0, 0] })
  const seconds = (performance.now() - from) / 1000
  if (!found.known) throw new Error(found.gaps.join())
  return {
    panel,
    insertions: found.value.insertions.length,
    uncovered: found.value.uncovered,
    seconds,
    plane: regionArea(region) / (1.5 * Math.sqrt(3) * radius * radius),
    best: COMPACT_BEST[panel.name]?.insertions ?? Number.NaN,
  }
}
