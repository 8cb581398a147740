import { type Drawing, parseDrawing } from '@castwright/engine/panel'

/** Invented drawings that the pictures are tried on. */
const base = { format: 'castwright.drawing/1', thickness: 150, concrete: { strength: 40 } } as const

function rectangle(x: number, y: number, width: number, height: number): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

export const DOOR_AND_WINDOW: Drawing = parseDrawing({
  ...base,
  mark: 'W1',
  outline: rectangle(0, 0, 6000, 3000),
  openings: [
    { mark: 'D1', outline: rectangle(900, 0, 1000, 2100) },
    { mark: 'N1', outline: rectangle(3400, 900, 1600, 1200) },
  ],
  inserts: [
    { mark: 'A', at: [500, 2550], kind: 'face' },
    { mark: 'B', at: [5400, 2550], kind: 'face' },
    { mark: 'C', at: [2500, 600], kind: 'face' },
    { mark: 'D', at: [5400, 450], kind: 'face' },
  ],
})

export const GABLE: Drawing = parseDrawing({
  ...base,
  mark: 'G3',
  outline: [
    [0, 0],
    [8000, 0],
    [8000, 2700],
    [4000, 4000],
    [0, 2700],
  ],
  openings: [{ mark: 'D1', outline: rectangle(3100, 0, 1200, 2200) }],
  inserts: [
    { mark: 'A', at: [1600, 1500], kind: 'face' },
    { mark: 'B', at: [6400, 1500], kind: 'face' },
  ],
})

export const ELL: Drawing = parseDrawing({
  ...base,
  mark: 'L2',
  outline: [
    [0, 0],
    [4000, 0],
    [4000, 1500],
    [1800, 1500],
    [1800, 5200],
    [0, 5200],
  ],
  openings: [
    {
      mark: 'R1',
      outline: [
        [900, 3300],
        [1200, 3500],
        [1200, 3900],
        [900, 4100],
        [600, 3900],
        [600, 3500],
      ],
    },
  ],
})

export const SPANDREL: Drawing = parseDrawing({
  ...base,
  mark: 'SP-04',
  outline: rectangle(0, 0, 11_400, 900),
  openings: [
    { mark: 'P1', outline: rectangle(300, 350, 120, 120) },
    { mark: 'P2', outline: rectangle(520, 350, 120, 120) },
    { mark: 'P3', outline: rectangle(5000, 0, 260, 300) },
  ],
  inserts: [
    { mark: 'LIFT-1', at: [2400, 450], kind: 'face' },
    { mark: 'LIFT-2', at: [9000, 450], kind: 'face' },
  ],
})

export const EXAMPLE_DRAWINGS: readonly Drawing[] = [DOOR_AND_WINDOW, GABLE, ELL, SPANDREL]
