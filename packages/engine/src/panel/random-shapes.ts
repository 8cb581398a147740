import fc from 'fast-check'
import type { Point, Ring } from './point.ts'
import { ringFault } from './polygon.ts'

/** Simple polygons around a middle, mm: star-shaped, so convex, ells, notches and spikes all come up. For tests. */
export function starRing({ middle = [0, 0] as Point, least = 200, most = 4000 } = {}): fc.Arbitrary<Ring> {
  return fc
    .array(fc.tuple(fc.integer({ min: 0, max: 3599 }), fc.integer({ min: least, max: most })), {
      minLength: 3,
      maxLength: 14,
    })
    .map((rays) => {
      const turns = new Map(rays.map(([turn, radius]) => [turn, radius]))
      return [...turns]
        .sort(([a], [b]) => a - b)
        .map(([turn, radius]): Point => {
          const angle = (turn * Math.PI) / 1800
          return [
            middle[0] + Math.round(radius * Math.cos(angle)),
            middle[1] + Math.round(radius * Math.sin(angle)),
          ]
        })
    })
    .filter((ring) => ring.length >= 3 && ringFault(ring) === null)
}
