import { describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const WALL = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [3000, 0],
    [3000, 2000],
    [0, 2000],
  ],
  thickness: 150,
  openings: [
    {
      mark: 'D1',
      outline: [
        [900, 0],
        [1900, 0],
        [1900, 1200],
        [900, 1200],
      ],
    },
  ],
  concrete: { strength: 40 },
}
const files = (change: Record<string, unknown> = {}) => ({
  'wall.json': JSON.stringify({ ...WALL, ...change }),
})

interface Compaction {
  insertions: [number, number][]
  radius: number
  action: number | null
  uncovered: number
  path: number
  minutes: number
  close: number[]
  zones: { order: number; insertions: number[]; volume: number }[]
  assumed: { field: string }[]
}

describe('castwright compact', () => {
  it('gives insertions in working order, a proven cover, zones and time', async () => {
    const ran = await cli(['compact', 'wall.json', '--head', '40', '--json'], files())
    expect(ran.code).toBe(0)
    const json = ran.json() as unknown as Compaction
    expect(json.radius).toBeCloseTo(129.9, 9)
    expect(json.action).toBe(150)
    expect(json.uncovered).toBe(0)
    expect(json.close).toEqual([])
    expect(json.minutes).toBeCloseTo((json.insertions.length * 13) / 60, 9)
    expect(json.zones.flatMap(({ insertions }) => insertions)).toEqual(json.insertions.map((_, i) => i))
    expect(json.zones.reduce((sum, { volume }) => sum + volume, 0)).toBeCloseTo(4.8 * 0.15, 6)
    // the far band first
    expect(json.insertions[0]?.[0]).toBeGreaterThan(1500)
    expect(json.assumed.map(({ field }) => field)).toEqual([
      'margin',
      'seconds in',
      'seconds moving',
      'wait of a band',
      'chute',
    ])
  })

  it('takes a radius as given', async () => {
    const ran = await cli(
      [
        'compact',
        'wall.json',
        '--head',
        '40',
        '--radius',
        '300',
        '--margin',
        '50',
        '--chute',
        '3000,2000',
        '--json',
      ],
      files(),
    )
    const json = ran.json() as unknown as Compaction
    expect(json).toMatchObject({ radius: 300, action: null, uncovered: 0 })
    expect(json.insertions[0]?.[0]).toBeLessThan(1500)
  })

  it('reads standard input', async () => {
    const ran = await cli(['compact', '-', '--head', '60'], { '-': JSON.stringify(WALL) })
    expect(ran.code).toBe(0)
    expect(ran.out).toMatch(/Not reached +0 m²: pass/)
  })

  it('a head outside the table is not known', async () => {
    const ran = await cli(['compact', 'wall.json', '--head', '10', '--json'], files())
    expect(ran.code).toBe(1)
    expect(ran.json()).toMatchObject({ insertions: null, uncovered: null, verdict: 'unknown' })
  })

  it('deals a zone to two vibrators, and cuts the reach where steel is close', async () => {
    const options = ['--head', '40', '--vibrators', '2', '--congested', '0,1200,900,800', '--json']
    const ran = await cli(['compact', 'wall.json', ...options], files())
    const json = ran.json() as unknown as Compaction & {
      zones: { shares: number[][] }[]
      reduced: { radius: number; insertions: number[] }[]
      layers: { count: number }
      pace: number
    }
    expect(json.uncovered).toBe(0)
    expect(json.reduced[0]?.radius).toBeCloseTo((129.9 * 2) / 3, 9)
    expect(json.layers.count).toBe(1)
    for (const { shares, insertions } of json.zones) expect(shares.flat()).toEqual(insertions)
    expect(json.minutes).toBeLessThan((json.insertions.length * 13) / 60 / 1.8)
    expect(json.assumed.map(({ field }) => field)).toContain('congested share')
  })

  it('shows the working', async () => {
    const ran = await cli(['compact', 'wall.json', '--head', '40', '--explain'], files())
    expect(ran.out).toContain('0.866 R_a')
    expect(ran.out).toContain('Kershner')
  })

  it.each<[string, string[], Record<string, unknown>, string]>([
    ['neither head nor radius', [], {}, '--head'],
    ['a head of 0', ['--head', '0'], {}, '--head'],
    ['a radius in words', ['--radius', 'wide'], {}, '--radius'],
    ['a margin below 0', ['--head', '40', '--margin=-1'], {}, '--margin'],
    ['half a vibrator', ['--head', '40', '--vibrators', '0.5'], {}, '--vibrators'],
    ['three numbers of a zone', ['--head', '40', '--congested', '0,0,5'], {}, '--congested'],
    ['a zone without width', ['--head', '40', '--congested', '0,0,0,5'], {}, '--congested'],
    ['a chute of one number', ['--head', '40', '--chute', '5'], {}, '--chute'],
    [
      'a crossing outline',
      ['--head', '40'],
      {
        outline: [
          [0, 0],
          [3000, 2000],
          [3000, 0],
          [0, 2000],
        ],
      },
      'outline',
    ],
    ['a thickness of 0', ['--head', '40'], { thickness: 0 }, 'thickness'],
    [
      'concrete in two pieces',
      ['--head', '40'],
      {
        openings: [
          {
            mark: 'S',
            outline: [
              [1000, -1],
              [1100, -1],
              [1100, 2001],
              [1000, 2001],
            ],
          },
        ],
      },
      'openings',
    ],
    ['a format of another version', ['--head', '40'], { format: 'castwright.drawing/9' }, 'format'],
  ])('%s: exit 2, and the message names it', async (_, options, change, field) => {
    const ran = await cli(['compact', 'wall.json', ...options, '--json'], files(change))
    expect(ran.code).toBe(2)
    expect(ran.err).toContain(field)
    expect(ran.out).toBe('')
  })
})
