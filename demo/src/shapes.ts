import type { Point } from '@castwright/engine/panel'

/** Outline and openings of one invented panel, mm; x right, y up, origin at a corner. */
export interface Shape {
  readonly outline: readonly Point[]
  readonly openings: readonly { readonly mark: string; readonly outline: readonly Point[] }[]
}

export function plain(length: number, height: number): Shape {
  return { outline: box(0, 0, length, height), openings: [] }
}

/** A door: an opening on the bottom edge. */
export function withDoor(shape: Shape, x: number, width: number, height: number): Shape {
  return withOpening(shape, `D${count(shape, 'D') + 1}`, box(x, 0, width, height))
}

export function withWindow(shape: Shape, x: number, y: number, width: number, height: number): Shape {
  return withOpening(shape, `O${count(shape, 'O') + 1}`, box(x, y, width, height))
}

/** A round opening as the carpenter makes it: a polygon of `sides` sides. */
export function withRound(shape: Shape, x: number, y: number, diameter: number, sides = 24): Shape {
  const ring = Array.from({ length: sides }, (_, index): Point => {
    const angle = (2 * Math.PI * (index + 0.5)) / sides
    return [
      Math.round(x + (diameter / 2) * Math.cos(angle)),
      Math.round(y + (diameter / 2) * Math.sin(angle)),
    ]
  })
  return withOpening(shape, `R${count(shape, 'R') + 1}`, ring)
}

/** Eaves at both ends, ridge at `at` along the length. */
export function gable(length: number, eaves: number, ridge: number, at = length / 2): Shape {
  return {
    outline: [
      [0, 0],
      [length, 0],
      [length, eaves],
      [at, ridge],
      [0, eaves],
    ],
    openings: [],
  }
}

/** A rectangle without its upper right corner. */
export function ell(length: number, height: number, foot: number, leg: number): Shape {
  return {
    outline: [
      [0, 0],
      [length, 0],
      [length, foot],
      [leg, foot],
      [leg, height],
      [0, height],
    ],
    openings: [],
  }
}

/** A pocket for a beam in the top edge. */
export function notched(length: number, height: number, x: number, width: number, depth: number): Shape {
  return {
    outline: [
      [0, 0],
      [length, 0],
      [length, height],
      [x + width, height],
      [x + width, height - depth],
      [x, height - depth],
      [x, height],
      [0, height],
    ],
    openings: [],
  }
}

/** All four corners cut at 45 degrees. */
export function chamfered(length: number, height: number, cut: number): Shape {
  return {
    outline: [
      [cut, 0],
      [length - cut, 0],
      [length, cut],
      [length, height - cut],
      [length - cut, height],
      [cut, height],
      [0, height - cut],
      [0, cut],
    ],
    openings: [],
  }
}

/** Top edge runs from `left` to `right` height: beside a stair or a ramp. */
export function raking(length: number, left: number, right: number): Shape {
  return {
    outline: [
      [0, 0],
      [length, 0],
      [length, right],
      [0, left],
    ],
    openings: [],
  }
}

/** A stem with a head that overhangs it on both sides. */
export function tee(length: number, height: number, stem: number, head: number): Shape {
  const side = (length - stem) / 2
  return {
    outline: [
      [side, 0],
      [side + stem, 0],
      [side + stem, height - head],
      [length, height - head],
      [length, height],
      [0, height],
      [0, height - head],
      [side, height - head],
    ],
    openings: [],
  }
}

function withOpening(shape: Shape, mark: string, outline: readonly Point[]): Shape {
  return { ...shape, openings: [...shape.openings, { mark, outline }] }
}

function count(shape: Shape, letter: string): number {
  return shape.openings.filter(({ mark }) => mark.startsWith(letter)).length
}

function box(x: number, y: number, width: number, height: number): Point[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}
