import { describe, expect, it } from 'vitest'
import { bedWords, coverWords } from './bed-words.ts'

describe('beds and covers in words', () => {
  it('tell what lies under a panel, and that it is not given', () => {
    const bed = { mark: '1', length: 9000, width: 3000 }
    expect(bedWords(bed)).toBe('1: 9000 × 3000 mm, make-up below not given')
    const layers = [{ thickness: 8, conductivity: 50, heatCapacity: 3600 }]
    const power = { watts: 280, from: 4, until: 10 }
    expect(bedWords({ ...bed, heated: true, roofed: true, under: { layers, film: 11, power } })).toBe(
      '1: 9000 × 3000 mm, heated, under a roof, 8 mm of 50 W/mK below, film 11 W/m²K, 280 W/m² from 4 to 10 h after mixing',
    )
    expect(bedWords({ ...bed, under: { temperature: 40 } })).toContain('held at 40 °C')
  })

  it('tell what a cover keeps in and which is usual', () => {
    const foam = { mark: 'foam', thickness: 20, conductivity: 0.04 }
    expect(coverWords(foam, { cover: 'foam', off: '05:30' })).toBe(
      'foam: 0.5 m²K/W, the usual one, off at 05:30',
    )
    expect(coverWords({ mark: 'sheet', resistance: 0.08 }, { cover: 'foam' })).toBe('sheet: 0.08 m²K/W')
  })
})
