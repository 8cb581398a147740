import type { Drawing, Point } from '@castwright/engine/panel'
import {
  chamfered,
  ell,
  gable,
  notched,
  plain,
  raking,
  type Shape,
  tee,
  withDoor,
  withRound,
  withWindow,
} from './shapes.ts'

/** One row of the invented job: what the drawing is made from. mm, MPa. */
export interface PanelRow {
  readonly mark: string
  /** The kind of shape in a word, for the list. */
  readonly kind: string
  readonly shape: Shape
  readonly thickness: number
  readonly concrete: 40 | 50
  /**
   * `face`: four inserts around the centre of gravity, opposite in pairs, here the lower right and the upper right one
   * from the centre; `line`: two on a line through it; `edge`: two on the top edge; each half their spacing.
   */
  readonly pick:
    | { readonly on: 'face'; readonly lower: Point; readonly upper: Point }
    | { readonly on: 'edge'; readonly dx: number }
  /** Least strength that the designer asks at the first lift. */
  readonly liftStrength: number
  readonly revision: string
  /** Void formers and ducts, as the drawing has them. */
  readonly inside?: Pick<Drawing, 'voids' | 'ducts'>
}

const skew = (lower: Point, upper: Point) => ({ on: 'face', lower, upper }) as const
const face = (dx: number, dy: number) => skew([dx, -dy], [dx, dy])
const edge = (dx: number) => ({ on: 'edge', dx }) as const

function row(
  mark: string,
  kind: string,
  shape: Shape,
  thickness: number,
  pick: PanelRow['pick'],
  rest: Partial<PanelRow> = {},
): PanelRow {
  return { mark, kind, shape, thickness, pick, concrete: 40, liftStrength: 15, revision: 'A', ...rest }
}

/**
 * Forty panels of the invented job, in the order in which they are poured, four a day: one row a bed, beds 1 to 4.
 * Letters: N, E, S elevations; B spandrel bands; T retaining walls; G gables; C core.
 */
export const PANEL_ROWS: readonly PanelRow[] = [
  // first day
  row('N01', 'plain', plain(6800, 3250), 180, face(2000, 750), { liftStrength: 18 }),
  row('B01', 'spandrel', plain(12_600, 950), 160, edge(2650)),
  row('S01', 'plain', plain(4200, 3100), 160, edge(900)),
  row('T01', 'thick', plain(5200, 2400), 260, face(1100, 500), { concrete: 50, liftStrength: 20 }),
  // second day
  row('N02', 'window', withWindow(plain(6800, 3250), 2500, 1050, 1800, 1300), 180, face(2000, 900), {
    liftStrength: 18,
  }),
  row('B02', 'spandrel', plain(12_600, 950), 160, edge(2650)),
  row('S02', 'door', withDoor(plain(4200, 3100), 1550, 1100, 2150), 160, edge(900)),
  row('T02', 'thick', plain(5200, 2400), 260, face(1100, 500), { concrete: 50, liftStrength: 20 }),
  // third day
  row(
    'N03',
    'windows',
    withWindow(withWindow(plain(7400, 3250), 900, 1050, 1500, 1300), 5000, 1050, 1500, 1300),
    180,
    face(2100, 1200),
    {
      liftStrength: 18,
    },
  ),
  row('E01', 'notch', notched(7000, 3250, 3000, 800, 420), 180, face(1900, 1000), { liftStrength: 18 }),
  row('S03', 'door and window', doorAndWindow(5600, 3100), 160, edge(1250)),
  row('C01', 'ell', ell(4900, 3300, 1800, 2900), 200, skew([1500, -800], [350, 850]), {
    liftStrength: 18,
    revision: 'B',
  }),
  // fourth day
  row('N04', 'window', withWindow(plain(6800, 3250), 2500, 1050, 1800, 1300), 180, face(2000, 900), {
    liftStrength: 18,
  }),
  row('G01', 'gable', gable(7600, 2350, 3550), 180, face(2100, 750), { liftStrength: 18 }),
  row('S04', 'plain', plain(4200, 3100), 160, edge(900)),
  row('T03', 'thick', chamfered(5200, 2400, 180), 260, face(1100, 500), {
    concrete: 50,
    liftStrength: 20,
  }),
  // fifth day
  row('E02', 'round opening', withRound(plain(5400, 3250), 2700, 1750, 1200), 180, face(1500, 850), {
    liftStrength: 18,
  }),
  row('B03', 'spandrel', plain(11_400, 950), 160, edge(2400)),
  row('S05', 'door', withDoor(plain(4200, 3100), 1550, 1100, 2150), 160, edge(900)),
  row('C02', 'ell', ell(4900, 3300, 1800, 2900), 200, skew([1500, -800], [350, 850]), {
    liftStrength: 18,
    revision: 'B',
  }),
  // sixth day: the day of the clock
  row('N05', 'windows', windowsInRow(7400, 3250), 180, face(2100, 1200), { liftStrength: 18 }),
  row('E03', 'notch', notched(7000, 3250, 3000, 800, 420), 180, face(1900, 1000), { liftStrength: 18 }),
  row('S06', 'chamfered', chamfered(4000, 3000, 150), 160, edge(850)),
  row('T04', 'thick', plain(5200, 2400), 260, face(1100, 500), {
    concrete: 50,
    liftStrength: 20,
    inside: {
      voids: [
        {
          mark: 'V1',
          outline: [
            [1950, 1030],
            [3250, 1030],
            [3250, 1370],
            [1950, 1370],
          ],
          depth: 80,
          above: 90,
          density: 25,
          section: 0.9,
        },
      ],
      ducts: [through('P1', 2100, 5200)],
    },
  }),
  // seventh day
  row('N06', 'window', withWindow(plain(6800, 3250), 2500, 1050, 1800, 1300), 180, face(2000, 900), {
    liftStrength: 18,
  }),
  row('G02', 'gable', gable(7600, 2350, 3550), 180, face(2100, 750), { liftStrength: 18 }),
  row('S07', 'door and window', doorAndWindow(5600, 3100), 160, edge(1250)),
  row('C03', 'raking', raking(5000, 3300, 1900), 200, face(1450, 600), { liftStrength: 18 }),
  // eighth day
  row('N07', 'plain', plain(6800, 3250), 180, face(2000, 750), { liftStrength: 18 }),
  row('B04', 'spandrel', plain(12_600, 950), 160, edge(2650)),
  row('S08', 'plain', plain(4200, 3100), 160, edge(900)),
  row('C04', 'tee', tee(5000, 3200, 2200, 1200), 200, face(800, 450), { liftStrength: 18 }),
  // ninth day
  row('E04', 'round opening', withRound(plain(5400, 3250), 2700, 1750, 1200), 180, face(1500, 850), {
    liftStrength: 18,
  }),
  row('B05', 'spandrel', plain(11_400, 950), 160, edge(2400)),
  row('S09', 'chamfered', chamfered(4000, 3000, 150), 160, edge(850)),
  row('T05', 'thick', chamfered(5200, 2400, 180), 260, face(1100, 500), {
    concrete: 50,
    liftStrength: 20,
    inside: { ducts: [through('P1', 2100, 5200)] },
  }),
  // tenth day
  row('E05', 'window and round opening', windowAndRound(6800, 3250), 180, face(2150, 1200), {
    liftStrength: 18,
  }),
  row('G03', 'gable', withWindow(gable(7600, 2350, 3550), 3200, 1250, 1200, 900), 180, face(2100, 750), {
    liftStrength: 18,
  }),
  row('S10', 'plain', plain(4200, 3100), 160, edge(900)),
  row('C05', 'tee', tee(5000, 3200, 2200, 1200), 200, face(800, 450), { liftStrength: 18 }),
]

/** A duct from end to end, at mid-thickness of a thick wall. */
function through(mark: string, up: number, length: number): NonNullable<Drawing['ducts']>[number] {
  return {
    mark,
    line: [
      [0, up],
      [length, up],
    ],
    diameter: 60,
    height: 130,
    mass: 0.9,
  }
}

function doorAndWindow(length: number, height: number): Shape {
  return withWindow(withDoor(plain(length, height), 700, 1000, 2150), 3100, 1000, 1500, 1200)
}

function windowsInRow(length: number, height: number): Shape {
  return withWindow(withWindow(plain(length, height), 900, 1050, 1500, 1300), 5000, 1050, 1500, 1300)
}

function windowAndRound(length: number, height: number): Shape {
  return withRound(withWindow(plain(length, height), 700, 1050, 1500, 1300), 5500, 1700, 1100)
}
