import { describe, expect, it } from 'vitest'
import { panelOf } from '../../panel/panel.ts'
import { rigidity } from '../plate/model.ts'
import { classicalPlaces, TWO_FROM_END } from './classical.ts'
import { maximise } from './linear-program.ts'
import { picks } from './picks.ts'
import { PointForce } from './point-force.ts'

const G = 9.80665

function plain(length: number, width: number, thickness: number) {
  return panelOf({
    format: 'castwright.drawing/1',
    mark: 'P',
    outline: [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ],
    thickness,
    concrete: { strength: 40, density: 2500 },
  })
}

describe('picks: check values', () => {
  it('computed, second method (beam on two supports): 0.207107 L balances sagging and hogging at 0.021447 w L²', () => {
    const c = TWO_FROM_END
    expect(c).toBeCloseTo(0.207107, 6)
    expect((c * c) / 2).toBeCloseTo(0.021447, 6)
    expect(1 / 8 - c / 2).toBeCloseTo(0.021447, 6)
  })

  it('computed, second method (beam on three and four supports): the classical shares of rows of three and four', () => {
    const piece = plain(10_000, 3000, 150).region[0]!
    const row = (count: number, sharing: 'rigid' | 'equalised') =>
      classicalPlaces({ piece, centre: [5000, 1500], count, sharing })
        .slice(0, count / 2)
        .map(([x]) => x / 10_000)
    // Three-moment equation: hogging alike at all three supports.
    for (const [i, x] of [0.144949, 0.5, 0.855051].entries()) expect(row(6, 'rigid')[i]).toBeCloseTo(x, 6)
    for (const [i, x] of [0.138073, 0.5, 0.861927].entries()) expect(row(6, 'equalised')[i]).toBeCloseTo(x, 6)
    for (const [i, x] of [0.103553, 0.396447, 0.603553, 0.896447].entries())
      expect(row(8, 'equalised')[i]).toBeCloseTo(x, 6)
  })

  it('computed, second method (beam): two picks of a slender strip stand near 0.207 of its length, free edges and averages aside', () => {
    const panel = plain(9000, 600, 150)
    const found = picks({ panel, count: 2, edge: 300, poisson: 0 })
    const [a, b] = found.inserts.map(({ at }) => at[0]).sort((p, q) => p - q)
    expect(a! / 9000).toBeCloseTo(0.207, 1)
    expect((9000 - b!) / 9000).toBeCloseTo(0.207, 1)
    // w L² 0.021447 over the width: what the strip alone would have; the disc under a pick is above it.
    const strip = (6 * 0.021447 * 2500 * 0.15 * G * 81) / 1000 / (0.15 * 0.15) / 1000
    expect(found.peak.stress).toBeGreaterThan(strip * 0.97)
    expect(found.peak.stress).toBeLessThan(strip * 1.4)
  })

  it('computed, second method (Timoshenko and Woinowsky-Krieger, point force): disc mean of the curvature is that of ln c − ½', () => {
    const D = rigidity(30_000, 150, 0.2)
    const force = new PointForce(D, 1000)
    const [out, n, radius] = [new Float64Array(3), 4000, 75]
    let sum = 0
    for (let k = 0; k < n; k += 1) {
      const r = radius * Math.sqrt((k + 0.5) / n)
      force.curvatureInto(out, r * Math.cos(k), r * Math.sin(k))
      sum += (out[0]! + out[2]!) / (2 * n)
    }
    expect(sum / force.discCurvature(radius)).toBeCloseTo(1, 2)
  })

  it('computed by hand: a linear program of two numbers', () => {
    // 3x + 5y, x ≤ 4, 2y ≤ 12, 3x + 2y ≤ 18: 36 at (2, 6).
    expect(
      maximise(
        [3, 5],
        [
          [1, 0],
          [0, 2],
          [3, 2],
        ],
        [4, 12, 18],
      ),
    ).toEqual([2, 6])
    expect(maximise([1], [[-1]], [1])).toBeNull()
  })
})
