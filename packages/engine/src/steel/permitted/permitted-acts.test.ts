import { describe, expect, it } from 'vitest'
import { ACTS, type Act, codeFamily, FAMILIES, MADE_BY } from '../../codes/index.ts'
import { type PermittedInput, permittedActs } from './permitted-acts.ts'
import { strictest } from './strictest.ts'

const NZ: PermittedInput = {
  family: codeFamily('nz'),
  grade: '500E',
  process: 'micro-alloyed',
  diameter: 12,
  galvanised: false,
}

function ask(change: Partial<PermittedInput>, act: Act) {
  const found = permittedActs({ ...NZ, ...change }).acts.find((each) => each.act === act)
  if (found === undefined) throw new Error(`no answer for ${act}`)
  return found
}

const au = (change: Partial<PermittedInput>) => ({ family: codeFamily('au'), grade: '500N', ...change })
const eu = (change: Partial<PermittedInput>) => ({ family: codeFamily('eu'), grade: 'B500B', ...change })
const us = (change: Partial<PermittedInput>) => ({
  family: codeFamily('us'),
  grade: '60',
  process: 'hot rolled' as const,
  diameter: 12.7,
  ...change,
})

describe('what may be done with a bar', () => {
  it('HD12 500E is not straightened cold (NZS 3109:1997, restated in Practice Advisory 11)', () => {
    for (const process of ['micro-alloyed', 'quenched and tempered', 'hot rolled', 'unknown'] as const) {
      expect(ask({ process }, 'straighten')).toMatchObject({ answer: 'no' })
      expect(ask({ process }, 're-bend cold')).toMatchObject({ answer: 'no' })
    }
    expect(ask({ grade: '300E', process: 'unknown' }, 'straighten')).toMatchObject({
      answer: 'yes',
      conditions: [expect.stringMatching(/^Once/), expect.anything()],
    })
  })

  it('micro-alloyed 500E is welded in the shop, quenched is not; nothing is tack welded (PA 11; AS/NZS 1554.3 3.3.1)', () => {
    expect(ask({}, 'weld').answer).toBe('yes')
    expect(ask({ process: 'quenched and tempered' }, 'weld').answer).toBe('no')
    expect(ask({ process: 'unknown' }, 'weld').answer).toBe('no')
    for (const grade of ['300E', '500E']) {
      expect(ask({ grade, process: 'unknown' }, 'tack weld').answer).toBe('no')
    }
  })

  it('bending back hot: by procedure for alloyed, by maker and engineer for quenched; never galvanised', () => {
    expect(ask({}, 're-bend hot').conditions.join()).toMatch(/3\.3\.8.*no confirmed value/)
    expect(ask({ process: 'quenched and tempered' }, 're-bend hot').conditions.join()).toMatch(/maker/)
    for (const family of Object.values(FAMILIES)) {
      const grade = family.steel.grades[0]?.grade ?? ''
      const bar = { family, grade, process: 'unknown' as const, diameter: null, galvanised: true }
      expect(ask(bar, 'heat').answer, family.id).toBe('no')
      expect(ask(bar, 're-bend hot').answer, family.id).toBe('no')
    }
  })

  it('starters bent out: 300E to 16 mm in New Zealand (IB 79), 12 mm and 16 mm in the United Kingdom', () => {
    const starter = (change: Partial<PermittedInput>) => ask(change, 'bend out and back').answer
    expect(starter({ grade: '300E', process: 'unknown', diameter: 16 })).toBe('yes')
    expect(starter({ grade: '300E', process: 'unknown', diameter: 16.1 })).toBe('no')
    expect(starter({ grade: '300E', process: 'unknown', diameter: null })).toBe('unknown')
    expect(starter({})).toBe('no')
    expect([12, 12.1, 16, 16.1].map((diameter) => starter(eu({ diameter })))).toEqual([
      'yes',
      'engineer',
      'engineer',
      'no',
    ])
  })

  it('Australia bends back on larger pins to 24 mm; over it a road authority’s ban stands (AS 3600:2018 17.2.3)', () => {
    const back = (diameter: number) => ask(au({ diameter }), 're-bend cold')
    expect(back(16).conditions[0]).toMatch(/at least 4 bar/)
    expect(back(20).conditions[0]).toMatch(/at least 5 bar/)
    expect([16, 18, 20, 24, 24.1, 28].map((diameter) => back(diameter).answer)).toEqual([
      'yes',
      'unknown',
      'yes',
      'yes',
      'no',
      'no',
    ])
    expect(ask(au({ grade: '500L', process: 'cold worked' }), 're-bend cold').answer).toBe('no')
    expect(ask(au({ grade: '500L', process: 'cold worked' }), 'weld').answer).toBe('no')
  })

  it('A706 is welded; A615 and a bar that does not say which are for the engineer (AWS D1.4)', () => {
    expect(ask(us({ standard: 'A706' }), 'weld').answer).toBe('yes')
    expect(ask(us({ standard: 'A615' }), 'weld').answer).toBe('engineer')
    expect(ask(us({}), 'weld')).toMatchObject({
      answer: 'engineer',
      conditions: [expect.stringMatching(/A706/)],
    })
  })

  it('bending once names the least inside diameter of the bar and the coldest temperature', () => {
    expect(ask({ diameter: 16 }, 'bend once').conditions).toEqual([
      'As main bar on at least 80 mm inside diameter.',
      'As deformed stirrup or tie on at least 64 mm inside diameter.',
      expect.stringMatching(/crack/),
      'Bar not colder than 5 °C.',
    ])
    expect(ask({ diameter: 25 }, 'bend once').conditions[1]).toMatch(/not known.*no row for a 25 mm stirrup/)
    expect(ask({ diameter: 50 }, 'bend once').answer).toBe('unknown')
    expect(ask(us({}), 'bend once').conditions[0]).toBe('As main bar on at least 76.2 mm inside diameter.')
    expect(ask(eu({ galvanised: true }), 'bend once').answer).toBe('unknown')
    expect(ask(eu({ galvanised: true, diameter: null }), 'bend once').answer).toBe('unknown')
    expect(ask({ diameter: null }, 'bend once').answer).toBe('yes')
  })

  it('a bar whose process is not known gets the strictest answer, and is told so', () => {
    const found = permittedActs({ ...NZ, process: 'unknown' })
    expect(found.notes).toEqual([
      'Process not known: each answer is the strictest of micro-alloyed, quenched and tempered.',
    ])
    expect(ask({ process: 'unknown' }, 'weld').conditions[0]).toBe(
      'The make of the bar is not known: the answer for quenched and tempered bar, the strictest, is taken.',
    )
    expect(permittedActs({ ...NZ, process: 'hot rolled' }).acts).toEqual(found.acts)
    expect(ask({ galvanised: null }, 'heat').answer).toBe('no')
  })
})

const RANK = { yes: 0, engineer: 1, unknown: 2, no: 3 } as const

describe('every bar of every family', () => {
  const bars = Object.values(FAMILIES).flatMap((family) =>
    family.steel.grades.map(({ grade }) => [family.id, grade] as const),
  )

  it.each(bars)('%s %s: process unknown is never milder than any process that it may have', (id, grade) => {
    const family = codeFamily(id)
    for (const diameter of [null, 6, 9.525, 12, 16, 19.05, 20, 24, 25.4, 28.65, 32, 40]) {
      for (const galvanised of [false, true]) {
        const bar = { family, grade, diameter, galvanised }
        const unsure = permittedActs({ ...bar, process: 'unknown' })
        for (const process of MADE_BY) {
          const sure = permittedActs({ ...bar, process })
          expect(sure.acts.map(({ act }) => act)).toEqual(ACTS)
          if (sure.unknown.length > 0) continue
          for (const [index, { answer }] of sure.acts.entries()) {
            expect(RANK[unsure.acts[index]?.answer ?? 'yes']).toBeGreaterThanOrEqual(RANK[answer])
          }
        }
      }
    }
  })

  it.each(bars)('%s %s: every answer has conditions, and a rule with its source', (id, grade) => {
    const { acts, unknown } = permittedActs({
      family: codeFamily(id),
      grade,
      process: 'unknown',
      diameter: null,
      galvanised: false,
    })
    expect(unknown).toEqual([])
    for (const { act, conditions, answer, source } of acts) {
      expect(conditions.length, act).toBeGreaterThan(0)
      if (answer !== 'unknown') expect(source?.standard, act).toBeTruthy()
    }
  })
})

describe('bars that cannot be', () => {
  it.each([
    [{ grade: '500N' }, /^grade: 500N is none of 300E, 500E/],
    [{ grade: '__proto__' }, /^grade/],
    [{ process: 'cold worked' }, /^process: no confirmed value.*500E.*cold worked/],
    [{ grade: '300E', process: 'quenched and tempered' }, /^process/],
    [{ diameter: Number.NaN }, /^diameter/],
    [{ diameter: -12 }, /^diameter/],
    [{ standard: 'A706' }, /^standard: A706/],
    [us({ grade: '40', standard: 'A706' }), /^standard: A706 has no grade 40/],
    [us({ diameter: 14 }), /^diameter: no US bar/],
  ] as const)('%j: nothing is known, and the field is named', (change, gap) => {
    const { acts, unknown } = permittedActs({ ...NZ, ...(change as Partial<PermittedInput>) })
    expect(unknown[0]).toMatch(gap)
    expect(new Set(acts.map(({ answer }) => answer))).toEqual(new Set(['unknown']))
  })
})

describe('the strictest of several answers', () => {
  const answer = (word: 'yes' | 'no' | 'engineer' | 'unknown', condition: string) => ({
    make: condition,
    answer: { act: 'weld' as const, answer: word, conditions: [condition], source: null },
  })

  it('a ban outranks a gap, a gap outranks the engineer', () => {
    const of = (...words: ('yes' | 'no' | 'engineer' | 'unknown')[]) =>
      strictest(words.map((word) => answer(word, word))).answer
    expect(of('yes', 'engineer')).toBe('engineer')
    expect(of('unknown', 'engineer', 'yes')).toBe('unknown')
    expect(of('unknown', 'no', 'yes')).toBe('no')
  })

  it('equal answers keep the conditions of both', () => {
    expect(strictest([answer('yes', 'a'), answer('yes', 'b')]).conditions).toEqual(['a', 'b'])
  })
})
