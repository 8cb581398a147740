import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const NZ = ['bar-may', '--family', 'nz', '--grade', '500E', '--process']

interface Answered {
  readonly act: string
  readonly answer: string
  readonly conditions: readonly string[]
  readonly source: { readonly standard: string } | null
}

describe('castwright bar-may', () => {
  it('500E of unknown process takes the strictest answer: no cold straightening, no weld', async () => {
    const { code, json } = await cli([...NZ, 'unknown', '--diameter', '16', '--json'])
    expect(code).toBe(0)
    const acts = json().acts as Answered[]
    expect(acts.map(({ act, answer }) => `${act}: ${answer}`)).toEqual([
      'bend once: yes',
      'straighten: no',
      're-bend cold: no',
      're-bend hot: engineer',
      'bend out and back: no',
      'weld: no',
      'tack weld: no',
      'thread: engineer',
      'galvanise: engineer',
      'heat: unknown',
    ])
    expect(acts[1]?.source?.standard).toBe('NZS 3109:1997')
    expect((json().notes as string[])[0]).toMatch(/strictest of micro-alloyed, quenched and tempered/)
  })

  it('micro-alloyed 500E is welded in the shop; the table says the conditions', async () => {
    const { out, code } = await cli([...NZ, 'micro-alloyed'])
    expect(code).toBe(0)
    expect(out).toMatch(/^weld +yes +Lap or butt welds in the shop/m)
    expect(out).toMatch(/Bar not colder than 5 °C/)
  })

  it('a process that the grade does not come from is not known: exit status 1', async () => {
    const { code, json } = await cli([...NZ, 'cold worked', '--json'])
    expect(code).toBe(1)
    expect(json().unknown).toEqual([expect.stringMatching(/^process/)])
  })

  it('us bars say their standard', async () => {
    const weld = async (...more: string[]) => {
      const line = 'bar-may --family us --grade 60 --process unknown --json'.split(' ')
      const { json } = await cli([...line, ...more])
      return (json().acts as Answered[]).find(({ act }) => act === 'weld')?.answer
    }
    expect(await weld('--standard', 'A706')).toBe('yes')
    expect(await weld()).toBe('engineer')
  })

  it('--explain lists the source of each answer', async () => {
    const { out } = await cli([...NZ, 'unknown', '--explain'])
    expect(out).toMatch(/AS\/NZS 1554\.3, edition not noted 3\.3\.1 \(seen\)/)
  })

  it.each([
    ['--grade 500E --process unknown', 'family'],
    ['--family xx --grade 500E --process unknown', 'family'],
    ['--family nz --process unknown', 'grade'],
    ['--family nz --grade 500N --process unknown', 'grade'],
    ['--family nz --grade 500E', 'process'],
    ['--family nz --grade 500E --process forged', 'process'],
    ['--family nz --grade 500E --process unknown --diameter 0', 'diameter'],
    ['--family nz --grade 500E --process unknown --diameter NaN', 'diameter'],
    ['--family nz --grade 500E --process unknown --standard A706', 'standard'],
    ['--family us --grade 60 --process unknown --standard A36', 'standard'],
  ])('refused: %s', async (line, field) => {
    const { code, err, out } = await cli(['bar-may', ...line.split(' '), '--json'])
    expect(code).toBe(2)
    expect(err).toContain(`--${field}`)
    expect(err).toMatch(/found .*expected/)
    expect(out).toBe('')
  })
})
