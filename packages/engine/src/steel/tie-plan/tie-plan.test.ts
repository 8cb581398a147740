import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { panelOf, parseDrawing } from '../../panel/index.ts'
import type { Ring } from '../../panel/point.ts'
import { subtract } from '../../panel/region.ts'
import { parseYard } from '../../yard/index.ts'
import { matLines } from '../mat-lines.ts'
import { planSteel } from '../plan-steel.ts'
import { crossings } from '../ties.ts'
import { layerRows } from './mat-rows.ts'
import { TIE, tiedCrossings, tiePlan } from './tie-plan.ts'

const box = (x: number, y: number, w: number, h: number): Ring => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]

const linesOf = (length: number, width: number, holes: readonly Ring[] = [], spacing = 200) => {
  const region = subtract(box(0, 0, length, width), holes)
  const lines = (direction: 'x' | 'y') =>
    matLines({ region, direction, diameter: 12, spacing, edgeCover: 40 }).lines
  return { alongX: lines('x'), alongY: lines('y') }
}

const steelOf = (more: Record<string, unknown> = {}) => {
  const grade = 'B500B'
  const panel = panelOf(
    parseDrawing({
      format: 'castwright.drawing/1',
      mark: 'W1',
      outline: box(0, 0, 9000, 3000),
      openings: [{ mark: 'D1', outline: box(900, 0, 1000, 2100) }],
      thickness: 180,
      concrete: { strength: 40, aggregate: 16 },
      cover: { mould: 30, top: 35, edge: 40 },
      steel: [
        { layer: 'mould', direction: 'x', diameter: 12, grade, spacing: 200 },
        { layer: 'mould', direction: 'y', diameter: 12, grade, spacing: 250 },
        { layer: 'top', direction: 'y', diameter: 10, grade, spacing: 250 },
        { layer: 'top', direction: 'x', diameter: 10, grade, spacing: 200 },
      ],
      ...more,
    }),
  )
  const yard = parseYard({
    format: 'castwright.yard/1',
    name: 'Kettle Lane',
    code: 'eu',
    timezone: 'Europe/London',
    stock: [
      { diameter: 12, grade, lengths: [6000] },
      { diameter: 10, grade, lengths: [6000] },
    ],
  })
  return planSteel({ panel, yard, family: codeFamily('eu') })
}

describe('tie plan', () => {
  it('tied inside lie staggered: no two side by side, none above another', () => {
    const { x, y, why } = tiedCrossings(linesOf(5800, 3000))
    const tied = new Set<string>()
    const places = new Map<string, number>()
    for (let k = 0; k < why.length; k += 1) places.set(`${x[k]} ${y[k]}`, k)
    const [columns, rows] = [x, y].map((values) => [...new Set(values)].sort((a, b) => a - b))
    for (let k = 0; k < why.length; k += 1) if (why[k] === TIE.everyOther) tied.add(`${x[k]} ${y[k]}`)
    for (const at of tied) {
      const k = places.get(at) as number
      const column = (columns as number[]).indexOf(x[k] as number)
      const row = (rows as number[]).indexOf(y[k] as number)
      expect(tied.has(`${(columns as number[])[column + 1]} ${y[k]}`)).toBe(false)
      expect(tied.has(`${x[k]} ${(rows as number[])[row + 1]}`)).toBe(false)
    }
  })

  it('counts what the wire is ordered by, whatever the openings', () => {
    const hole = fc.record({
      x: fc.integer({ min: -500, max: 7000 }),
      y: fc.integer({ min: -500, max: 3500 }),
      w: fc.integer({ min: 200, max: 2500 }),
      h: fc.integer({ min: 200, max: 2500 }),
    })
    fc.assert(
      fc.property(
        fc.integer({ min: 500, max: 9000 }),
        fc.integer({ min: 500, max: 4000 }),
        fc.integer({ min: 100, max: 400 }),
        fc.array(hole, { maxLength: 5 }),
        (length, width, spacing, holes) => {
          const lines = linesOf(
            length,
            width,
            holes.map(({ x, y, w, h }) => box(x, y, w, h)),
            spacing,
          )
          const counted = crossings(lines)
          const { x, why, rim, tied } = tiedCrossings(lines)
          expect({ all: x.length, rim, tied }).toEqual(counted)
          expect(why.reduce((sum, each) => sum + (each === TIE.left ? 0 : 1), 0)).toBe(tied)
          expect(why.reduce((sum, each) => sum + (each === TIE.rim ? 1 : 0), 0)).toBe(rim)
        },
      ),
      { numRuns: 200 },
    )
  })

  it('of a planned panel: as many as the plan says, and two at each lap', () => {
    const steel = steelOf()
    const plan = tiePlan(steel)
    expect(plan.tied).toBe(steel.ties)
    const laps = steel.laps.filter((lap) => lap.layer !== null)
    expect(laps.length).toBeGreaterThan(0)
    expect(plan.lapTies).toBe(2 * laps.length)
    expect(plan.layers.map(({ layer }) => layer)).toEqual(['mould', 'top'])
    expect(plan.layers[0]?.height).toBe(30 + 12)
    const [lap] = laps
    const ends = plan.layers[0]
    expect(Math.abs((ends?.lapX[1] ?? 0) - (ends?.lapX[0] ?? 0))).toBeCloseTo(lap?.length ?? Number.NaN, 6)
  })

  it('is asked for at the cage, a layer each, in numbers', () => {
    const asked = steelOf().toRecord.filter(({ id }) => id.startsWith('ties:'))
    expect(asked.map(({ id, step }) => [id, step])).toEqual([
      ['ties:mould', 'cage'],
      ['ties:top', 'cage'],
    ])
    const [layer] = tiePlan(steelOf()).layers
    expect(asked[0]?.what).toContain(`all ${layer?.rim} of the rim`)
  })

  it('lapped pieces are one row again', () => {
    const whole = layerRows(steelOf())
    const [mould] = whole
    const rows = new Set(mould?.alongX.map((line) => line.at))
    // 3000 − 2 · 46 at 200: 15 gaps, 16 rows; the door parts those below 2100.
    expect(rows.size).toBe(16)
    expect(mould?.alongX.filter((line) => line.at > 2200).every((line) => line.to - line.from > 8900)).toBe(
      true,
    )
  })

  it('nothing placed, nothing to tie', () => {
    expect(tiePlan({ placed: [], laps: [] })).toEqual({
      layers: [],
      crossings: 0,
      rim: 0,
      tied: 0,
      lapTies: 0,
    })
  })
})
