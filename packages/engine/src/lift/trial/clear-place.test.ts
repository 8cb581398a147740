import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point } from '../../panel/point.ts'
import { covers, distanceToEdge, subtract } from '../../panel/region.ts'
import { clearPlace, LEAST_EDGE } from './clear-place.ts'

const wall: Point[] = [
  [0, 0],
  [4000, 0],
  [4000, 3000],
  [0, 3000],
]
const window: Point[] = [
  [1500, 1000],
  [2500, 1000],
  [2500, 2000],
  [1500, 2000],
]
const region = subtract(wall, [window])

describe('the nearest place for an insert', () => {
  it('is the wanted one where it is clear', () => {
    expect(clearPlace({ region, kind: 'face', at: [700, 900] })).toEqual([700, 900])
  })

  it('of a face insert stays off the outline and off an opening', () => {
    expect(clearPlace({ region, kind: 'face', at: [-300, 1500] })).toEqual([LEAST_EDGE, 1500])
    expect(clearPlace({ region, kind: 'face', at: [1600, 1500] })).toEqual([1500 - LEAST_EDGE, 1500])
  })

  it('of an edge insert lies on the edge', () => {
    expect(clearPlace({ region, kind: 'edge', at: [900, 2800] })).toEqual([900, 3000])
  })

  it('is none where nothing is wide enough, or nothing is asked for', () => {
    const strip = subtract(
      [
        [0, 0],
        [4000, 0],
        [4000, 30],
        [0, 30],
      ],
      [],
    )
    expect(clearPlace({ region: strip, kind: 'face', at: [100, 10] })).toBeNull()
    expect(clearPlace({ region, kind: 'face', at: [Number.NaN, 10] })).toBeNull()
  })

  it('is clear wherever the finger is', () => {
    const anywhere = fc.tuple(
      fc.double({ min: -9000, max: 9000, noNaN: true }),
      fc.double({ min: -9000, max: 9000, noNaN: true }),
    )
    fc.assert(
      fc.property(anywhere, (at) => {
        const face = clearPlace({ region, kind: 'face', at })
        const edge = clearPlace({ region, kind: 'edge', at })
        if (face === null || edge === null) return false
        return (
          covers(region, face) &&
          distanceToEdge(region, face) >= LEAST_EDGE - 0.01 &&
          distanceToEdge(region, edge) < 1e-6
        )
      }),
      { seed: 31, numRuns: 300 },
    )
  })
})
