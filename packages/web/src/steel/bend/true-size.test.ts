import { arcDiameter } from '@castwright/engine/steel'
import { describe, expect, it } from 'vitest'
import { keepTrueSize, readTrueSize, riseOf } from './true-size.ts'

function storage(kept: string | null) {
  const box = { kept }
  return {
    getItem: () => box.kept,
    setItem: (_: string, value: string) => {
      box.kept = value
    },
  }
}

describe('true size on a screen', () => {
  it('is kept on the device, and asked for anew after the zoom changed', () => {
    const box = storage(null)
    expect(readTrueSize(box, 2)).toBeNull()
    keepTrueSize(box, { scale: 6.2, ratio: 2 })
    expect(readTrueSize(box, 2)).toEqual({ scale: 6.2, ratio: 2 })
    expect(readTrueSize(box, 2.2)).toBeNull()
  })

  it.each(['{', '5', 'null', '{"scale":"6","ratio":2}', '{"scale":0,"ratio":2}', '{"scale":400,"ratio":2}'])(
    'is not read from %s',
    (kept) => {
      expect(readTrueSize(storage(kept), 2)).toBeNull()
    },
  )

  it('chord and rise give the disc again (computed, second method: diameter of the arc)', () => {
    for (const diameter of [48, 80, 240]) {
      expect(arcDiameter(40, riseOf(diameter, 40) ?? Number.NaN)).toBeCloseTo(diameter, 9)
    }
    expect(riseOf(30, 40)).toBeNull()
  })
})
