import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

/** What people type for a number, and what no number is. */
const NUMBERS = [
  '0', '-0', '-1', '-16', '0.0001', '.5', '16.', '+16', '16 ', '1e2', '1e9', '1e308', '1e309', '1e-320', 'NaN', 'Infinity',
  '-Infinity', '', ' ', '16mm', '16 mm', '1,6', '1.6.2', '0x10', '1_000', '１６', '½', '5/8', '#5', '16-17', '16..17', '1e', 'e1', '+', '--',
  'null', 'undefined', 'true', '"16"', '9'.repeat(400), '16;17', '\u0000', '٣',
] // biome-ignore format: a list to be read across

const WORDS = ['', ' ', 'Main', 'mainn', 'main ', '__proto__', 'constructor', 'toString', '500e', '500', 'B500', '60.0', 'null', '500E ', '-1', '--', '500 E', 'stirrup,main', 'ＭＡＩＮ', 'nz,au'] // biome-ignore format: a list to be read across

interface Line {
  readonly verb: string
  readonly good: Readonly<Record<string, string>>
  readonly numbers: readonly string[]
  readonly words: readonly string[]
  /** Options whose words name other options in their message. */
  readonly names?: Readonly<Record<string, string>>
}

const LINES: readonly Line[] = [
  {
    verb: 'bend',
    good: { diameter: '16', grade: '500E', role: 'main', inside: '80', temperature: '12', code: 'nz' },
    numbers: ['diameter', 'inside', 'temperature'],
    words: ['grade', 'role', 'code'],
  },
  {
    verb: 'bend',
    good: { diameter: '12.7', grade: '60', role: 'stirrup', inside: '51', code: 'us' },
    numbers: ['diameter', 'inside'],
    words: ['grade', 'role'],
  },
  ...(['nz', 'au', 'eu', 'us'] as const).map((code) => ({
    verb: 'lap',
    good: {
      diameter: code === 'us' ? '12.7' : '12',
      yield: code === 'us' ? '420' : '500',
      concrete: '30',
      cover: '30',
      gap: '150',
      below: '100',
      share: '100',
      apart: '0',
      bond: 'good',
      code,
    },
    numbers: ['diameter', 'yield', 'concrete', 'cover', 'gap', 'below', 'share', 'apart'],
    words: ['bond', 'code'],
  })),
  {
    verb: 'cutlength',
    good: { diameter: '12', inside: '48', legs: '600,400', turns: '90' },
    numbers: ['diameter', 'inside', 'legs', 'turns'],
    words: [],
  },
  {
    verb: 'bar-may',
    good: { family: 'au', grade: '500N', process: 'unknown', diameter: '16' },
    numbers: ['diameter'],
    words: ['family', 'grade', 'process'],
  },
]

const CASES = LINES.flatMap(({ verb, good, numbers, words }) =>
  [...numbers, ...words].map(
    (field) => [verb, good.code ?? '', field, good, numbers.includes(field)] as const,
  ),
)

function lineOf(verb: string, options: Readonly<Record<string, string>>): string[] {
  const words = Object.entries(options).map(([name, value]) => `--${name}=${value}`)
  return [verb, ...words, '--json', '--explain']
}

describe('odd input is refused by name or not known by name', () => {
  it.each(CASES)('%s %s --%s', async (verb, _, field, good, numeric) => {
    for (const odd of numeric ? NUMBERS : WORDS) {
      const { code, out, err } = await cli(lineOf(verb, { ...good, [field]: odd }))
      const words = `${field} ${JSON.stringify(odd.slice(0, 20))}`
      expect([0, 1, 2], words).toContain(code)
      if (code === 2) {
        expect(out, words).toBe('')
        // A leg that is too short for its bend is named where diameter or inside is too large.
        expect(err, words).toMatch(new RegExp(`--(${field}|legs)|${field}`))
        expect(err, words).toMatch(/found .*expected/s)
        expect(err, words).not.toMatch(/expected.*(NaN|Infinity)/)
        continue
      }
      expect(out, words).not.toMatch(/NaN|Infinity/)
      const json = JSON.parse(out) as { verdict?: string; unknown?: string[] }
      if (code === 1) expect(json.verdict === 'fail' || (json.unknown ?? []).length > 0, words).toBe(true)
      // What is not a plain number or a word of the list never passes.
      if (numeric) expect(Number.isFinite(Number(odd.trim().replace(/\.$/, ''))), words).toBe(true)
      else expect(Object.values(good), words).toContain(odd)
    }
  })
})

describe('faults once met', () => {
  const run = async (line: string) => {
    const { code, out, err } = await cli([...line.split(' '), '--json'])
    return { code, err, json: out === '' ? null : (JSON.parse(out) as Record<string, unknown>) }
  }

  it('a bar thinner than any wire passed on any pin', async () => {
    for (const line of [
      'bend --diameter 0.0001 --grade 500N --role main --inside 80 --code au',
      'bend --diameter 3.9 --grade B500B --role main --inside 80 --code eu',
    ]) {
      expect((await run(line)).json).toMatchObject({
        limit: null,
        verdict: 'unknown',
        unknown: [expect.stringMatching(/^diameter: no bar under 4 mm/)],
      })
    }
    const lap = 'lap --yield 500 --concrete 30 --cover 30 --gap 150 --code eu --diameter'
    expect((await run(`${lap} 0.0001`)).json).toMatchObject({ length: null, development: null })
    expect((await run(`${lap} 4`)).code).toBe(0)
  })

  it('a bar at red heat passed as not too cold', async () => {
    const bend = 'bend --diameter 16 --grade 500E --role main --inside 80 --code nz --temperature'
    expect((await run(`${bend} 100`)).json).toMatchObject({ verdict: 'pass' })
    expect((await run(`${bend} 101`)).json).toMatchObject({
      verdict: 'unknown',
      unknown: [expect.stringMatching(/^temperature/)],
    })
  })

  it('an inside diameter of a light year passed, and legs without end were a defect', async () => {
    const bend = 'bend --diameter 16 --grade 500E --role main --code nz --inside'
    expect((await run(`${bend} 1e308`)).err).toMatch(/--inside.*at most 100000/)
    expect((await run('cutlength --diameter 12 --inside 48 --legs 1e308,1e308')).err).toMatch(/--legs/)
    expect((await run('cutlength --diameter 12 --inside 1e308 --legs 600,400')).err).toMatch(/--inside/)
  })

  it('an inch size of the United States is named, not taken as millimetres', async () => {
    for (const inches of ['0.375', '0.5', '1', '1.128']) {
      const { json } = await run(`bend --diameter ${inches} --grade 60 --role main --inside 6 --code us`)
      expect(json).toMatchObject({ limit: null, unknown: [expect.stringMatching(/^diameter: no US bar/)] })
    }
  })

  it('edges of US sizes: half a millimetre either way, no more', async () => {
    const bend = 'bend --grade 60 --role main --inside 200 --code us --diameter'
    expect((await run(`${bend} 25.9`)).code).toBe(0)
    expect((await run(`${bend} 25.91`)).json).toMatchObject({ verdict: 'unknown' })
  })

  it('turns: 180 and 0.0001 are bends, 180.1 and 0 are not', async () => {
    const cut = 'cutlength --diameter 12 --inside 60 --legs 600,400 --turns'
    expect((await run(`${cut} 180`)).json?.length).toBeCloseTo(1000 - 2 * 42 + Math.PI * 36, 6)
    expect((await run(`${cut} 0.0001`)).json?.length).toBeCloseTo(1000, 3)
    for (const turn of ['180.1', '0', '-90']) expect((await run(`${cut}=${turn}`)).err).toMatch(/--turns/)
  })
})
