import type { Drawing } from '@castwright/engine/panel'
import { parseDrawing } from '@castwright/engine/panel'

type Spot = readonly [number, number]

/** A panel of the bench with the points at which both solvers are read. */
export interface BenchPanel {
  readonly name: string
  readonly drawing: Drawing
  /** Clear of supports and re-entrant corners by three thicknesses, or in the middle of a narrow part. */
  readonly probes: readonly Spot[]
  /** Which probes stand clear of every edge. */
  readonly inner: readonly boolean[]
}

function box(x: number, y: number, width: number, height: number): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

function panel(
  name: string,
  [length, width, thickness]: readonly [number, number, number],
  openings: readonly (readonly [number, number, number, number])[],
  inserts: readonly Spot[],
  probes: readonly Spot[],
): BenchPanel {
  const drawing = parseDrawing({
    format: 'castwright.drawing/1',
    mark: name,
    outline: box(0, 0, length, width),
    thickness,
    openings: openings.map(([x, y, w, h], i) => ({ mark: `O${i + 1}`, outline: box(x, y, w, h) })),
    concrete: { strength: 40, density: 2500 },
    inserts: inserts.map((at, i) => ({ mark: `${i + 1}`, at, kind: 'face' })),
  })
  const onEdge = ([x, y]: Spot): boolean =>
    [[0, 0, length, width], ...openings].some(
      ([left, bottom, w, h]) =>
        x >= left! &&
        x <= left! + w! &&
        y >= bottom! &&
        y <= bottom! + h! &&
        (x === left || x === left! + w! || y === bottom || y === bottom! + h!),
    )
  return { name, drawing, probes, inner: probes.map((at) => !onEdge(at)) }
}

/** The panel of the speed target: 7.2 × 3.2 m with two openings. */
export const SPEED_PANEL = panel(
  'two windows',
  [7200, 3200, 180],
  [
    [1500, 800, 1200, 1500],
    [4700, 600, 1200, 1400],
  ],
  [
    [1100, 500],
    [6300, 500],
    [6300, 2700],
    [1100, 2700],
  ],
  [
    [3700, 1600],
    [3700, 0],
    [3700, 3200],
    [0, 1600],
    [7200, 1600],
    [2100, 2800],
    [2100, 400],
    [5300, 3200],
    [5300, 300],
    [0, 0],
    [7200, 3200],
  ],
)

/** Invented panels with openings, in rectangles so that the peer's structured mesh fits them. */
export const BENCH_PANELS: readonly BenchPanel[] = [
  SPEED_PANEL,
  panel(
    'door and window',
    [6000, 3000, 150],
    [
      [900, 0, 1000, 2100],
      [3000, 900, 1500, 1200],
    ],
    [
      [500, 800],
      [2500, 600],
      [5400, 700],
      [1300, 2600],
      [4600, 2600],
    ],
    [
      [2450, 1500],
      [1400, 2100],
      [1400, 3000],
      [3750, 450],
      [3750, 0],
      [3750, 3000],
      [6000, 1500],
      [0, 0],
      [5200, 1500],
    ],
  ),
  panel(
    'six picks',
    [9000, 3600, 200],
    [
      [1200, 1200, 1800, 1400],
      [4000, 0, 1200, 2400],
      [6400, 1000, 1600, 1600],
    ],
    [
      [700, 700],
      [3500, 700],
      [8300, 700],
      [700, 2900],
      [4600, 3000],
      [8300, 2900],
    ],
    [
      [2100, 600],
      [2100, 0],
      [2100, 3600],
      [3500, 1800],
      [4600, 2400],
      [5800, 1800],
      [5800, 0],
      [7200, 500],
      [7200, 3600],
      [9000, 1800],
      [0, 1800],
    ],
  ),
  panel(
    'notched end',
    [5400, 2400, 120],
    [
      [4400, 1500, 1000, 900],
      [1400, 700, 900, 1000],
    ],
    [
      [800, 450],
      [4600, 450],
      [3600, 1950],
      [800, 1950],
    ],
    [
      [2900, 1200],
      [2900, 0],
      [2900, 2400],
      [1850, 350],
      [1850, 2400],
      [5400, 800],
      [5400, 0],
      [0, 1200],
      [700, 1200],
    ],
  ),
]
