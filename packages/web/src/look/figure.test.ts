import { describe, expect, it } from 'vitest'
import { readNumber } from './field.tsx'
import { figure, fixed, massText, sizeText, withUnit } from './figure.ts'

describe('a number for reading', () => {
  it.each([
    [0, '0'],
    [13.1, '13.1'],
    [1.46281, '1.463'],
    [-3.5, '−3.5'],
    [123456.7, '123457'],
    [0.0001234, '0.0001234'],
    [null, 'not known'],
    [Number.NaN, 'not known'],
    [Number.POSITIVE_INFINITY, 'not known'],
    ['80 to 120', '80 to 120'],
  ])('%s reads %s', (value, text) => {
    expect(figure(value)).toBe(text)
  })

  it('stands beside its unit, and has none when it is not known', () => {
    expect(withUnit(15, 'MPa')).toBe('15 MPa')
    expect(withUnit(null, 'MPa')).toBe('not known')
    expect(fixed(2.345, 1)).toBe('2.3')
  })

  it('a mass is rounded up, as a hook feels it', () => {
    expect(massText(5801)).toBe('5.81 t')
    expect(massText(5800)).toBe('5.80 t')
    expect(massText(999.2)).toBe('1000 kg')
    expect(massText(null)).toBe('not known')
  })

  it('a size is told in metres with the thickness in mm', () => {
    expect(sizeText(6000, 3250, 150)).toBe('6.0 × 3.25, 150 mm')
  })
})

describe('a typed number', () => {
  it.each([
    ['12', 12],
    [' 12,5 ', 12.5],
    ['−3', -3],
    ['.5', 0.5],
    ['', null],
    ['12 mm', null],
    ['1e5', null],
    ['1.2.3', null],
    ['Infinity', null],
  ])('%j is %s', (text, value) => {
    expect(readNumber(text)).toBe(value)
  })
})
