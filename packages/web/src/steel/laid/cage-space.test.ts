import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { barAt, cageInSpace, type Look, movedBy, nearerBy } from './cage-space.ts'

const RING = [
  [0, 0],
  [6000, 0],
  [6000, 3000],
  [0, 3000],
] as const
const bar = (id: string, y: number, z: number) => ({
  id,
  diameter: 12,
  centreline: [
    [40, y, z],
    [5960, y, z],
  ] as const,
})
const LEVEL: Look = { turn: 0, tilt: 90, zoom: 1, stretch: 1, aside: [0, 0] }
const of = (look: Partial<Look>, bars = [bar('low', 500, 36), bar('high', 2500, 140)]) =>
  cageInSpace({ bars, rings: [RING], thickness: 180, look: { ...LEVEL, ...look }, width: 640, height: 400 })

describe('a cage in space', () => {
  it('straight from above is the plan, y up', () => {
    const { strokes } = of({})
    const [low, high] = strokes
    const scale = (640 - 28) / 6000
    expect(low?.points[0]?.[0]).toBeCloseTo(320 + (40 - 3000) * scale, 9)
    expect(low?.points[0]?.[1]).toBeCloseTo(200 - (500 - 1500) * scale, 9)
    expect(high?.points[0]?.[1]).toBeLessThan(low?.points[0]?.[1] ?? 0)
  })

  it('level shows heights, the higher one drawn last', () => {
    const { strokes } = of({ tilt: 0 })
    expect(strokes.map(({ id }) => id)).toEqual(['low', 'high'])
    const [low, high] = strokes
    const scale = (640 - 28) / 6000
    expect((low?.points[0]?.[1] ?? 0) - (high?.points[0]?.[1] ?? 0)).toBeCloseTo((140 - 36) * scale, 9)
    const stretched = of({ tilt: 0, stretch: 3 }).strokes
    expect((stretched[0]?.points[0]?.[1] ?? 0) - (stretched[1]?.points[0]?.[1] ?? 0)).toBeCloseTo(
      3 * 104 * scale,
      9,
    )
  })

  it('stays in the picture at any turn and tilt, with no number missing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        fc.integer({ min: 1, max: 6 }),
        (turn, tilt, stretch) => {
          const { strokes, slab } = of({ turn, tilt, stretch })
          for (const [x, y] of [...strokes.flatMap(({ points }) => points), ...slab.flat()]) {
            expect(x).toBeGreaterThan(0)
            expect(x).toBeLessThan(640)
            expect(y).toBeGreaterThan(0)
            expect(y).toBeLessThan(400)
          }
        },
      ),
    )
  })

  it('moves aside with the picture, keeps its place when brought nearer, and comes back to the middle', () => {
    const near = nearerBy(LEVEL, 2, 8)
    const moved = movedBy(near, 0.25, -0.1)
    const [from, to] = [of(near), of(moved)].map(({ strokes }) => strokes[0]?.points[0])
    expect((to?.[0] ?? 0) - (from?.[0] ?? 0)).toBeCloseTo(0.25 * 640, 9)
    expect((to?.[1] ?? 0) - (from?.[1] ?? 0)).toBeCloseTo(-0.1 * 400, 9)
    expect(nearerBy(moved, 2, 8).aside).toEqual([0.5, -0.2])
    expect(nearerBy(moved, 0.1, 8)).toEqual(LEVEL)
    expect(movedBy(near, 9, -9).aside).toEqual([1, -1])
  })

  it('bars without a height are left out', () => {
    expect(of({}, []).strokes).toEqual([])
    const none = { id: 'n', diameter: 12, centreline: null }
    const view = cageInSpace({
      bars: [none],
      rings: [RING],
      thickness: 180,
      look: LEVEL,
      width: 640,
      height: 400,
    })
    expect(view.strokes).toEqual([])
  })

  it('a touch finds the bar under it, the upper of two, and nothing far away', () => {
    const { strokes } = of({})
    const [x, y] = strokes[1]?.points[0] ?? [0, 0]
    expect(barAt(strokes, x + 100, y + 3, 12)).toBe('high')
    expect(barAt(strokes, x + 100, y + 60, 12)).toBeNull()
    const stacked = of({}, [bar('under', 500, 36), bar('over', 500, 140)]).strokes
    expect(barAt(stacked, x + 100, stacked[0]?.points[0]?.[1] ?? 0, 12)).toBe('over')
  })
})
