import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decimalShown, numberOf } from './number-text.ts'

describe('a number as a list writes it', () => {
  it.each([
    ['1200', null, 1200],
    [' 12,5 ', null, 12.5],
    ['12.5', null, 12.5],
    ['−12.5', null, -12.5],
    ['.5', null, 0.5],
    ['0,125', null, 0.125],
    ['2333.333', null, 2333.333],
    ['1.234,5', null, 1234.5],
    ['1,234.5', null, 1234.5],
    ['1.234.500', null, 1234500],
    ['1 200', null, 1200],
    ['12 345,5', null, 12345.5],
    ['1,200', 'point', 1200],
    ['1,200', 'comma', 1.2],
    ['1.200', 'comma', 1200],
    ['1.200', 'point', 1.2],
  ] as const)('%s with decimal %s is %d', (text, decimal, value) => {
    expect(numberOf(text, decimal)).toBe(value)
  })

  it('1,200 without a decimal sign known can be read in two ways', () => {
    expect(numberOf('1,200', null)).toBe('two-ways')
    expect(numberOf('12.345', null)).toBe('two-ways')
  })

  it.each([
    '',
    'abc',
    '12 mm',
    '1e3',
    '1,2,3',
    '12,5.5,1',
    '--1',
    '12a',
    '1.2.3',
    '#5',
    'NaN',
    'Infinity',
    '=1+1',
  ])('%s is none', (text) => {
    expect(numberOf(text, null)).toBe('none')
  })

  it('12,5 is none where the sign is a point', () => {
    expect(numberOf('12,5', 'point')).toBe('none')
    expect(numberOf('12.5', 'comma')).toBe('none')
    expect(numberOf('1,234.5', 'comma')).toBe('none')
  })

  it('reads back what a machine writes, by either sign', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 3 }), (whole, digits) => {
        const text = (whole / 1000).toFixed(digits)
        expect(numberOf(text, 'point')).toBe(Number(text))
        expect(numberOf(text.replace('.', ','), 'comma')).toBe(Number(text))
      }),
    )
  })
})

describe('the decimal sign that a list shows', () => {
  it.each([
    [['12,5', '1200'], 'comma'],
    [['12.5', '1,200'], 'point'],
    [['1.234,5'], 'comma'],
    [['1,200', '600'], null],
    [['12,5', '12.5'], null],
    [['abc', ''], null],
  ] as const)('%j: %s', (texts, sign) => {
    expect(decimalShown(texts)).toBe(sign)
  })
})
