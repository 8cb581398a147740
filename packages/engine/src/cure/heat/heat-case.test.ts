import { describe, expect, it } from 'vitest'
import { InputError } from '../../working/issue.ts'
import { parseHeatCase } from './heat-case.ts'
import { CONCRETE, caseOf } from './testing.ts'

function issuesOf(part: Readonly<Record<string, unknown>>): string[] {
  try {
    parseHeatCase(caseOf(part))
  } catch (error) {
    if (error instanceof InputError)
      return error.issues.map(({ path, found, expected }) => `${path}: ${found}, ${expected}`)
    throw error
  }
  return []
}

describe('a case of heat', () => {
  it.each([
    ['thickness', { thickness: 0 }],
    ['thickness', { thickness: '150' }],
    ['initial', { initial: 400 }],
    ['air', { air: 'cold' }],
    ['air[1]', { air: [[0, 10], [24]] }],
    ['air', { air: [] }],
    ['air.steps', { air: { steps: 4 } }],
    [
      'air.shape',
      {
        air: {
          linear: [
            [0, 1],
            [24, 1],
          ],
          shape: 'round',
        },
      },
    ],
    [
      'top.film[1][1]',
      {
        top: {
          film: [
            [0, 10],
            [4, -3],
          ],
        },
      },
    ],
    ['hours', { hours: 0 }],
    ['every', { every: -1 }],
    ['every', { every: 1e-6 }],
    ['concrete.ultimate', { concrete: { ...CONCRETE, ultimate: 1.2 } }],
    ['concrete.binder', { concrete: { ...CONCRETE, binder: -1 } }],
    ['concrete.tau', { concrete: { ...CONCRETE, tau: undefined } }],
    ['concrete.heatCapacity', { concrete: { ...CONCRETE, heatCapacity: 2_400_000 } }],
    ['concrete.heat', { concrete: { ...CONCRETE, binder: 1200, heat: 900 } }],
    ['top.film', { top: { film: -3 } }],
    ['top.film', { top: {} }],
    ['top.colour', { top: { film: 3, colour: 'grey' } }],
    ['top.absorptivity', { top: { film: 10, sun: 500 } }],
    ['top.sky', { top: { film: 10, emissivity: 0.9 } }],
    ['bottom.film', { bottom: { film: 10, temperature: 40 } }],
    ['bottom.gain', { bottom: { gain: 10, temperature: 40 } }],
    [
      'bottom.layers[0].conductivity',
      { bottom: { film: 10, layers: [{ thickness: 5, heatCapacity: 3600 }] } },
    ],
  ])('names %s', (path, part) => {
    expect(issuesOf(part).map((issue) => issue.split(':')[0])).toContain(path)
  })

  it('wants a series in time from 0 to the end, in order', () => {
    expect(
      issuesOf({
        air: [
          [0, 10],
          [12, 5],
        ],
      }),
    ).toEqual(['air: a series that ends at 12 h, a series up to 24 h, the end of the run'])
    expect(
      issuesOf({
        air: [
          [1, 10],
          [24, 5],
        ],
      }),
    ).toEqual(['air: a series from 1 h, a series from 0 h or before'])
    expect(
      issuesOf({
        air: [
          [0, 10],
          [9, 5],
          [6, 4],
          [24, 1],
        ],
      })[0],
    ).toContain('air[2]: 6 h after 9 h')
    expect(
      issuesOf({
        air: [
          [0, 10],
          [6, 5],
          [6, 4],
          [6, 3],
          [24, 1],
        ],
      })[0],
    ).toContain('air[3]')
    expect(
      issuesOf({
        top: {
          film: [
            [0, 10],
            [6, 5],
            [6, 4],
          ],
        },
      })[0],
    ).toContain('top.film[2]')
    expect(
      issuesOf({
        air: [
          [0, 10],
          [6, 5],
          [6, 1],
          [24, 1],
        ],
      }),
    ).toEqual([])
    expect(
      issuesOf({
        top: {
          film: [
            [-2, 10],
            [6, 5],
          ],
        },
      }),
    ).toEqual([])
  })

  it('says what it takes where nothing is given', () => {
    const { assumed } = parseHeatCase(
      caseOf({
        bottom: {
          film: 8,
          resistance: 0.1,
          layers: [{ thickness: 5, conductivity: 50, heatCapacity: 3600 }],
        },
      }),
    )
    expect(assumed.map(({ field, value }) => [field, value])).toEqual([
      ['top.resistance', 0],
      ['bottom.layers[0].initial', 20],
    ])
  })

  it('holds film and resistance from point to point, and draws air straight', () => {
    const { problem } = parseHeatCase(
      caseOf({
        top: {
          film: [
            [0, 10],
            [6, 20],
          ],
          resistance: {
            linear: [
              [0, 0],
              [24, 1],
            ],
          },
        },
        air: [
          [0, 10],
          [24, 0],
        ],
      }),
    )
    expect(problem.above.film?.form).toBe('steps')
    expect(problem.above.resistance.form).toBe('linear')
    expect(problem.above.air.form).toBe('linear')
  })

  it('takes no heat and no film as they are', () => {
    expect(issuesOf({ concrete: { ...CONCRETE, binder: 0 }, top: { film: 0 }, bottom: { film: 0 } })).toEqual(
      [],
    )
  })
})
