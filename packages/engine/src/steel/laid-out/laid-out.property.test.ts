import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { type Panel, panelOf, parseDrawing } from '../../panel/index.ts'
import type { Point } from '../../panel/point.ts'
import { distanceToSegment, edges, segmentsMeet } from '../../panel/polygon.ts'
import { starRing } from '../../panel/random-shapes.ts'
import { covers, offset, ringsOf } from '../../panel/region.ts'
import { InputError } from '../../working/issue.ts'
import { replay } from '../../working/replay.ts'
import { parseYard } from '../../yard/index.ts'
import { plannedMats } from '../mats.ts'
import { planSteel } from '../plan-steel.ts'
import type { Corner, PlacedBar, SteelPlan } from '../steel-plan.ts'
import { bentLine } from './bent-line.ts'
import { besidePairs } from './beside-pairs.ts'
import { clashesOf } from './clash.ts'
import { besideOf } from './side-by-side.ts'
import { segmentsApart } from './space.ts'
import { straightsOf } from './straights.ts'

const EDGE = 30
const family = codeFamily('eu')
const yard = parseYard({
  format: 'castwright.yard/1',
  name: 'Kettle Lane',
  code: 'eu',
  timezone: 'UTC',
  stock: [8, 10, 12, 16].map((diameter) => ({ diameter, grade: 'B500B', lengths: [3000, 4000] })),
})

/** Slopes at both ends, or a shape with notches and spikes. */
const outline: fc.Arbitrary<Point[]> = fc.oneof(
  fc
    .tuple(
      fc.integer({ min: 2500, max: 11_000 }),
      fc.integer({ min: 1500, max: 4000 }),
      fc.integer({ min: 0, max: 1000 }),
      fc.integer({ min: -1000, max: 1000 }),
    )
    .map(([length, height, left, right]): Point[] => [
      [0, 0],
      [length, 0],
      [length - 100 - right / 2, height],
      [left, height],
    ]),
  starRing({ least: 800, most: 5000 }).map((ring) => [...ring]),
)

/** Openings anywhere: inside, across an edge (a notch) or outside. */
const opening = fc
  .tuple(
    fc.integer({ min: -500, max: 9000 }),
    fc.integer({ min: -500, max: 3500 }),
    fc.integer({ min: 300, max: 1500 }),
    fc.integer({ min: 300, max: 1500 }),
  )
  .map(([x, y, width, height]): Point[] => [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ])

const grade = 'B500B'
const more = fc.subarray([
  { edge: 'all', form: 'u', diameter: 10, grade, spacing: 250, leg: 300 },
  { edge: 'outer', form: 'hook', layer: 'top', diameter: 8, grade, spacing: 300, leg: 250 },
  {
    trim: 'all',
    layer: 'both',
    diameter: 12,
    grade,
    count: 2,
    beyond: 500,
    diagonals: { diameter: 12, grade, length: 900, count: 1 },
  },
  {
    ties: [
      [500, 500],
      [1500, 700],
    ],
    spacing: 250,
    diameter: 8,
    grade,
    width: 150,
  },
])

const panels = fc
  .record({
    outline,
    openings: fc.array(opening, { maxLength: 3 }),
    spacing: fc.integer({ min: 120, max: 350 }),
    lap: fc.option(fc.integer({ min: 200, max: 900 }), { nil: undefined }),
    steel: more,
  })
  .map(({ outline, openings, spacing, lap, steel }): Panel | null => {
    const mats = (['mould', 'top'] as const).flatMap((layer) =>
      (['x', 'y'] as const).map((direction, i) => ({
        layer,
        direction,
        diameter: 12 - 2 * i,
        grade,
        spacing,
      })),
    )
    const drawing = {
      format: 'castwright.drawing/1',
      mark: 'R',
      outline,
      thickness: 200,
      concrete: { strength: 40, aggregate: 16 },
      cover: { mould: 30, top: 35, edge: EDGE },
      steel: [...mats, ...steel],
      ...(lap === undefined ? {} : { lap: { length: lap } }),
    }
    try {
      return panelOf(
        parseDrawing({ ...drawing, openings: openings.map((ring, i) => ({ mark: `O${i}`, outline: ring })) }),
      )
    } catch (error) {
      if (error instanceof InputError) return null
      throw error
    }
  })
  .filter((panel): panel is Panel => panel !== null)

const planOf = (panel: Panel): SteelPlan => planSteel({ panel, yard, family })
const RUNS = { numRuns: 60 }

/** The bar itself seen from above: corners of its straight parts. */
function bodies({ path, diameter }: PlacedBar): Point[][] {
  const half = diameter / 2
  return path.slice(1).map((b, i): Point[] => {
    const a = path[i] as Point
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    const [nx, ny] = [(-(b[1] - a[1]) / length) * half, ((b[0] - a[0]) / length) * half]
    return [
      [a[0] + nx, a[1] + ny],
      [b[0] + nx, b[1] + ny],
      [b[0] - nx, b[1] - ny],
      [a[0] - nx, a[1] - ny],
    ]
  })
}

/** Least distance from a convex body to the edges of the concrete, mm; below 0 where it is outside or across an edge. */
function coverOf(panel: Panel, body: readonly Point[]): number {
  const sides = edges(body)
  if (!body.every((corner) => covers(panel.region, corner))) return -1
  let least = Number.POSITIVE_INFINITY
  for (const [a, b] of ringsOf(panel.region).flatMap((ring) => edges(ring))) {
    if (sides.some((side) => segmentsMeet(side, [a, b]))) return -1
    for (const side of sides) least = Math.min(least, distanceToSegment(a, side))
    for (const corner of body) least = Math.min(least, distanceToSegment(corner, [a, b]))
  }
  return least
}

describe('random panels with openings, notches and slopes', () => {
  it('no bar lies outside the concrete less its cover, and none through an opening', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        for (const bar of planOf(panel).placed) {
          if (bar.use === 'starter') continue
          for (const body of bodies(bar)) {
            expect(coverOf(panel, body), `${bar.id} ${JSON.stringify(bar.path)}`).toBeGreaterThan(EDGE - 0.05)
          }
        }
      }),
      RUNS,
    )
  })

  it('every bar keeps the covers of both faces', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        for (const { id, centreline, diameter } of planOf(panel).placed) {
          for (const [, , z] of centreline ?? []) {
            const ends = id.startsWith('EH') ? 0 : diameter / 2
            expect(z - ends, id).toBeGreaterThanOrEqual(30 - 1e-6)
            expect(z + ends, id).toBeLessThanOrEqual(200 - 35 + 1e-6)
          }
        }
      }),
      RUNS,
    )
  })

  it('the steel per metre is kept at every section: as many rows as the width asks for', () => {
    fc.assert(
      fc.property(panels, fc.double({ min: 0.02, max: 0.98, noNaN: true }), (panel, part) => {
        const { rules } = { rules: family.steel }
        for (const { mat, rows, key } of plannedMats({ panel, yard, rules })) {
          const across = mat.direction === 'x' ? 1 : 0
          const low = mat.direction === 'x' ? panel.left : panel.bottom
          const size = mat.direction === 'x' ? panel.length : panel.width
          const at = low + part * size
          // Rooms at the section and ten diameters to either side, where pieces too short to hold anything are left out.
          const room = offset(panel.region, -(EDGE + mat.diameter / 2))
          for (const [from, to] of commonSpans(room, mat.direction, at, 10 * mat.diameter)) {
            const crossing = rows.filter(({ cut, line, aside }) =>
              cut.pieces.some((piece, i) => {
                const place = line.at + (aside[i] ?? 0)
                return piece.from <= at && piece.to >= at && place >= from - 13 && place <= to + 13
              }),
            )
            const least = Math.floor((to - from) / mat.spacing - 1e-6)
            expect(crossing.length, `${key} ${across} at ${at}: ${from} to ${to}`).toBeGreaterThanOrEqual(
              least,
            )
          }
        }
      }),
      RUNS,
    )
  })

  it('the clear distance of a mat is the least between any two of its bars that run side by side in neighbouring rows', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        for (const { rows, clear, mat } of plannedMats({ panel, yard, rules: family.steel })) {
          const pieces = rows.flatMap(({ line, cut, aside }) =>
            cut.pieces.map((piece, i) => ({ ...piece, row: line.row, at: line.at + (aside[i] ?? 0) })),
          )
          let least = Number.POSITIVE_INFINITY
          for (const one of pieces)
            for (const other of pieces)
              if (other.row === one.row + 1 && other.from < one.to && other.to > one.from)
                least = Math.min(least, other.at - one.at - mat.diameter)
          expect(clear ?? Number.POSITIVE_INFINITY).toBe(least)
        }
      }),
      RUNS,
    )
  })

  it('no distance between bars of a row or a mat is wider than drawn', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        for (const { id, demand, limit } of planOf(panel).checks) {
          if (id.startsWith('spacing:')) expect(demand, id).toBeLessThanOrEqual((limit ?? 0) + 1e-6)
        }
      }),
      RUNS,
    )
  })

  it('laps are as long as asked, their bars side by side or told', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const plan = planOf(panel)
        const bars = new Map(plan.placed.map((bar) => [bar.id, bar]))
        for (const lap of plan.laps) {
          const axis = lap.direction === 'x' ? 0 : 1
          const [one, other] = lap.bars.map((id) => bars.get(id) as PlacedBar) as [PlacedBar, PlacedBar]
          const over =
            Math.min(one.path[1]?.[axis] ?? 0, other.path[1]?.[axis] ?? 0) -
            Math.max(one.path[0]?.[axis] ?? 0, other.path[0]?.[axis] ?? 0)
          expect(over, lap.id).toBeGreaterThanOrEqual(lap.length - 1e-6)
          const aside = Math.abs((one.path[0]?.[1 - axis] ?? 0) - (other.path[0]?.[1 - axis] ?? 0))
          const told = plan.checks.some(
            ({ id, verdict }) => id === `beside:${lap.mark}` && verdict === 'fail',
          )
          if (!told) expect(aside, lap.id).toBeCloseTo(lap.diameter, 6)
          expect(lap.share).toBeGreaterThan(0)
          expect(lap.share).toBeLessThanOrEqual(100)
        }
        const drawn = panel.drawing.lap?.length
        if (drawn !== undefined) expect(plan.laps.every(({ length }) => length === drawn)).toBe(true)
      }),
      RUNS,
    )
  })

  it('the pieces of a row cover it, each no longer than the stock', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        for (const { rows, lap, stock, mat } of plannedMats({ panel, yard, rules: family.steel })) {
          for (const { line, cut } of rows) {
            let reached = line.from
            for (const [i, piece] of cut.pieces.entries()) {
              if (cut.laps.length > 0) expect(piece.to - piece.from).toBeLessThanOrEqual((stock ?? 0) + 1e-5)
              if (i > 0) expect(reached - piece.from).toBeGreaterThanOrEqual((lap ?? 0) - 1e-6)
              // A piece beside the row's line may end sooner at a slope.
              else expect(piece.from).toBeLessThanOrEqual(line.from + 20 * mat.diameter)
              reached = piece.to
            }
            expect(reached).toBeGreaterThanOrEqual(line.to - 20 * mat.diameter)
          }
        }
      }),
      RUNS,
    )
  })

  it('pairs in the same place are those that trying every pair finds', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const { placed, checks } = planOf(panel)
        const few = placed.slice(-80)
        const names = (pairs: readonly (readonly [string, string])[]) =>
          pairs.map((pair) => [...pair].sort().join(' ')).sort()
        const slow = few.flatMap((one, i) =>
          few.slice(i + 1).flatMap((other) => (meet(one, other) ? [[one.id, other.id] as const] : [])),
        )
        expect(names(clashesOf(few))).toEqual(names(slow))
        const told = checks.find(({ id }) => id === 'same-place')
        expect(told?.demand ?? 0).toBe(clashesOf(placed).length)
      }),
      { numRuns: 25 },
    )
  })
})

describe('bars side by side in random panels', () => {
  it('pairs too near are those that trying every pair finds, and the check counts them', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const { placed, laps, crowded, contacts, checks } = planOf(panel)
        const few = placed.slice(-70)
        const found = besidePairs({ placed: few, laps, asked: () => 21, tied: new Set() })
        const names = (pairs: readonly { readonly bars: readonly string[] }[]) =>
          pairs.map(({ bars }) => [...bars].sort().join(' ')).sort()
        expect(names(found.crowded)).toEqual(everyPair(few, laps, 'crowded'))
        expect(names(found.contacts)).toEqual(everyPair(few, laps, 'contact'))
        // 16 mm aggregate and bars up to 16 mm: 21 mm (EN 1992-1-1:2004 8.2(2)).
        for (const pair of crowded) expect(pair.clear).toBeLessThan(21)
        for (const { clear } of contacts) expect(clear).toBeLessThanOrEqual(2)
        expect(checks.find(({ id }) => id === 'side-by-side')?.demand ?? 0).toBe(crowded.length)
      }),
      { numRuns: 25 },
    )
  })
})

/** Names of all pairs of that kind, rows of one mat and planned laps left out. */
function everyPair(
  bars: readonly PlacedBar[],
  laps: SteelPlan['laps'],
  kind: 'crowded' | 'contact',
): string[] {
  const lapped = new Set(laps.map((lap) => [...lap.bars].sort().join(' ')))
  const found: string[] = []
  for (const [i, one] of bars.entries()) {
    for (const other of bars.slice(i + 1)) {
      const name = [one.id, other.id].sort().join(' ')
      const rows = one.use === 'mat' && other.use === 'mat' && one.height === other.height
      if (rows || lapped.has(name)) continue
      const kinds = straightsOf(one).flatMap((a) =>
        straightsOf(other).map((b) => besideOf({ one: a, other: b, asked: 21 })?.kind),
      )
      const own = kinds.includes('crowded') ? 'crowded' : kinds.includes('contact') ? 'contact' : null
      if (own === kind) found.push(name)
    }
  }
  return found.sort()
}

function meet(one: PlacedBar, other: PlacedBar): boolean {
  const parts = ({ centreline, inside, diameter }: PlacedBar) => {
    const corners = centreline ?? []
    const { straights, bends } = bentLine(corners, inside === null ? 0 : (inside + diameter) / 2)
    const chords = bends().flatMap((arc) => arc.slice(1).map((to, i) => [arc[i] as Corner, to] as const))
    return [...straights, ...chords].map(([from, to]) => ({ from, to }))
  }
  return parts(one).some((a) =>
    parts(other).some(
      (b) => !inLine(a, b) && segmentsApart(a, b) < (one.diameter + other.diameter) / 2 - 0.5,
    ),
  )
}

/** Two parts along one axis of the drawing of which one ends where the other begins. */
function inLine(a: { from: Corner; to: Corner }, b: { from: Corner; to: Corner }): boolean {
  return ([0, 1] as const).some((axis) => {
    const across = axis === 0 ? 1 : 0
    if ([a, b].some(({ from, to }) => from[across] !== to[across] || from[2] !== to[2])) return false
    const [low, high] = [Math.max(a.from[axis], b.from[axis]), Math.min(a.to[axis], b.to[axis])]
    return a.from[axis] < a.to[axis] && b.from[axis] < b.to[axis] && high <= low + 0.5
  })
}

/** Stretches across the bars that lie in the room at a section and at `reach` to either side of it. */
function commonSpans(
  room: ReturnType<typeof offset>,
  direction: 'x' | 'y',
  at: number,
  reach: number,
): [number, number][] {
  const spans = [at - reach, at - reach / 2, at, at + reach / 2, at + reach].map((place) =>
    crossings(room, direction, place),
  )
  return spans.reduce((both, next) =>
    both.flatMap(([low, high]) =>
      next.flatMap(([a, b]): [number, number][] =>
        Math.min(high, b) > Math.max(low, a) ? [[Math.max(low, a), Math.min(high, b)]] : [],
      ),
    ),
  )
}

function crossings(room: ReturnType<typeof offset>, direction: 'x' | 'y', at: number): [number, number][] {
  const [along, across] = direction === 'x' ? [0, 1] : [1, 0]
  const cuts = ringsOf(room)
    .flatMap((ring) => edges(ring))
    .flatMap(([a, b]): number[] => {
      const [s, t] = [a[along as 0] - at, b[along as 0] - at]
      if (s < 0 === t < 0) return []
      return [a[across as 0] + ((b[across as 0] - a[across as 0]) * s) / (s - t)]
    })
    .sort((a, b) => a - b)
  return cuts.flatMap((low, i): [number, number][] => (i % 2 === 0 ? [[low, cuts[i + 1] as number]] : []))
}

describe('drawings that lack something, in every family', () => {
  const GRADES = { nz: '500E', au: '500N', eu: 'B500B', us: '60' } as const
  const size = fc.constantFrom(8, 10, 12.7, 16, 25)
  const length = fc.integer({ min: 10, max: 3000 })
  const place = fc.constantFrom('all', 'outer', 'openings', 'bottom', 'top', 'left', 'right')
  const at = fc.tuple(fc.integer({ min: -500, max: 6000 }), fc.integer({ min: -500, max: 3500 }))
  const layer = fc.constantFrom('mould', 'top')
  const steel = (family: keyof typeof GRADES) => {
    const base = { diameter: size, grade: fc.constant(GRADES[family]) }
    const spacing = fc.integer({ min: 40, max: 500 })
    return fc.array(
      fc.oneof(
        fc.record({ layer, direction: fc.constantFrom('x', 'y'), ...base, spacing }),
        fc.record({ edge: place, form: fc.constant('u'), ...base, spacing, leg: length }),
        fc.record({ edge: place, form: fc.constant('hook'), layer, ...base, spacing, leg: length }),
        fc.record({
          trim: fc.constant('all'),
          layer: fc.constantFrom('mould', 'top', 'both'),
          ...base,
          count: fc.integer({ min: 1, max: 3 }),
          beyond: length,
          diagonals: fc.record({ ...base, length, count: fc.integer({ min: 1, max: 2 }) }),
        }),
        fc.record({ starters: place, layer, ...base, spacing, embed: length, project: length }),
        fc.record({
          starters: fc.tuple(at, at),
          ...base,
          spacing,
          embed: length,
          project: length,
          foot: length,
        }),
        fc.record({ ties: fc.tuple(at, at), ...base, spacing, width: length }),
        fc.record({
          ties: fc.array(at, { minLength: 1, maxLength: 3 }),
          across: fc.constant('y'),
          ...base,
          width: length,
        }),
        fc.record({
          bar: fc.constant('B'),
          ...base,
          layer,
          path: fc.array(at, { minLength: 2, maxLength: 4 }),
        }),
      ),
      { minLength: 1, maxLength: 6 },
    )
  }
  const cases = fc.constantFrom('nz', 'au', 'eu', 'us').chain((id) =>
    fc.record({
      id: fc.constant(id),
      steel: steel(id as keyof typeof GRADES),
      outline,
      openings: fc.array(opening, { maxLength: 2 }),
      thickness: fc.integer({ min: 60, max: 300 }),
      cover: fc.record(
        {
          mould: fc.integer({ min: 15, max: 60 }),
          top: fc.integer({ min: 15, max: 60 }),
          edge: fc.integer({ min: 15, max: 60 }),
        },
        { requiredKeys: [] },
      ),
    }),
  )

  it('are planned without a number that is none, each unknown named, each check’s working true', () => {
    fc.assert(
      fc.property(cases, ({ id, openings, ...rest }) => {
        let panel: Panel
        try {
          const rings = openings.map((ring, i) => ({ mark: `O${i}`, outline: ring }))
          const drawing = {
            format: 'castwright.drawing/1',
            mark: 'R',
            concrete: { strength: 40 },
            openings: rings,
            ...rest,
          }
          panel = panelOf(parseDrawing(JSON.parse(JSON.stringify(drawing))))
        } catch (error) {
          if (error instanceof InputError) return
          throw error
        }
        const plan = planSteel({ panel, yard, family: codeFamily(id as 'nz') })
        expect(
          JSON.stringify(plan, (_, value) =>
            typeof value === 'number' && !Number.isFinite(value) ? 'NOT A NUMBER' : value,
          ),
        ).not.toContain('NOT A NUMBER')
        expect(new Set(plan.placed.map((bar) => bar.id)).size).toBe(plan.placed.length)
        expect(new Set(plan.checks.map((check) => check.id)).size).toBe(plan.checks.length)
        for (const bar of plan.bars) {
          const placed = plan.placed.filter(({ mark }) => mark === bar.mark).length
          if (bar.mark !== 'B' && !bar.mark.startsWith('B-')) expect(placed, bar.mark).toBe(bar.count)
        }
        for (const check of plan.checks) {
          if (check.verdict === 'unknown') expect(check.unknown?.length).toBeGreaterThan(0)
          for (const step of check.working) {
            const value = replay(step)
            if (value === null) continue
            expect(Math.abs(value - Number(step.result)), `${check.id} ${step.symbol}`).toBeLessThanOrEqual(
              1e-6 * Math.max(1, Math.abs(Number(step.result))),
            )
          }
        }
      }),
      { numRuns: 150 },
    )
  })
})
