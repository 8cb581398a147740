import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeFamily } from './codes/index.ts'
import { casting, liftYard } from './lift/reference-panels.ts'
import { FAMILY_IDS, parseDrawing } from './panel/drawing.ts'
import { starRing } from './panel/random-shapes.ts'
import { ENGINE_VERSION, type Plan, plan } from './plan.ts'
import { STEP_IDS } from './steps/steps.ts'
import { InputError } from './working/issue.ts'
import { replay } from './working/replay.ts'

const seed = 20261201

const STEEL = {
  cover: { mould: 30, top: 30, edge: 30 },
  steel: [
    { layer: 'mould', direction: 'x', diameter: 12, grade: 'B500B', spacing: 200 },
    { layer: 'mould', direction: 'y', diameter: 10, grade: 'B500B', spacing: 250 },
  ],
}
const DOOR = {
  openings: [
    {
      mark: 'D1',
      outline: [
        [2600, 0],
        [3600, 0],
        [3600, 2100],
        [2600, 2100],
      ],
    },
  ],
}

const { drawing } = casting({ ...STEEL, ...DOOR })
const yard = liftYard({
  forms: [{ mark: 'S150', height: 160, modulus: 205_000, inertia: 690_000 }],
  stock: [10, 12].map((diameter) => ({ diameter, grade: 'B500B', lengths: [6000, 12_000] })),
  vibrators: [{ mark: 'V40', head: 40 }],
  mixes: [
    {
      mark: 'M40',
      strength: 40,
      slump: [80, 120],
      curve: { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 },
      scatter: 0.08,
      initialSet: 5,
    },
  ],
})

/** Every number anywhere in a plan, with the path to it. */
function numbersIn(value: unknown, path = 'plan'): [string, number][] {
  if (typeof value === 'number') return [[path, value]]
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}.${key}`))
}

function expectSound(found: Plan): void {
  for (const [path, number] of numbersIn(found))
    expect(Number.isFinite(number), `${path} is ${number}`).toBe(true)
  for (const check of found.checks) {
    expect(check.verdict === 'unknown', check.id).toBe((check.unknown ?? []).length > 0)
    expect(check.source.standard, check.id).not.toBe('')
  }
  for (const items of [found.checks, found.toRecord]) {
    const at = items.map(({ step }) => STEP_IDS.indexOf(step))
    expect(at).toEqual([...at].sort((a, b) => a - b))
  }
  const ids = [...found.checks, ...found.toRecord].map(({ step, id }) => `${step}/${id}`)
  expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([])
}

describe('the plan of a panel', () => {
  it.each(FAMILY_IDS)('is sound by the rules of %s, with and without a yard', (id) => {
    for (const having of [yard, null]) expectSound(plan({ drawing, yard: having, family: codeFamily(id) }))
  })

  it('has the figures of every room', () => {
    const found = plan({ drawing, yard, family: codeFamily('eu') })
    expect(found.mass).toBeCloseTo(0.15 * 15.9 * 2500, 9)
    expect(found).toMatchObject({ mark: 'P6', family: 'eu', length: 6000, width: 3000, thickness: 150 })
    expect(found.steel.bars.length).toBeGreaterThan(0)
    expect(found.mould.pressure).not.toBeNull()
    expect(found.pour.netVolume).toBeCloseTo(found.volume, 9)
    expect(found.cure.wanted?.strength).toBe(15)
    expect(found.cure.hourLow ?? 0).toBeGreaterThan(found.cure.hour ?? Number.POSITIVE_INFINITY)
    expect(found.lift.mass).toBe(found.mass)
    expect(found.quality.tolerances.length).toBeGreaterThan(0)
  })

  it('without a yard passes nothing that needs one', () => {
    const found = plan({ drawing, yard: null, family: codeFamily('eu') })
    expect(found.checks.filter(({ step, verdict }) => step === 'strip' && verdict === 'pass')).toEqual([])
    expect(found.lift.factor).toBeNull()
    expect(found.cure.hour).toBeNull()
  })

  it('does not change what it is given, and gives the same twice', () => {
    const before = JSON.stringify([drawing, yard])
    const [first, second] = [0, 1].map(() =>
      JSON.stringify(plan({ drawing, yard, family: codeFamily('eu') })),
    )
    expect(first).toBe(second)
    expect(JSON.stringify([drawing, yard])).toBe(before)
  })

  it('refuses a drawing that leaves no concrete, and says where', () => {
    const gone = {
      ...drawing,
      openings: [
        {
          mark: 'X',
          outline: [
            [-1, -1],
            [9000, -1],
            [9000, 9000],
            [-1, 9000],
          ] as [number, number][],
        },
      ],
    }
    expect(() => plan({ drawing: gone, yard, family: codeFamily('eu'), from: 'W.json' })).toThrow(InputError)
    expect(() => plan({ drawing: gone, yard, family: codeFamily('eu'), from: 'W.json' })).toThrow(
      /W\.json: openings/,
    )
  })

  it(`is sound for any outline (seed ${seed})`, () => {
    fc.assert(
      fc.property(starRing({ least: 700, most: 3000 }), fc.constantFrom(...FAMILY_IDS), (outline, id) => {
        const { rigging: _, inserts: __, openings: ___, ...base } = drawing
        expectSound(plan({ drawing: parseDrawing({ ...base, outline }), yard, family: codeFamily(id) }))
      }),
      { seed, numRuns: 15 },
    )
  })

  it('prints steps that replay, all of them', () => {
    let replayed = 0
    for (const id of FAMILY_IDS) {
      const found = plan({ drawing, yard, family: codeFamily(id) })
      for (const step of [...found.working, ...found.checks.flatMap(({ working }) => working)]) {
        const again = replay(step)
        if (again === null) continue
        replayed += 1
        const result = Number(step.result)
        expect(Math.abs(again - result), `${step.symbol} = ${step.formula}`).toBeLessThanOrEqual(
          1e-9 * Math.max(Math.abs(result), 1e-9),
        )
      }
    }
    expect(replayed).toBeGreaterThan(50)
  })

  it('carries the version of the package', () => {
    const file = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
      version: string
    }
    expect(ENGINE_VERSION).toBe(file.version)
  })
})
