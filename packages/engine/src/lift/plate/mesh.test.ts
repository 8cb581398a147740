import { describe, expect, it } from 'vitest'
import type { Point, Ring } from '../../panel/point.ts'
import { area } from '../../panel/polygon.ts'
import { type Piece, subtract } from '../../panel/region.ts'
import { InputError } from '../../working/issue.ts'
import { LEAST_ANGLE, type PlateMesh, plateMesh } from './mesh.ts'

function box(x: number, y: number, width: number, height: number): Ring {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

function piece(outline: Ring, openings: readonly Ring[] = []): Piece {
  const region = subtract(outline, openings)
  expect(region).toHaveLength(1)
  return region[0]!
}

function meshOf(shape: Piece, points: readonly Point[] = [], size = 60): PlateMesh {
  const fine = [...points, ...shape.holes.flat()].map((at) => ({ at, size }))
  return plateMesh({ piece: shape, points, fine, coarsest: 600, growth: 0.5 })
}

function meshArea({ x, y, triangles }: PlateMesh): number {
  let twice = 0
  for (let e = 0; e < triangles.length; e += 3) {
    const [i, j, k] = [triangles[e]!, triangles[e + 1]!, triangles[e + 2]!]
    const part = (x[j]! - x[i]!) * (y[k]! - y[i]!) - (x[k]! - x[i]!) * (y[j]! - y[i]!)
    expect(part).toBeGreaterThan(0)
    twice += part
  }
  return twice / 2
}

function concrete({ outline, holes }: Piece): number {
  return holes.reduce((sum, hole) => sum - area(hole), area(outline))
}

describe('mesh of a panel', () => {
  const shapes: Record<string, Piece> = {
    'plain panel': piece(box(0, 0, 6000, 3000)),
    'two windows': piece(box(0, 0, 7200, 3200), [box(1500, 800, 1200, 1500), box(4500, 900, 900, 2100)]),
    'mullion of 120': piece(box(0, 0, 6000, 3000), [box(1000, 600, 1800, 1800), box(2920, 600, 1800, 1800)]),
    'door that cuts the foot': piece(box(0, 0, 6000, 3000), [box(2500, -10, 1000, 2110)]),
    'gable, skew': piece([
      [0, 0],
      [6000, 300],
      [5800, 3000],
      [2300, 4500],
      [-200, 2800],
    ]),
    'round opening of 24 corners': piece(box(0, 0, 4000, 3000), [
      Array.from(
        { length: 24 },
        (_, i): Point => [
          2000 + 400 * Math.cos((i * Math.PI) / 12),
          1500 + 400 * Math.sin((i * Math.PI) / 12),
        ],
      ),
    ]),
  }
  it.each(Object.entries(shapes))('%s: covers the concrete, no angle under 25°', (_, shape) => {
    const mesh = meshOf(shape)
    expect(meshArea(mesh)).toBeCloseTo(concrete(shape), 0)
    expect(mesh.leastAngle).toBeGreaterThan(LEAST_ANGLE - 0.01)
  })

  it('a sharp corner of the drawing keeps its angle and the rest keeps 25°', () => {
    const shape = piece([
      [0, 0],
      [6000, 0],
      [6000, 800],
    ])
    const mesh = meshOf(shape)
    expect(meshArea(mesh)).toBeCloseTo(concrete(shape), 0)
    const sharpest = (Math.atan2(800, 6000) * 180) / Math.PI
    expect(mesh.leastAngle).toBeGreaterThan(sharpest / 2)
  })

  it('points asked for are nodes where they are, on an edge too', () => {
    const points: Point[] = [
      [1243, 621],
      [3000, 0],
      [5999.5, 1500],
    ]
    const mesh = meshOf(shapes['plain panel']!, points)
    for (const [i, node] of mesh.pointNodes.entries()) {
      expect([mesh.x[node], mesh.y[node]]).toEqual(points[i])
    }
  })

  it('is the same each time', () => {
    const one = meshOf(shapes['two windows']!)
    const two = meshOf(shapes['two windows']!)
    expect(two.x).toEqual(one.x)
    expect(two.triangles).toEqual(one.triangles)
  })

  it('three hundred openings end in bounded time', () => {
    const holes = Array.from({ length: 300 }, (_, i) =>
      box(150 + 390 * (i % 30), 150 + 290 * Math.floor(i / 30), 200, 150),
    )
    const shape = piece(box(0, 0, 12_000, 3100), holes)
    const start = performance.now()
    const mesh = meshOf(shape, [], 100)
    expect(performance.now() - start).toBeLessThan(8000)
    expect(meshArea(mesh)).toBeCloseTo(concrete(shape), -1)
    expect(mesh.leastAngle).toBeGreaterThan(LEAST_ANGLE - 0.01)
  })

  it('a sliver panel of 4 mm is meshed, one of a fifth of a millimetre refused', () => {
    const shape = piece(box(0, 0, 3000, 4))
    expect(meshArea(meshOf(shape))).toBeCloseTo(12_000, 3)
    expect(() => meshOf(piece(box(0, 0, 3000, 0.2)))).toThrow(InputError)
  })
})
