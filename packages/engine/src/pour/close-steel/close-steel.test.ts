import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { parseDrawing } from '../../panel/drawing.ts'
import { panelOf } from '../../panel/panel.ts'
import type { Point, Ring } from '../../panel/point.ts'
import { distanceToSegment, placeInRing } from '../../panel/polygon.ts'
import { covers, subtract } from '../../panel/region.ts'
import type { PlacedBar } from '../../steel/steel-plan.ts'
import { parseYard } from '../../yard/yard.ts'
import { planPour } from '../plan-pour.ts'
import { closeSteel } from './close-steel.ts'
import { overBars } from './tight.ts'

const rect = (x: number, y: number, w: number, h: number): Ring => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]
const REGION = subtract(rect(0, 0, 4000, 2000), [])

function bar(id: string, path: readonly Point[], diameter = 12): PlacedBar {
  return {
    id,
    mark: id,
    use: 'mat',
    layer: 'mould',
    diameter,
    path,
    height: 40,
    centreline: null,
    inside: null,
  }
}

/** Bars both ways over a rectangle, so far apart. */
function mesh(
  [x0, y0, x1, y1]: readonly [number, number, number, number],
  spacing: number,
  mark = 'M',
): PlacedBar[] {
  const bars: PlacedBar[] = []
  for (let x = x0; x <= x1; x += spacing)
    bars.push(
      bar(`${mark}x${x}`, [
        [x, y0],
        [x, y1],
      ]),
    )
  for (let y = y0; y <= y1; y += spacing)
    bars.push(
      bar(`${mark}y${y}`, [
        [x0, y],
        [x1, y],
      ]),
    )
  return bars
}

const FIELD = mesh([50, 50, 3950, 1950], 200)
const DENSE = mesh([1000, 600, 1800, 1200], 60, 'D')

describe('close steel', () => {
  it('a usual mesh has none: 188 mm clear against 2 × 40', () => {
    expect(closeSteel({ region: REGION, placed: FIELD, head: 40, narrow: 90 })).toEqual([])
    expect(closeSteel({ region: REGION, placed: [], head: 40, narrow: 90 })).toEqual([])
  })

  it('bars 60 mm apart are a zone that holds them and little more', () => {
    const [zone, ...others] = closeSteel({
      region: REGION,
      placed: [...FIELD, ...DENSE],
      head: 40,
      narrow: 90,
    })
    expect(others).toEqual([])
    if (zone === undefined) throw new Error('no zone')
    for (const [x, y] of [
      [1150, 750],
      [1400, 900],
      [1650, 1050],
    ] as const)
      expect(placeInRing([x, y], zone)).toBe('inside')
    for (const [x, y] of [
      [700, 900],
      [2200, 900],
      [1400, 300],
      [1400, 1550],
    ] as const)
      expect(placeInRing([x, y], zone)).toBe('outside')
  })

  it('laps side by side are none: a pair in contact leaves the gap beside it open', () => {
    const lapped = FIELD.map(({ id, path }) =>
      bar(
        `${id}'`,
        path.map(([x, y]): Point => [x + 12, y + 12]),
      ),
    )
    expect(closeSteel({ region: REGION, placed: [...FIELD, ...lapped], head: 40, narrow: 90 })).toEqual([])
  })

  it('a strip narrower than what is reached from beside is left out', () => {
    const strip = [0, 40, 80].map((by) =>
      bar(`t${by}`, [
        [1050 + by, 200],
        [1050 + by, 1800],
      ]),
    )
    const found = (narrow: number) =>
      closeSteel({ region: REGION, placed: [...FIELD, ...strip], head: 40, narrow })
    expect(found(20).length).toBeGreaterThan(0)
    expect(found(200)).toEqual([])
  })

  it('more bars never take close steel away (fast-check)', () => {
    const lines = fc.array(fc.tuple(fc.boolean(), fc.integer({ min: 60, max: 1940 })), {
      minLength: 4,
      maxLength: 60,
    })
    fc.assert(
      fc.property(lines, lines, fc.integer({ min: 25, max: 60 }), (drawn, added, head) => {
        const barsOf = (list: typeof drawn): PlacedBar[] =>
          list.map(([along, at], i) =>
            bar(
              `b${i}`,
              along
                ? [
                    [50, at],
                    [1950, at],
                  ]
                : [
                    [at, 50],
                    [at, 1950],
                  ],
            ),
          )
        const region = subtract(rect(0, 0, 2000, 2000), [])
        // Narrow 0: nothing is left out, so that only the rule itself is looked at.
        const of = (placed: PlacedBar[]) => closeSteel({ region, placed, head, narrow: 0 })
        const [fewer, more] = [of(barsOf(drawn)), of([...barsOf(drawn), ...barsOf(added)])]
        const inside = (rings: readonly Ring[], at: Point): boolean =>
          rings.some((ring) => placeInRing(at, ring) !== 'outside')
        for (let x = 105; x < 2000; x += 190)
          for (let y = 105; y < 2000; y += 190)
            if (inside(fewer, [x, y])) expect(inside(more, [x, y])).toBe(true)
      }),
      { numRuns: 30, seed: 20_264 },
    )
  })

  it('a place outside every zone has a gap of two heads near; second method: looked for on a net of 4 mm', () => {
    const placed = [...FIELD, ...DENSE]
    const zones = closeSteel({ region: REGION, placed, head: 40, narrow: 0 })
    const skin = ([x, y]: Point): number =>
      Math.min(
        ...placed.flatMap(({ path: [a, b], diameter }) =>
          a && b ? [distanceToSegment([x, y], [a, b]) - diameter / 2] : [],
        ),
      )
    for (let x = 820; x < 2000; x += 97)
      for (let y = 420; y < 1400; y += 89) {
        if (zones.some((zone) => placeInRing([x, y], zone) !== 'outside')) continue
        let near = false
        for (let dx = -88; dx <= 88 && !near; dx += 4)
          for (let dy = -88; dy <= 88 && !near; dy += 4)
            near =
              Math.hypot(dx, dy) <= 88 && covers(REGION, [x + dx, y + dy]) && skin([x + dx, y + dy]) >= 39
        expect(near).toBe(true)
      }
  })
})

describe('insertions over bars', () => {
  it('a gap within the slack is no trouble; farther away it is told with its bar', () => {
    const at = (x: number, slack: number) =>
      overBars({ region: REGION, placed: FIELD, insertions: [[x, 950]], head: 40, slack: [slack] })
    expect(at(950, 5)).toEqual([])
    // 1050 lies on a bar; beside it 26 mm to the first place where head and bar clear each other.
    expect(at(1050, 40)).toEqual([])
    const [one] = at(1050, 5)
    expect(one).toMatchObject({ insertion: 0, at: 'bar', mark: 'Mx1050' })
    if (one?.at !== 'bar' || one.move === null) throw new Error('no move')
    expect(one.move).toBeGreaterThanOrEqual(16)
    expect(one.move).toBeLessThanOrEqual(30)
  })

  it('no gap near: told without one', () => {
    const plate = mesh([800, 600, 1600, 1200], 30, 'P')
    const [one] = overBars({
      region: REGION,
      placed: plate,
      insertions: [[1200, 900]],
      head: 40,
      slack: [20],
    })
    expect(one).toMatchObject({ at: 'bar', move: null })
  })
})

describe('close steel in the plan of a pour', () => {
  const panel = panelOf(
    parseDrawing({
      format: 'castwright.drawing/1',
      mark: 'W1',
      outline: rect(0, 0, 4000, 2000),
      thickness: 150,
      concrete: { strength: 40 },
      congested: [{ mark: 'anchor plates', outline: rect(3000, 1200, 500, 500), share: 0.5 }],
    }),
  )
  const yard = parseYard({
    format: 'castwright.yard/1',
    name: 'Test yard',
    code: 'eu',
    timezone: 'Pacific/Fiji',
    vibrators: [{ mark: 'V40', head: 40 }],
  })
  const plan = planPour({ panel, yard, family: codeFamily('eu'), placed: [...FIELD, ...DENSE] })

  it('drawn and found zones have their own radius, all is covered, and the card says so', () => {
    const { compaction } = plan
    expect(compaction?.uncovered).toBe(0)
    const [drawn, found] = compaction?.reduced ?? []
    expect(drawn).toMatchObject({ mark: 'anchor plates' })
    expect(drawn?.radius).toBeCloseTo(0.5 * 129.9, 9)
    expect(found?.mark).toBe('close steel 1')
    expect(found?.radius).toBeCloseTo((2 / 3) * 129.9, 9)
    expect(found?.insertions.length).toBeGreaterThan(8)
    const note = plan.toRecord.find(({ id }) => id === 'head')?.note ?? ''
    expect(note).toContain('In close steel (hatched) they reach 65 mm')
    expect(note).toMatch(/\d+ have little room: \d+: over bar/)
  })

  it('where no bar is laid out the plan says that none was looked at', () => {
    const bare = planPour({ panel, yard, family: codeFamily('eu') })
    expect(bare.compaction?.reduced.map(({ mark }) => mark)).toEqual(['anchor plates'])
    expect(bare.assumed.find(({ field }) => field === 'close steel')?.why).toContain('no bar is laid out')
    expect(plan.assumed.some(({ field }) => field === 'close steel')).toBe(false)
  })

  it('a zone that crosses itself is refused at its corner', () => {
    const wrong = [
      [0, 0],
      [500, 500],
      [500, 0],
      [0, 500],
    ]
    expect(() =>
      parseDrawing({ ...panel.drawing, congested: [{ mark: 'x', outline: wrong }] }, 'w1.json'),
    ).toThrow(/congested\[0\]\.outline/)
  })
})
