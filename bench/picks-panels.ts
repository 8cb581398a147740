import { type Panel, panelOf, parseDrawing } from '@castwright/engine/panel'

/** Invented panels for the search of picks: plain, with openings, notched, L, gable, slender, wide, many small openings. */
export const PICK_PANELS: readonly (readonly [name: string, panel: Panel])[] = [
  ['plain 6.0 × 3.0', panel(150, box(0, 0, 6000, 3000))],
  [
    'two openings 7.2 × 3.2',
    panel(160, box(0, 0, 7200, 3200), [box(900, 300, 1900, 2400), box(4200, 900, 5700, 2100)]),
  ],
  [
    'door notch 8.4 × 3.6',
    panel(180, [
      [0, 0],
      [2100, 0],
      [2100, 2400],
      [3200, 2400],
      [3200, 0],
      [8400, 0],
      [8400, 3600],
      [0, 3600],
    ]),
  ],
  [
    'L 6.0 × 3.0',
    panel(150, [
      [0, 0],
      [6000, 0],
      [6000, 1800],
      [4000, 1800],
      [4000, 3000],
      [0, 3000],
    ]),
  ],
  [
    'gable 7.0 × 4.6',
    panel(
      175,
      [
        [0, 0],
        [7000, 0],
        [7000, 2800],
        [3500, 4600],
        [0, 2800],
      ],
      [box(2900, 900, 4100, 2100)],
    ),
  ],
  ['slender 9.0 × 1.5', panel(140, box(0, 0, 9000, 1500), [box(3800, 450, 5000, 1050)])],
  [
    'three windows 10.8 × 3.4',
    panel(200, box(0, 0, 10_800, 3400), [
      box(900, 1000, 2700, 2400),
      box(4200, 1000, 6000, 2400),
      box(7800, 1000, 9900, 2400),
    ]),
  ],
  [
    'skew 6.6 × 3.9',
    panel(
      150,
      [
        [0, 0],
        [6600, 400],
        [6100, 3900],
        [700, 3500],
      ],
      [box(3900, 1500, 4800, 2600)],
    ),
  ],
  [
    'U 6.0 × 4.2',
    panel(170, [
      [0, 0],
      [6000, 0],
      [6000, 4200],
      [4400, 4200],
      [4400, 1700],
      [1800, 1700],
      [1800, 3600],
      [0, 3600],
    ]),
  ],
]

function box(left: number, bottom: number, right: number, top: number): number[][] {
  return [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ]
}

function panel(thickness: number, outline: number[][], openings: number[][][] = []): Panel {
  return panelOf(
    parseDrawing({
      format: 'castwright.drawing/1',
      mark: 'P',
      outline,
      thickness,
      concrete: { strength: 40, density: 2500 },
      openings: openings.map((ring, i) => ({ mark: `O${i + 1}`, outline: ring })),
    }),
  )
}
