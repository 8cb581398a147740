import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const EXAMPLE = JSON.parse(readFileSync('docs/examples/insert.json', 'utf8')) as Record<string, unknown>

function insert(change: object, args: readonly string[]) {
  const text = JSON.stringify({ ...EXAMPLE, ...change })
  return cli(['insert', 'case.json', ...args], { 'case.json': text })
}

interface Mode {
  readonly mode: string
  readonly nominal: number | null
  readonly factor: number | null
  readonly design: number | null
  readonly demand: number | null
  readonly source: { readonly standard: string; readonly clause: string; readonly status: string }
  readonly unknown?: readonly string[]
}

const modesOf = (ran: Awaited<ReturnType<typeof cli>>) => ran.json().modes as Mode[]

describe('castwright insert', () => {
  it.each([
    ['us', 'ACI 318-19'],
    ['eu', 'EN 1992-4:2018'],
  ])('%s: every mode with nominal, factor, design, demand and source; exit 0', async (code, standard) => {
    const ran = await insert({}, ['--code', code, '--json'])
    expect(ran.code).toBe(0)
    const modes = modesOf(ran)
    expect(modes.map(({ mode }) => mode)).toEqual(['steel', 'breakout', 'pullout', 'steel', 'edge', 'pryout'])
    for (const { nominal, factor, design, source } of modes) {
      expect(design).toBeCloseTo((nominal ?? 0) * (factor ?? 0), 9)
      expect(source).toMatchObject({ standard, status: 'from memory' })
    }
    expect(ran.json()).toMatchObject({ governing: 'breakout', demand: 36, verdict: 'pass' })
  })

  it('one insert far from edges: 48.41 kN in breakout and 92.89 kN in pull-out', async () => {
    const change = {
      at: [[3000, 1500]],
      openings: [],
      thickness: 300,
      depth: 100,
      head: 552.9203070318035,
      eccentricity: [0, 0],
      shear: 0,
    }
    const modes = modesOf(await insert(change, ['--code', 'us', '--json']))
    expect(modes.find(({ mode }) => mode === 'breakout')?.nominal).toBeCloseTo(48.412, 3)
    expect(modes.find(({ mode }) => mode === 'pullout')?.nominal).toBeCloseTo(92.891, 3)
    expect(modes.some(({ mode }) => mode === 'edge' || mode === 'pryout')).toBe(false)
  })

  it('supplementary reinforcement raises φ of breakout from 0.70 to 0.75 and leaves pull-out', async () => {
    const modes = modesOf(await insert({}, ['--code', 'us', '--supplementary', '--json']))
    expect(modes.find(({ mode }) => mode === 'breakout')?.factor).toBe(0.75)
    expect(modes.find(({ mode }) => mode === 'pullout')?.factor).toBe(0.7)
  })

  it.each<[string, object, string, RegExp]>([
    ['steel', { steel: undefined }, 'steel', /steel/],
    ['the product’s splitting distances', { splitting: undefined }, 'splitting', /splitting/],
    ['the shank', { shaft: undefined }, 'edge', /shaft/],
  ])('without %s that mode and the verdict are not known, exit 1', async (_, change, name, gap) => {
    for (const code of ['us', 'eu']) {
      const ran = await insert(change, ['--code', code, '--json'])
      expect(ran.code).toBe(1)
      expect(ran.json()).toMatchObject({
        verdict: 'unknown',
        unknown: expect.arrayContaining([expect.stringMatching(gap)]),
      })
      const mode = modesOf(ran).find((one) => one.mode === name)
      expect(mode).toMatchObject({ nominal: null, design: null, unknown: [expect.stringMatching(gap)] })
    }
  })

  it('too much load fails, exit 1, whatever else is not known', async () => {
    const ran = await insert({ tension: 200, steel: undefined }, ['--code', 'us', '--json'])
    expect([ran.code, ran.json().verdict]).toEqual([1, 'fail'])
  })

  it.each(['nz', 'au'])('%s: no anchor rules, the reason is said, exit 1', async (code) => {
    const ran = await insert({}, ['--code', code, '--json'])
    expect(ran.code).toBe(1)
    expect(ran.json()).toMatchObject({
      modes: [],
      verdict: 'unknown',
      unknown: [expect.stringMatching(/no anchor rules.*rated/)],
    })
  })

  it('shear as a number takes the worst edge, never more than with its direction', async () => {
    const edge = async (shear: unknown) =>
      modesOf(await insert({ shear }, ['--code', 'eu', '--json'])).find(({ mode }) => mode === 'edge')
        ?.nominal ?? 0
    const worst = await edge(14)
    for (const direction of [0, 45, 90, 180, 270])
      expect(worst).toBeLessThanOrEqual((await edge({ force: 14, direction })) + 1e-9)
  })

  it('prints a table with the caution, and the working when asked', async () => {
    const ran = await insert({}, ['--code', 'us', '--explain'])
    expect(ran.out).toMatch(/breakout, tension\s+all inserts\s+89\.1/)
    expect(ran.out).toMatch(/no lifting margin/)
    expect(ran.out).toMatch(/A \/ A0 ψec ψed ψc Nb/)
  })

  it.each<[string, object, RegExp]>([
    ['no insert', { at: [] }, /at: .*at least 1/],
    ['an insert off the outline', { at: [[7000, 600]] }, /at\[0\]: .*outline/],
    ['an insert on the outline', { at: [[0, 600]] }, /at\[0\]: .*outline/],
    ['an insert in an opening', { at: [[2000, 600]] }, /at\[0\]: .*openings\[0\]/],
    [
      'two at one point',
      {
        at: [
          [1200, 600],
          [1200, 600],
        ],
      },
      /at\[1\]: .*at\[0\]/,
    ],
    ['a depth of the thickness', { depth: 180 }, /depth: found 180, expected below the thickness, 180/],
    ['a head of 0', { head: 0 }, /head: found 0/],
    ['a coordinate of text', { at: [['a', 0]] }, /at\[0\]\[0\]/],
    ['an unknown field', { bolt: 1 }, /bolt: .*no field/],
    ['no load at all', { tension: 0, shear: 0 }, /tension: found 0/],
    ['a negative shear', { shear: -1 }, /shear: found -1/],
    ['a shear without direction', { shear: { force: 3 } }, /shear/],
    ['cracked not said', { concrete: { strength: 15 } }, /concrete\.cracked/],
    [
      'an outline that crosses itself',
      {
        outline: [
          [0, 0],
          [6000, 3000],
          [6000, 0],
          [0, 3000],
        ],
      },
      /outline\[\d\]: .*simple polygon/,
    ],
    [
      'an opening that cuts the face in two',
      {
        openings: [
          [
            [3000, -10],
            [3100, -10],
            [3100, 3010],
            [3000, 3010],
          ],
        ],
      },
      /openings: found 2 separate pieces/,
    ],
  ])('refuses %s', async (_, change, message) => {
    const ran = await insert(change, ['--code', 'us', '--json'])
    expect(ran.code).toBe(2)
    expect(ran.err).toMatch(message)
    expect(ran.out).toBe('')
  })

  it('refuses a missing code', async () => {
    const ran = await insert({}, ['--json'])
    expect([ran.code, ran.err]).toEqual([2, expect.stringMatching(/--code/)])
  })
})
