import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { InputError } from '../../working/issue.ts'
import { type Bundle, parseBundle, sameHeat } from './bundle.ts'
import { EXAMPLE_BUNDLE } from './example-bundle.ts'
import { bundleFindings } from './findings.ts'

const nz = codeFamily('nz').steel
const eu = codeFamily('eu').steel
const us = codeFamily('us').steel

function found(change: Partial<Bundle>, rules = nz) {
  return bundleFindings({ bundle: { ...EXAMPLE_BUNDLE, ...change }, rules })
}

function finding(change: Partial<Bundle>, id: string, rules = nz) {
  const one = found(change, rules).findings.find((each) => each.id === id)
  if (one === undefined) throw new Error(`no finding ${id}`)
  return one
}

const EU_BUNDLE: Bundle = {
  ...EXAMPLE_BUNDLE,
  ordered: { diameter: 12, grade: 'B500B', length: 12_000 },
  docket: null,
  seen: ['5', '2', '1'],
  certificate: { number: 'C-9', heat: 'H4022', grade: 'B500B', process: 'quenched and tempered' },
}

describe('a bundle as it came', () => {
  it('is accepted where the bar, its mass and its papers agree with the order', () => {
    const { outcome, because, next, verdict } = found({})
    expect({ outcome, because, next, verdict }).toEqual({
      outcome: 'accept',
      because: [],
      next: [],
      verdict: 'pass',
    })
  })

  it('is kept apart where the bar is of another grade, though every paper says the ordered one', () => {
    const { outcome, because } = found({ seen: ['300E'] })
    expect(outcome).toBe('quarantine')
    expect(because[0]).toContain('whatever the papers say')
  })

  it('is kept apart where a US bar says another size than the one ordered', () => {
    const us60: Partial<Bundle> = { ordered: { diameter: 15.875, grade: '60' }, docket: null }
    const size = (seen: string[]) =>
      bundleFindings({ bundle: { ...EXAMPLE_BUNDLE, ...us60, seen }, rules: us }).findings.find(
        ({ id }) => id === 'rolled-size',
      )?.verdict
    expect(size(['H', '6', 'S', '60'])).toBe('fail')
    expect(size(['H', '5', 'S', '60'])).toBe('pass')
    expect(size(['H', '16', 'S', '4'])).toBe('pass')
    expect(size(['60'])).toBeUndefined()
    expect(found({ ...us60, seen: ['H', '6', 'S', '60'] }, us).outcome).toBe('quarantine')
  })

  it('takes 10 on a US bar as No. 10 or as soft-metric No. 3: its mass tells', () => {
    const ten = (diameter: number) =>
      finding(
        { ordered: { diameter, grade: '60' }, docket: null, seen: ['H', '10', 'S', '60'] },
        'rolled-size',
        us,
      )
    expect([9.525, 32.258, 12.7].map((diameter) => ten(diameter).verdict)).toEqual(['pass', 'pass', 'fail'])
    expect(ten(9.525).found).toBe('9.5 or 32.3 mm')
  })

  it('judges tests of a US bar by the standard that its letter names', () => {
    const tested = (letter: string, yieldStrength: number, strength: number, grade = '60') =>
      finding(
        {
          ordered: { diameter: 15.875, grade },
          docket: null,
          certificate: null,
          seen: ['H', '5', letter, grade],
          tests: [{ reference: 'L-1', yield: yieldStrength, strength, elongation: 15 }],
        },
        'proof',
        us,
      ).verdict
    // A615 asks for 620 MPa; A706 for 552 MPa and 1.25 times the yield, at most 538 MPa; a bar of both for all of it.
    expect([tested('S', 430, 580), tested('W', 430, 580), tested('SW', 430, 580)]).toEqual([
      'fail',
      'pass',
      'fail',
    ])
    expect([tested('S', 560, 650), tested('W', 560, 650), tested('SW', 500, 650)]).toEqual([
      'pass',
      'fail',
      'pass',
    ])
    expect(tested('R', 430, 650)).toBe('unknown')
    expect([tested('W', 580, 740, '80'), tested('S', 580, 740, '80')]).toEqual(['pass', 'unknown'])
  })

  it('asks where bars of two grades lie in it, though the certificate is of the ordered one', () => {
    const mixed = found({ seen: ['500E', '300E'] })
    expect(mixed.outcome).toBe('ask')
    expect(mixed.next.join()).toContain('fits more than one')
    const us60 = {
      ordered: { diameter: 15.875, grade: '60' },
      docket: null,
      weighed: [{ length: 1000, mass: 1.55 }],
    }
    const certificate = { number: 'C', heat: 'H4022', grade: '60' }
    expect(finding({ ...us60, certificate, seen: ['H', '5', 'S', '60', '40'] }, 'grade', us).verdict).toBe(
      'unknown',
    )
  })

  it('takes the class of an EN bar from the certificate only where the marks say nothing else', () => {
    expect(found({ ...EU_BUNDLE, seen: ['5', '2', '1', '300E'] }, eu).outcome).toBe('ask')
    expect(found({ ...EU_BUNDLE, seen: ['5'] }, eu).next.join()).toContain('mill')
    const three = { ordered: { diameter: 15.875, grade: '80' }, seen: ['H', '5', 'S', '3 lines'] }
    const certificate = { number: 'C', heat: 'H4022', grade: '80' }
    expect(finding({ ...three, certificate }, 'grade', us).verdict).toBe('pass')
  })

  it('is kept apart where nothing is rolled on the bar', () => {
    expect(found({ seen: ['none'] }).outcome).toBe('quarantine')
  })

  it('asks where nobody has read the bar, whatever the docket says', () => {
    const { outcome, next } = found({ seen: undefined })
    expect(outcome).toBe('ask')
    expect(next.join()).toContain('seen')
  })

  it('asks where marks were read on fewer than three bars', () => {
    expect(found({ barsRead: 2 }).outcome).toBe('ask')
    expect(found({ barsRead: 2, counted: 2 }).outcome).toBe('accept')
  })

  it('is kept apart where it weighs like another size, and says which', () => {
    const size = finding({ weighed: [{ length: 1000, mass: 0.617 }] }, 'size')
    expect(size.verdict).toBe('fail')
    expect(size.note).toContain('10.0 mm')
  })

  it('holds the mass at both edges of 4.5 %', () => {
    const nominal = (Math.PI * 36 * 7850) / 1e6
    for (const [part, verdict] of [
      [0.9551, 'pass'],
      [0.9549, 'fail'],
      [1.0449, 'pass'],
      [1.0451, 'fail'],
    ] as const) {
      expect(finding({ weighed: [{ length: 1000, mass: nominal * part }] }, 'size').verdict).toBe(verdict)
    }
  })

  it('does not judge a piece under half a metre, and a US bar that is heavy enough to be the next size fails', () => {
    expect(finding({ weighed: [{ length: 499, mass: 0.44 }] }, 'size').verdict).toBe('unknown')
    const ordered = { diameter: 15.875, grade: '60' }
    expect(finding({ ordered, weighed: [{ length: 1000, mass: 2.2 }] }, 'size', us).verdict).toBe('fail')
    expect(finding({ ordered, weighed: [{ length: 1000, mass: 1.6 }] }, 'size', us).verdict).toBe('pass')
    expect(finding({ ordered, weighed: [{ length: 1000, mass: 1.45 }] }, 'size', us).verdict).toBe('fail')
  })

  it('takes lengths by the row of the length ordered, and asks about a short bar', () => {
    expect(finding({ lengths: [5960] }, 'length').verdict).toBe('pass')
    expect(finding({ lengths: [5959] }, 'length').verdict).toBe('fail')
    expect(finding({ lengths: [6001] }, 'length').verdict).toBe('fail')
    expect(found({ lengths: [5900] }).outcome).toBe('ask')
    const twelve = { ...EXAMPLE_BUNDLE.ordered, length: 12_000 }
    expect(finding({ ordered: twelve, lengths: [12_060] }, 'length').verdict).toBe('pass')
    expect(finding({ ordered: { ...twelve, length: 11_999 }, lengths: [12_040] }, 'length').verdict).toBe(
      'fail',
    )
  })

  it('has no confirmed length tolerance in eu: told, and it keeps nothing apart', () => {
    const length = finding({ ...EU_BUNDLE }, 'length', eu)
    expect(length.verdict).toBe('unknown')
    expect(length.unknown.join()).toContain('no confirmed tolerance')
  })

  it('reads the class of an EN bar from a certificate of its heat, never from the docket', () => {
    expect(found(EU_BUNDLE, eu).outcome).toBe('accept')
    const docket = { number: '1', grade: 'B500B', diameter: 12 }
    const without = found({ ...EU_BUNDLE, certificate: null, docket }, eu)
    expect(without.outcome).toBe('ask')
    const other = found({ ...EU_BUNDLE, certificate: { number: 'C', heat: 'H4022', grade: 'B500A' } }, eu)
    expect(other.outcome).toBe('quarantine')
  })

  it('is kept apart where the certificate is of another heat than the tag', () => {
    expect(found({ tag: { heat: 'H4023' } }).outcome).toBe('quarantine')
  })

  it('asks where nothing on the bars ties them to the heat of the certificate', () => {
    for (const tag of [undefined, null, { mill: 'M' }, { heat: '-' }, { heat: 'N/A' }]) {
      const { outcome, next } = found({ tag })
      expect(outcome).toBe('ask')
      expect(next.join()).toContain('tag.heat')
    }
    const docket = { number: '1', diameter: 12, grade: '500E', heat: 'H4022' }
    expect(found({ tag: null, docket }).outcome).toBe('accept')
    const dash = { ...EXAMPLE_BUNDLE.certificate, number: 'C', heat: '—' }
    expect(found({ tag: { heat: '.' }, certificate: dash }).next.join()).toMatch(/heat.*certificate.heat/)
  })

  it('asks about damage that cleaning may mend, and keeps apart what it cannot', () => {
    expect(found({ surface: ['loose rust'] }).outcome).toBe('ask')
    expect(found({ surface: ['light rust', 'kinked'] }).outcome).toBe('quarantine')
    expect(found({ surface: [] }).outcome).toBe('ask')
  })

  it('asks for a grade or a size of another place', () => {
    expect(
      found({ ordered: { diameter: 24, grade: '500E' }, weighed: [{ length: 1000, mass: 3.551 }] }).outcome,
    ).not.toBe('accept')
    expect(finding({ ordered: { diameter: 24, grade: '500E' } }, 'order').unknown.join()).toContain('24 mm')
  })
})

describe('a bundle without a docket', () => {
  const BARE: Partial<Bundle> = { docket: null, tag: null, certificate: null }

  it('is not refused for it: bar and certificate decide', () => {
    expect(found({ docket: null }).outcome).toBe('accept')
  })

  it('asks for the heat and for proof where no paper came at all, and names both ways to it', () => {
    const { outcome, next } = found(BARE)
    expect(outcome).toBe('ask')
    expect(next.join()).toMatch(/heat.*certificate.*tests/)
  })

  it('takes tests of samples in place of the certificate and still asks for the heat', () => {
    const tests = [{ reference: 'L-1', yield: 540, strength: 650, uniform: 11 }]
    const { outcome, findings } = found({ ...BARE, tests })
    expect(findings.find(({ id }) => id === 'proof')?.verdict).toBe('pass')
    expect(outcome).toBe('ask')
  })

  it('is kept apart by a test out of the grade’s limits, even with a certificate', () => {
    const test = { reference: 'L-1', yield: 540, strength: 650, uniform: 11 }
    expect(found({ tests: [{ ...test, yield: 499 }] }).outcome).toBe('quarantine')
    expect(found({ tests: [{ ...test, yield: 601, strength: 700 }] }).outcome).toBe('quarantine')
    expect(found({ tests: [{ ...test, strength: 620 }] }).outcome).toBe('quarantine')
    expect(found({ tests: [{ ...test, uniform: 9.9 }] }).outcome).toBe('quarantine')
    expect(found({ ...BARE, tests: [{ ...test, uniform: undefined }] }).next.join()).toContain('uniform')
  })
})

describe('what comes in', () => {
  it('is refused by field', () => {
    const bad = { ...EXAMPLE_BUNDLE, weighed: [{ length: 0, mass: -1 }], surface: ['shiny'] }
    expect(() => parseBundle(bad, 'b.json')).toThrow(InputError)
    try {
      parseBundle(bad, 'b.json')
    } catch (error) {
      const paths = (error as InputError).issues.map(({ path }) => path)
      expect(paths).toEqual(expect.arrayContaining(['weighed[0].length', 'weighed[0].mass', 'surface[0]']))
    }
  })

  it('takes heat numbers as the same however clerks write them', () => {
    expect(sameHeat('h-40 22', 'H4022')).toBe(true)
    expect(sameHeat('H4022', 'H4023')).toBe(false)
  })

  it('never accepts a bundle of which a weighing part is missing', () => {
    const weighing = ['seen', 'barsRead', 'weighed', 'surface'] as const
    fc.assert(
      fc.property(fc.subarray([...weighing], { minLength: 1 }), (left) => {
        const bundle = { ...EXAMPLE_BUNDLE }
        for (const field of left) delete bundle[field]
        expect(bundleFindings({ bundle, rules: nz }).outcome).not.toBe('accept')
      }),
    )
  })
})
