import { describe, expect, it } from 'vitest'
import { readTemperatureLog } from './temperature-log.ts'

const GOOD = 'hours,celsius\n0,18\n1,18.5\n2.5,21\n'

describe('a temperature log', () => {
  it('is read row by row', () => {
    expect(readTemperatureLog(GOOD)).toEqual([
      [0, 18],
      [1, 18.5],
      [2.5, 21],
    ])
  })

  it.each([
    ['a byte-order mark', `\uFEFF${GOOD}`],
    ['CRLF', GOOD.replaceAll('\n', '\r\n')],
    ['a lone CR', GOOD.replaceAll('\n', '\r')],
    ['no end of line at the end', GOOD.trimEnd()],
    ['empty rows', GOOD.replaceAll('\n', '\n\n')],
    ['quotes and spaces', '"hours", "celsius"\n"0" , "18"\n1,18.5\n2.5,21'],
  ])('may have %s', (_, text) => {
    expect(readTemperatureLog(text)).toEqual(readTemperatureLog(GOOD))
  })

  it.each([
    ['an empty file', '', /row 1: found nothing, expected the header hours,celsius/],
    ['no header', '0,18\n1,19', /row 1: found "0,18"/],
    ['other columns', 'hours,fahrenheit\n0,64\n1,65', /row 1.*expected the header/],
    ['a header alone', 'hours,celsius\n', /rows: found 0 readings, expected at least two/],
    ['one reading', 'hours,celsius\n0,18', /rows: found 1 readings/],
    ['a word', 'hours,celsius\n0,18\n1,warm', /row 3: celsius: found warm/],
    ['an empty field', 'hours,celsius\n0,18\n1,', /row 3: celsius: found nothing/],
    ['hexadecimal', 'hours,celsius\n0,18\n1,0x12', /row 3: celsius: found 0x12/],
    ['Infinity', 'hours,celsius\n0,18\nInfinity,19', /row 3: hours: found Infinity/],
    ['a negative hour', 'hours,celsius\n-1,18\n1,19', /row 2: hours: found -1/],
    [
      'a broken sensor',
      'hours,celsius\n0,18\n1,-999',
      /row 3: celsius: found -999, expected a temperature from -60/,
    ],
    ['a hot sensor', 'hours,celsius\n0,18\n1,150.1', /row 3: celsius: found 150.1/],
    [
      'the same hour twice',
      'hours,celsius\n0,18\n1,19\n1,20',
      /row 4: hours: found 1, expected a time after 1 h/,
    ],
    ['time running back', 'hours,celsius\n0,18\n2,19\n1,20', /row 4: hours: found 1/],
    ['three fields', 'hours,celsius\n0,18\n1,19,x', /row 3: found "1,19,x", expected two fields/],
    ['a decimal comma', 'hours,celsius\n0,18\n1,18,5', /row 3: .*expected two fields/],
    ['semicolons', 'hours;celsius\n0;18', /row 1/],
  ])('is refused with %s', (_, text, message) => {
    expect(() => readTemperatureLog(text, 'night.csv')).toThrow(message)
    expect(() => readTemperatureLog(text, 'night.csv')).toThrow(/^night\.csv: /)
  })

  it('names every row at fault, counted as an editor counts them', () => {
    expect(() => readTemperatureLog('hours,celsius\n\n0,a\n\n1,b')).toThrow(
      /row 3: celsius.*\n.*row 5: celsius/,
    )
  })
})
