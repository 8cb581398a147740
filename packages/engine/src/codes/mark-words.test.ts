import { describe, expect, it } from 'vitest'
import { codeFamily, type FamilyId } from './index.ts'
import { markWords } from './mark-words.ts'

function read(family: FamilyId, ...seen: string[]) {
  return codeFamily(family).steel.identify({ seen })
}

function grades(family: FamilyId, ...seen: string[]): string[] {
  return read(family, ...seen).candidates.map(({ grade }) => grade)
}

describe('words of a reading', () => {
  it('hyphens part words, a sign stays with its number, wide digits are digits', () => {
    expect(markWords(['5-17', '-3', '６０', 'Two lines', '…', '-'])).toEqual([
      '5',
      '17',
      '-3',
      '60',
      '2',
      'lines',
    ])
  })

  it.each([
    ['nz', 'not 500E'],
    ['nz', 'no 500E'],
    ['nz', '500E?'],
    ['au', 'none 500N'],
    ['eu', '3 or 4'],
    ['us', 'none 60'],
    ['us', 'N 5 S 60?'],
  ] as const)('%s %s: a doubt names no grade', (family, seen) => {
    expect(read(family, seen)).toMatchObject({
      candidates: [],
      verdict: 'unknown',
      unknown: [expect.stringMatching(/^marks/)],
    })
  })
})

describe('readings that once passed for a grade and are none', () => {
  it.each([
    ['nz', '1500E', /1500E/],
    ['nz', '3500E', /3500E/],
    ['nz', '500E N', /^grade: N beside/],
    ['nz', '500EE', /500EE/],
    ['au', '500NL', /500NL/],
    ['au', '500E500N', /500E500N/],
    ['au', '500 N E', /^grade: E beside/],
    ['au', 'L', /a letter alone/],
  ] as const)('%s %s', (family, seen, gap) => {
    const { verdict, unknown } = read(family, seen)
    expect(verdict).toBe('unknown')
    expect(unknown.join('\n')).toMatch(new RegExp(gap.source, 'm'))
  })

  it('letters of the mill before the grade are no hindrance', () => {
    for (const seen of ['500E', 'PS 500E', 'PS500E', '5 0 0 E', 'E 500', '500-e']) {
      expect(read('nz', seen), seen).toMatchObject({ verdict: 'pass', candidates: [{ grade: '500E' }] })
    }
  })

  it.each([
    // A grade mark that is none is not "no grade mark", which would be grade 40.
    ['N 5 S 61', [], /61 is no grade mark/],
    ['N 5 S 6 0', [], /6 is no grade mark/],
    ['N 5 S 60.5', [], /60\.5 is no grade mark/],
    ['N 5 S -60', [], /-60 is no grade mark/],
    ['N 5 S 60 75', ['60', '75'], /marks differ/],
    ['N 99 S 60', ['60'], /^size: no bar number 99/m],
    ['S', ['40'], /^size/m],
    ['constructor', [], /^grade/m],
    ['N 5 constructor', [], /^grade/m],
    // ASTM A706 has no grade 40.
    ['N 5 W', [], /A706 has no grade 40/],
    ['N 5 W 75', ['75'], /A706 has no grade 75/],
    ['2 lines 60', ['60', '75'], /marks differ/],
    ['12 lines', [], /^lines: 1 to 4.*found 12/m],
    ['-1 lines', [], /^grade/m],
  ] as const)('us %s', (seen, candidates, gap) => {
    const found = read('us', seen)
    expect(found.verdict).toBe('unknown')
    expect(grades('us', seen)).toEqual(candidates)
    expect(found.unknown.join('\n')).toMatch(gap)
  })

  it.each([
    ['N 5 S 60', ['60']],
    ['No 5 S 60', ['60']],
    ['3 lines 80', ['80']],
    ['N 5 S', ['40']],
    ['N 5 S/W 60', ['60']],
  ] as const)('us %s is read', (seen, candidates) => {
    expect(read('us', seen).verdict).toBe('pass')
    expect(grades('us', seen)).toEqual(candidates)
  })

  it('S and W together are both standards', () => {
    for (const seen of ['N 5 S/W 60', 'N 5 SW 60', 'N 5 S W 60']) {
      expect(read('us', seen).candidates[0]?.process).toMatch(/A615 and .*A706/)
    }
  })

  it.each([
    ['5 thick 3', 'Origin: the United Kingdom, Ireland or Iceland, mill 3.', null],
    ['2 thick 5 ribs 1 thick 17 ribs', 'Origin: the United Kingdom, Ireland or Iceland, mill 17.', null],
    ['5 0', 'Origin: the United Kingdom, Ireland or Iceland.', /^mill: .*found 0/m],
    ['5 -3', 'Origin: the United Kingdom, Ireland or Iceland.', /^marks: not read: -3/m],
    ['B500A 5', 'Origin: the United Kingdom, Ireland or Iceland.', /^marks: not read: b500a/m],
    ['-5', undefined, /^ribs/m],
  ] as const)('eu %s', (seen, note, gap) => {
    const { notes, unknown } = read('eu', seen)
    expect(notes[0]).toBe(note)
    if (gap !== null) expect(unknown.join('\n')).toMatch(gap)
  })
})
