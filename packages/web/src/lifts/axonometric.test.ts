import { describe, expect, it } from 'vitest'
import { axonometric, exaggeration } from './axonometric.ts'

const field = {
  x: Float32Array.from([0, 4000, 4000, 0]),
  y: Float32Array.from([0, 0, 2000, 2000]),
  deflection: Float32Array.from([0, 0, 0.8, 0]),
  stress: Float32Array.from([0, 0, 0, 0]),
  triangles: Uint16Array.from([0, 1, 2, 0, 2, 3]),
}

describe('the deflected shape', () => {
  it('is drawn larger by a round number', () => {
    expect(exaggeration(field)).toBe(500)
    expect(exaggeration({ ...field, deflection: new Float32Array(4) })).toBe(1)
  })

  it('stays in its frame at every turn', () => {
    for (const turn of [0, 30, 90, 200, 359]) {
      const faces = axonometric({ field, turn, times: 500, width: 300, height: 200 })
      expect(faces).toHaveLength(2)
      const numbers = faces.flatMap(({ path }) =>
        [...path.matchAll(/([\d.]+) ([\d.]+)/g)].map(([, u, v]) => [Number(u), Number(v)]),
      )
      for (const [u, v] of numbers) {
        expect(u).toBeLessThanOrEqual(300)
        expect(v).toBeLessThanOrEqual(200)
      }
    }
  })
})
