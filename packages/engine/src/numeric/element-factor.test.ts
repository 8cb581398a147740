import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { factorElements, NotPositiveError, solveFactor } from './element-factor.ts'

/** A strip of triangles with random positive definite element matrices. */
function strip(length: number, perNode: number, numbers: readonly number[]) {
  const count = 2 * (length + 1)
  const x = Float64Array.from({ length: count }, (_, i) => i >> 1)
  const y = Float64Array.from({ length: count }, (_, i) => i & 1)
  const triangles: number[] = []
  for (let i = 0; i < length; i += 1) {
    triangles.push(2 * i, 2 * i + 2, 2 * i + 1, 2 * i + 1, 2 * i + 2, 2 * i + 3)
  }
  const width = 3 * perNode
  const matrices = new Float64Array((triangles.length / 3) * width * width)
  let at = 0
  for (let e = 0; e < triangles.length / 3; e += 1) {
    const g = Array.from({ length: width }, () =>
      Array.from({ length: width }, () => numbers[at++ % numbers.length]!),
    )
    for (let i = 0; i < width; i += 1) {
      for (let j = 0; j < width; j += 1) {
        let sum = i === j ? 1 : 0
        for (let k = 0; k < width; k += 1) sum += g[i]![k]! * g[j]![k]!
        matrices[e * width * width + i * width + j] = sum
      }
    }
  }
  return {
    x,
    y,
    perNode,
    triangles: Int32Array.from(triangles),
    matrices,
    held: new Uint8Array(count * perNode),
  }
}

function times(system: ReturnType<typeof strip>, u: Float64Array): Float64Array {
  const { perNode, triangles, matrices } = system
  const width = 3 * perNode
  const out = new Float64Array(u.length)
  const row = (e: number, i: number): number =>
    triangles[3 * e + Math.floor(i / perNode)]! * perNode + (i % perNode)
  for (let e = 0; e < triangles.length / 3; e += 1) {
    for (let i = 0; i < width; i += 1) {
      for (let j = 0; j < width; j += 1)
        out[row(e, i)]! += matrices[e * width * width + i * width + j]! * u[row(e, j)]!
    }
  }
  return out
}

describe('factor of element matrices', () => {
  it('gives back any solution (seed shown on failure)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 25 }),
        fc.integer({ min: 1, max: 6 }),
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 40, maxLength: 80 }),
        (length, perNode, numbers) => {
          const system = strip(length, perNode, numbers)
          const expected = Float64Array.from({ length: system.held.length }, (_, i) => Math.sin(3 * i + 1))
          const found = solveFactor(factorElements(system), times(system, expected))
          for (const [i, value] of expected.entries()) expect(Math.abs(found[i]! - value)).toBeLessThan(1e-9)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('a held unknown stays zero and leaves the others as the smaller system has them', () => {
    const system = strip(6, 2, [0.3, -0.7, 0.5, 0.1])
    system.held[4] = 1
    const expected = Float64Array.from({ length: system.held.length }, (_, i) => (i === 4 ? 0 : i + 1))
    const right = times(system, expected)
    right[4] = 0
    const found = solveFactor(factorElements(system), right)
    for (const [i, value] of expected.entries()) expect(Math.abs(found[i]! - value)).toBeLessThan(1e-9)
  })

  it('is refused where something can move without resistance', () => {
    const system = strip(3, 1, [0])
    system.matrices.fill(0)
    expect(() => factorElements(system)).toThrow(NotPositiveError)
  })
})
