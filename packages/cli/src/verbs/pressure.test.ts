import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const WALL = [
  'pressure',
  '--method',
  'aci347',
  '--height',
  '3000',
  '--rate',
  '1.5',
  '--temperature',
  '20',
  '--kind',
  'wall',
]

describe('castwright pressure', () => {
  it('gives the pressure with its source, and lists what was assumed', async () => {
    const ran = await cli([...WALL, '--json'])
    expect(ran.code).toBe(0)
    const json = ran.json()
    expect(json.maximum).toBeCloseTo(38.3508, 4)
    expect(json.hydrostatic).toBeCloseTo(70.608, 3)
    expect(json.source).toEqual({ standard: 'ACI 347R-14', clause: '4.2.2.1', status: 'from memory' })
    expect((json.assumed as { field: string }[]).map(({ field }) => field)).toEqual(['density', 'cw', 'cc'])
    expect(json).not.toHaveProperty('unknown')
  })

  it.each<[string[], number]>([
    [['--method', 'hydrostatic', '--height', '150'], 3.75],
    [['--method', 'hydrostatic', '--height', '150', '--weight', '24'], 3.6],
    [['--method', 'ciria108', '--height', '3000', '--rate', '2', '--temperature', '10'], 53.4621],
    [['--method', 'din18218', '--height', '3000', '--rate', '2', '--flow', 'F3', '--setting', '10'], 63.71],
  ])('%o gives %d kPa', async (options, expected) => {
    const ran = await cli(['pressure', ...options, '--json'])
    expect(ran.code).toBe(0)
    expect(ran.json().maximum).toBeCloseTo(expected, 3)
  })

  it('shows the working by hand', async () => {
    const ran = await cli([...WALL, '--explain'])
    expect(ran.out).toContain('Cw Cc (7.2 + 785 R / (T + 17.8))')
    expect(ran.out).toContain('formula governs')
    const json = (await cli([...WALL, '--explain', '--json'])).json()
    expect((json.working as unknown[]).length).toBe(3)
  })

  it('without a rate it is not known, never assumed', async () => {
    const ran = await cli([
      'pressure',
      '--method',
      'ciria108',
      '--height',
      '3000',
      '--temperature',
      '20',
      '--json',
    ])
    expect(ran.code).toBe(1)
    expect(ran.json()).toMatchObject({ maximum: null, hydrostatic: 75, unknown: ['rate: rate of rise, m/h'] })
  })

  it('help ends with an example that runs', async () => {
    const ran = await cli(['pressure', '--help'])
    expect(ran.code).toBe(0)
    const example = /castwright (pressure .*)/g.exec(ran.out.split('Example:')[1] ?? '')?.[1] ?? ''
    expect((await cli(example.split(' '))).code).toBe(0)
  })

  it.each<[string, string[], string]>([
    ['no method', ['--height', '3000'], '--method'],
    ['an unknown method', ['--method', 'guess', '--height', '3000'], '--method'],
    ['no height', ['--method', 'hydrostatic'], '--height'],
    ['a height of 0', ['--method', 'hydrostatic', '--height', '0'], '--height'],
    ['a height in words', ['--method', 'hydrostatic', '--height', 'tall'], '--height'],
    [
      'a rate below 0',
      ['--method', 'aci347', '--height', '3000', '--rate=-1', '--temperature', '20'],
      '--rate',
    ],
    ['an unknown kind', ['--method', 'aci347', '--height', '3000', '--kind', 'slab'], '--kind'],
    [
      'an unknown flow class',
      ['--method', 'din18218', '--height', '3000', '--rate', '1', '--flow', 'F7'],
      '--flow',
    ],
    [
      'a temperature below the coldest there is',
      ['--method', 'aci347', '--height', '3000', '--temperature=-300'],
      '--temperature',
    ],
    ['an option of another verb', ['--method', 'hydrostatic', '--height', '3000', '--spans', '2'], '--spans'],
  ])('%s: exit 2, and the message names %o', async (_, options, field) => {
    const ran = await cli(['pressure', ...options, '--json'])
    expect(ran.code).toBe(2)
    expect(ran.err).toContain(field)
    expect(ran.out).toBe('')
  })
})
