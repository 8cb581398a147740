import { type Region, type Ring, subtract } from '@castwright/engine/panel'

/** An invented panel for the pattern of insertions. */
export interface CompactPanel {
  readonly name: string
  readonly region: Region
  /** Covering radius, mm. */
  readonly radius: number
  /** Wanted distance from faces, mm. */
  readonly margin: number
}

/** Covering radii of heads of 40 and 60 mm by the table, mm. */
const HEAD_40 = 0.866 * 150
const HEAD_60 = 0.866 * 225

/** Rectangles, ells, gables, notches, slopes, many openings, thin mullions. */
export const COMPACT_PANELS: readonly CompactPanel[] = [
  of('plain 6.0 × 3.0', HEAD_40, box(0, 0, 6000, 3000)),
  of('plain 6.0 × 3.0, large head', 250, box(0, 0, 6000, 3000)),
  of('plain 2.4 × 1.1', HEAD_40, box(0, 0, 2400, 1100)),
  of('strip 6.0 × 0.4', HEAD_40, box(0, 0, 6000, 400)),
  of('six openings 12 × 4', HEAD_40, box(0, 0, 12_000, 4000), [
    box(1000, 800, 1200, 1400),
    box(3000, 800, 1200, 1400),
    box(5000, 800, 1200, 1400),
    box(7000, 0, 1000, 2200),
    box(9000, 800, 1200, 1400),
    box(10_600, 800, 1000, 2400),
  ]),
  of('six openings 12 × 4, evenly', HEAD_40, box(0, 0, 12_000, 4000), [
    ...windows(6, 600, 1900, 1200, 1200, 1300),
  ]),
  of('six openings 12 × 4, head 60', HEAD_60, box(0, 0, 12_000, 4000), [
    ...windows(6, 600, 1900, 1200, 1200, 1300),
  ]),
  of('ell 6.0 × 3.0', HEAD_40, [
    [0, 0],
    [6000, 0],
    [6000, 1800],
    [4000, 1800],
    [4000, 3000],
    [0, 3000],
  ]),
  of('ell 7.2 × 5.0, head 60', HEAD_60, [
    [0, 0],
    [7200, 0],
    [7200, 1500],
    [1500, 1500],
    [1500, 5000],
    [0, 5000],
  ]),
  of(
    'gable 7.0 × 4.6, a window',
    HEAD_40,
    [
      [0, 0],
      [7000, 0],
      [7000, 2800],
      [3500, 4600],
      [0, 2800],
    ],
    [box(2900, 900, 1200, 1200)],
  ),
  of('gable 6.0 × 4.0, head 60', HEAD_60, [
    [0, 0],
    [6000, 0],
    [6000, 2000],
    [3000, 4000],
    [0, 2000],
  ]),
  of('door notch 8.4 × 3.6', HEAD_40, [
    [0, 0],
    [2100, 0],
    [2100, 2400],
    [3200, 2400],
    [3200, 0],
    [8400, 0],
    [8400, 3600],
    [0, 3600],
  ]),
  of('three notches 6.0 × 2.6', HEAD_40, [
    [0, 0],
    [6000, 0],
    [6000, 2600],
    [5200, 2600],
    [5200, 2200],
    [4700, 2200],
    [4700, 2600],
    [3200, 2600],
    [3200, 2300],
    [2700, 2300],
    [2700, 2600],
    [800, 2600],
    [800, 1900],
    [0, 1900],
  ]),
  of('slope 6.6 × 3.9', HEAD_40, [
    [0, 0],
    [6600, 300],
    [6100, 3900],
    [400, 3300],
  ]),
  of('sloping top 9.0 × 3.0 to 1.8', HEAD_60, [
    [0, 0],
    [9000, 0],
    [9000, 1800],
    [0, 3000],
  ]),
  of(
    'stair flank, slanted opening',
    HEAD_40,
    [
      [0, 0],
      [5000, 0],
      [5000, 3000],
      [0, 3000],
    ],
    [
      [
        [1000, 600],
        [3800, 1900],
        [3800, 2500],
        [1000, 1200],
      ],
    ],
  ),
  of('thin mullions 6.0 × 3.0', HEAD_40, box(0, 0, 6000, 3000), [...windows(9, 400, 580, 480, 900, 1200)]),
  of('thin mullions 6.0 × 3.0, head 60', HEAD_60, box(0, 0, 6000, 3000), [
    ...windows(9, 400, 580, 480, 900, 1200),
  ]),
  of('grid of 24 openings 8.0 × 4.0', HEAD_40, box(0, 0, 8000, 4000), [
    ...windows(8, 300, 950, 600, 350, 700),
    ...windows(8, 300, 950, 600, 1550, 700),
    ...windows(8, 300, 950, 600, 2750, 700),
  ]),
  of('three windows 10.8 × 3.4', HEAD_40, box(0, 0, 10_800, 3400), [
    box(900, 1000, 1800, 1400),
    box(4200, 1000, 1800, 1400),
    box(7800, 1000, 2100, 1400),
  ]),
  of('three windows 10.8 × 3.4, head 60', HEAD_60, box(0, 0, 10_800, 3400), [
    box(900, 1000, 1800, 1400),
    box(4200, 1000, 1800, 1400),
    box(7800, 1000, 2100, 1400),
  ]),
  of('round openings 6.0 × 3.0', HEAD_40, box(0, 0, 6000, 3000), [
    circle(1500, 1500, 700),
    circle(3600, 1200, 450),
    circle(5000, 1900, 300),
  ]),
  of('sixty pipe sleeves 6.0 × 3.0', HEAD_40, box(0, 0, 6000, 3000), grid(12, 5, 470, 560, 110)),
  of('300 openings 12 × 4', HEAD_40, box(0, 0, 12_000, 4000), grid(30, 10, 390, 385, 200)),
]

function of(name: string, radius: number, outline: Ring, openings: readonly Ring[] = []): CompactPanel {
  return { name, region: subtract(outline, openings), radius, margin: 75 }
}

function box(x: number, y: number, width: number, height: number): Ring {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

function windows(
  count: number,
  from: number,
  pitch: number,
  width: number,
  sill: number,
  high: number,
): Ring[] {
  return Array.from({ length: count }, (_, i) => box(from + i * pitch, sill, width, high))
}

function grid(columns: number, rows: number, stepX: number, stepY: number, side: number): Ring[] {
  return Array.from({ length: columns * rows }, (_, i) =>
    box(120 + (i % columns) * stepX, 120 + Math.floor(i / columns) * stepY, side, side),
  )
}

function circle(x: number, y: number, radius: number): Ring {
  return Array.from({ length: 24 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 24
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]
  })
}
