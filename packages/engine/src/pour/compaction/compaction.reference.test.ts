// Check values of placing and compacting with their published sources. "computed": closed form, recomputed apart from this code.
import { describe, expect, it } from 'vitest'
import type { Point, Ring } from '../../panel/point.ts'
import { subtract } from '../../panel/region.ts'
import { compact } from '../compact.ts'
import { placingRate, radiusOfAction } from '../vibrator.ts'
import { Cover } from './cover.ts'
import { Ground } from './ground.ts'
import { planeCount } from './pattern.ts'
import { uncoveredArea } from './uncovered-area.ts'

const rect = (x: number, y: number, w: number, h: number): Ring => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]

/** Whether a grid reaches all of the middle of its own field, edges left out. */
function reaches(grid: readonly Point[], radius: number): boolean {
  const region = subtract(rect(-500, -500, 5500, 5500), [])
  const cover = new Cover(new Ground(region, radius), radius)
  for (const [x, y] of grid) cover.add(x, y)
  return cover.gaps().every(({ x, y }) => Math.min(x, y) < 1000 || Math.max(x, y) > 2500)
}

const ACTION = 250
const SIDE = 1.5 * ACTION

function square(side: number): Point[] {
  return Array.from({ length: 144 }, (_, i): Point => [(i % 12) * side, Math.floor(i / 12) * side])
}

function triangular(side: number): Point[] {
  const pitch = (side * Math.sqrt(3)) / 2
  return Array.from({ length: 168 }, (_, i): Point => {
    const row = Math.floor(i / 12)
    return [((i % 12) + (row % 2) / 2) * side, row * pitch]
  })
}

describe('density of covers of the plane: Kershner, American Journal of Mathematics 61, 1939 (from memory)', () => {
  it('18 m² and 250 mm: 110.85 in triangular rows; 144.00 in squares of √2 R (computed)', () => {
    expect(planeCount(18e6, 250)).toBeCloseTo(110.85, 2)
    expect(18e6 / (Math.SQRT2 * 250) ** 2).toBeCloseTo(144, 9)
  })
  it('1.209200 and 1.570796; the counts stand as 0.769800 (computed)', () => {
    const triangles = planeCount(1, 1) * Math.PI
    expect(triangles).toBeCloseTo(1.2092, 6)
    expect(triangles / (Math.PI / 2)).toBeCloseTo(0.7698, 6)
  })
})

describe('a grid of 1.5 radii of action (geometry, computed)', () => {
  it('in squares: the farthest point is 1.0607 radii away, so the radius of action does not reach it', () => {
    expect(reaches(square(SIDE), 1.0608 * ACTION)).toBe(true)
    expect(reaches(square(SIDE), 1.0606 * ACTION)).toBe(false)
    expect(reaches(square(SIDE), ACTION)).toBe(false)
  })
  it('in squares: 0.668 % of the area lies outside every disc; polygons inside the circles say a little more', () => {
    const lens = 2 * Math.acos(0.75) - 0.75 * Math.sqrt(4 - 2.25)
    expect((2.25 - Math.PI + 2 * lens) / 2.25).toBeCloseTo(0.00668, 5)
    const cell = subtract(rect(SIDE, SIDE, SIDE, SIDE), [])
    const share = (uncoveredArea(cell, square(SIDE), ACTION) * 1e6) / SIDE ** 2
    expect(share).toBeGreaterThan(0.00668)
    expect(share).toBeLessThan(0.0085)
  })
  it('in triangular rows: 0.8660 radii away, rows 1.2990 radii apart: the covering radius of 0.866 with a hair', () => {
    expect(reaches(triangular(SIDE), 0.8661 * ACTION)).toBe(true)
    expect(reaches(triangular(SIDE), 0.8659 * ACTION)).toBe(false)
    expect((SIDE * Math.sqrt(3)) / 2 / ACTION).toBeCloseTo(1.299, 4)
  })
  it('squares of √2 R still cover, larger ones do not', () => {
    expect(reaches(square(Math.SQRT2 * 0.9998 * ACTION), ACTION)).toBe(true)
    expect(reaches(square(1.415 * ACTION), ACTION)).toBe(false)
  })
})

describe('immersion vibrators: table of ACI 309R as published by Concrete New Zealand (seen)', () => {
  it('head 40 mm: 150 mm of action (rows seen, the straight line inside a row is ours)', () => {
    expect(radiusOfAction(40)).toMatchObject({ known: true, value: 150 })
  })
  it.each<[number, readonly [number, number] | null]>([
    [25, [0.8, 4]],
    [40, [0.8, 4]],
    [60, [4.6, 15]],
    [100, [11, 31]],
    [180, [19, 38]],
    [19, null],
  ])('head %d mm keeps up with %o m³/h: the row that gives its radius', (head, rate) => {
    expect(placingRate(head)).toEqual(rate)
  })
})

describe('time of a pattern: 10 s in and 3 s moving (5 to 15 s: common practice, no source)', () => {
  it('375 mm squares of 150 mm: 0.0211 m³ in 13 s are 5.84 m³/h; 128 insertions 27.7 min (computed)', () => {
    expect(((0.375 ** 2 * 0.15) / 13) * 3600).toBeCloseTo(5.84, 2)
    expect((128 * 13) / 60).toBeCloseTo(27.7, 1)
  })
  it('the pace of a plan is its concrete for its time', () => {
    const region = subtract(rect(0, 0, 2000, 1500), [])
    const found = compact({ region, thickness: 150, head: 60, chute: [0, 0], quick: true })
    if (!found.known) throw new Error('not known')
    const { pace, insertions, headRate } = found.value
    expect(pace).toBeCloseTo(0.45 / ((insertions.length * 13) / 3600), 9)
    expect(headRate).toEqual([4.6, 15])
  })
})
