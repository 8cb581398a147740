import { expect } from 'vitest'
import { boxesMeet } from './labels.ts'
import type { Box, Picture } from './picture.ts'

/** Every space that letters take: texts, and letters in circles. */
function letterBoxes(picture: Picture): Box[] {
  return picture.shapes.flatMap((shape) => {
    if (shape.kind === 'text') return [shape.box]
    if (shape.kind !== 'circle' || shape.letter === undefined) return []
    const [x, y] = shape.at
    const half = shape.radius * 0.7
    return [{ left: x - half, right: x + half, top: y - half, bottom: y + half }]
  })
}

/** For tests: no letters meet others or are cut. */
export function expectClearLabels(picture: Picture): void {
  const boxes = letterBoxes(picture)
  for (const [index, box] of boxes.entries()) {
    for (const other of boxes.slice(index + 1)) expect(boxesMeet(box, other)).toBe(false)
  }
  for (const shape of picture.shapes) {
    if (shape.kind !== 'text') continue
    expect(shape.box.left).toBeGreaterThanOrEqual(0)
    expect(shape.box.top).toBeGreaterThanOrEqual(0)
    expect(shape.box.right).toBeLessThanOrEqual(picture.width)
    expect(shape.box.bottom).toBeLessThanOrEqual(picture.height)
  }
}
