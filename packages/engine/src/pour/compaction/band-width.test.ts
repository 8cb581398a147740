import { describe, expect, it } from 'vitest'
import { replay } from '../../working/replay.ts'
import { bandWidth } from './band-width.ts'

/** 6 × 3 × 0.15 m: 2.7 m³. Expected widths computed, second method: concrete of 15 min, over width and depth of the panel. */
const PANEL = { volume: 2.7, length: 6000, placing: null, wait: 15 }

describe('width of a band', () => {
  it('is what the heads finish while the band beside it may wait: 54 min of vibrating, 3 m³/h, 0.75 m³, 1667 mm', () => {
    const { width, steps } = bandWidth({ ...PANEL, minutes: 54 })
    expect(width).toBeCloseTo((0.75 / (3 * 0.15)) * 1000, 9)
    for (const step of steps) expect(replay(step)).toBeCloseTo(step.result as number, 9)
  })

  it('follows the gang where it is slower than the heads, and ends at the panel', () => {
    expect(bandWidth({ ...PANEL, minutes: 54, placing: 2 }).width).toBeCloseTo((0.5 / 0.45) * 1000, 9)
    expect(bandWidth({ ...PANEL, minutes: 54, placing: 8 }).width).toBeCloseTo(1666.67, 2)
    expect(bandWidth({ ...PANEL, minutes: 5 }).width).toBe(6000)
  })

  it('two heads make it twice as wide, half the wait half as wide', () => {
    const one = bandWidth({ ...PANEL, minutes: 80 }).width
    expect(bandWidth({ ...PANEL, minutes: 40 }).width).toBeCloseTo(2 * one, 9)
    expect(bandWidth({ ...PANEL, minutes: 80, wait: 7.5 }).width).toBeCloseTo(one / 2, 9)
  })
})
