import { describe, expect, it } from 'vitest'
import { shown } from './shown.ts'

describe('a number as it is shown', () => {
  it.each([
    [6750.4, 'kg', '6750 kg'],
    [13.14, 'MPa', '13.1 MPa'],
    [1.207, 'MPa', '1.21 MPa'],
    [1.2, 'MPa', '1.2 MPa'],
    [0.3749, 'mm', '0.375 mm'],
    [0.0004, '', '0.0004'],
    [-3.2, '°C', '−3.2 °C'],
    [0, 'm²', '0 m²'],
    [30, 'mm', '30 mm'],
    [null, 'mm', 'not known'],
    [Number.NaN, 'mm', 'not known'],
  ])('%s %s is %s', (value, unit, text) => {
    expect(shown(value, unit)).toBe(text)
  })
})
