import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Corner, PlacedBar } from '../steel-plan.ts'
import { besidePairs } from './beside-pairs.ts'
import { besideOf, crowdedMoves, SHORTEST } from './side-by-side.ts'
import { type Straight, straightOf } from './straights.ts'

const ASKED = 21

const straight = (from: Corner, to: Corner, diameter = 12, id = ''): Straight =>
  straightOf(id, from, to, diameter) as Straight

/** A bar along x at a place across and a height. */
const along = (y: number, z: number, diameter = 12, from = 0, to = 3000): Straight =>
  straight([from, y, z], [to, y, z], diameter)

const beside = (one: Straight, other: Straight) => besideOf({ one, other, asked: ASKED })

describe('two bars side by side', () => {
  it.each([
    // Computed, second method: clear = middle to middle less one bar of 12 mm.
    ['clear as asked', 12 + 21, null],
    ['a tenth of a millimetre short', 12 + 20.9, 'crowded'],
    ['just out of contact', 12 + 2.1, 'crowded'],
    ['drawn together by wire', 12 + 1.9, 'contact'],
    ['touching', 12, 'contact'],
    ['in the same place', 11, null],
  ] as const)('%s', (_, apart, kind) => {
    expect(beside(along(0, 36), along(apart, 36))?.kind ?? null).toBe(kind)
    expect(beside(along(apart, 36), along(0, 36))?.kind ?? null).toBe(kind)
  })

  it('tells how much is clear, over what length and where', () => {
    const found = beside(along(0, 36), along(22, 36, 12, 1000, 5000))
    expect(found).toMatchObject({ kind: 'crowded', clear: 10, length: 2000 })
    expect(found?.at).toEqual([2000, 11, 36])
  })

  it('one over the other counts as one beside the other', () => {
    // Computed, second method: 16 mm over 10 mm with another bar of 10 mm between, 13 + 10 mm up and 5 mm aside.
    const found = beside(along(0, 35, 10), along(5, 58, 16))
    expect(found?.kind).toBe('crowded')
    expect(found?.clear).toBeCloseTo(Math.hypot(5, 23) - 13, 9)
  })

  it('ten bars of length or less are a crossing', () => {
    expect(beside(along(0, 36), along(22, 36, 12, 2880, 5000))).toBeNull()
    expect(beside(along(0, 36), along(22, 36, 12, 2879, 5000))?.kind).toBe('crowded')
    // Of the thinner of the two.
    expect(beside(along(0, 36), along(22, 36, 8, 2919, 5000))?.kind).toBe('crowded')
  })

  it('bars that turn away by more than five degrees do not run side by side', () => {
    const turned = (degrees: number) => {
      const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
      return straight([0, 20, 36], [3000 * cosine, 20 + 3000 * sine, 36])
    }
    expect(beside(along(0, 36), turned(5.1))).toBeNull()
    expect(beside(along(0, 36), turned(1))?.kind).toBe('crowded')
  })

  it('the moves that crowd a bar are those that each place tells', () => {
    const bar = fc.record({
      y: fc.double({ min: -80, max: 80, noNaN: true }),
      z: fc.double({ min: 20, max: 80, noNaN: true }),
      from: fc.integer({ min: -2000, max: 2900 }),
      length: fc.integer({ min: 50, max: 3000 }),
      diameter: fc.constantFrom(8, 12, 16, 25),
    })
    fc.assert(
      fc.property(
        bar,
        fc.double({ min: -60, max: 60, noNaN: true }),
        ({ y, z, from, length, diameter }, by) => {
          const [one, other] = [along(0, 36), along(y, z, diameter, from, from + length)]
          const moves = crowdedMoves({ one, other, asked: ASKED }, [0, 1, 0])
          const edge = (moves ?? []).flat().some((at) => Math.abs(at - by) < 1e-6)
          fc.pre(!edge)
          const moved = beside(along(by, 36), other)
          expect((moves ?? []).some(([low, high]) => by > low && by < high)).toBe(moved?.kind === 'crowded')
        },
      ),
      { numRuns: 500 },
    )
  })
})

const placed = (id: string, path: readonly Corner[], use: PlacedBar['use'], diameter = 12): PlacedBar => ({
  id,
  mark: id.split('#')[0] as string,
  use,
  layer: 'mould',
  diameter,
  path: path.map(([x, y]) => [x, y] as const),
  height: path.every((corner) => corner[2] === path[0]?.[2]) ? (path[0]?.[2] ?? null) : null,
  centreline: path,
  inside: null,
})

const pairs = (bars: readonly PlacedBar[], more: Partial<Parameters<typeof besidePairs>[0]> = {}) =>
  besidePairs({ placed: bars, laps: [], asked: () => ASKED, tied: new Set(), ...more })

describe('pairs of a cage', () => {
  const row = (id: string, y: number) =>
    placed(
      id,
      [
        [0, y, 36],
        [3000, y, 36],
      ],
      'mat',
    )
  const bar = (id: string, y: number, use: PlacedBar['use']) => ({ ...row(id, y), use })

  it('rows of one mat are left to its own check', () => {
    expect(pairs([row('MX1#1', 0), row('MX1#2', 20)]).crowded).toEqual([])
  })

  it('the bars of a planned lap may touch, a bar beside them may not be near', () => {
    const bars = [bar('A/1#1', 0, 'listed'), bar('A/2#1', 12, 'listed'), bar('T#1', 30, 'trimmer')]
    const found = pairs(bars, { laps: [{ bars: ['A/1#1', 'A/2#1'] }] })
    expect(found.crowded.map((pair) => pair.bars)).toEqual([
      ['A/2#1', 'T#1'],
      ['A/1#1', 'T#1'],
    ])
  })

  it('a listed bar in contact is a fault until the drawing says that it is tied', () => {
    const bars = [row('MX1#1', 0), bar('L#1', 12, 'listed')]
    expect(pairs(bars).crowded[0]).toMatchObject({ marks: ['MX1', 'L'], inContact: true })
    const tied = pairs(bars, { tied: new Set(['L']) })
    expect(tied).toMatchObject({ crowded: [], contacts: [{ marks: ['MX1', 'L'] }] })
  })

  it('the worst stands first', () => {
    const bars = [row('MX1#1', 0), bar('A#1', 30, 'trimmer'), bar('B#1', -20, 'trimmer')]
    expect(pairs(bars).crowded.map(({ marks }) => marks[1])).toEqual(['B', 'A'])
  })

  it('of random bars any way round, those that walking along every pair finds', () => {
    const flat = fc
      .record({
        x: fc.integer({ min: 0, max: 1500 }),
        y: fc.integer({ min: 0, max: 250 }),
        z: fc.constantFrom(36, 48, 60),
        length: fc.integer({ min: 100, max: 1500 }),
        degrees: fc.constantFrom(0, 0, 0, 2, 4, 90, 90, 45, 92, 180),
        diameter: fc.constantFrom(8, 12, 16),
      })
      .map(({ x, y, z, length, degrees, diameter }) => {
        const turn = (degrees * Math.PI) / 180
        const to: Corner = [x + length * Math.cos(turn), y + length * Math.sin(turn), z]
        return { path: [[x, y, z], to] as readonly Corner[], diameter }
      })
    fc.assert(
      fc.property(fc.array(flat, { minLength: 2, maxLength: 25 }), (bars) => {
        const all = bars.map(({ path, diameter }, i) => placed(`B${i}#1`, path, 'trimmer', diameter))
        const found = pairs(all)
        const kinds = new Map<string, string>()
        for (const kind of ['crowded', 'contacts'] as const)
          for (const pair of found[kind]) kinds.set([...pair.bars].sort().join(' '), kind)
        for (const [i, one] of all.entries())
          for (const other of all.slice(i + 1)) {
            const told = kinds.get([one.id, other.id].sort().join(' ')) ?? null
            const walked = walk(one, other)
            if (walked !== 'at an edge') expect(told, `${one.id} ${other.id}`).toBe(walked)
          }
      }),
      { numRuns: 300 },
    )
  })
})

/** A second way: from millimetre to millimetre along the thinner-stepped direction, how near the other bar's line is, square to the middle direction. */
function walk(one: PlacedBar, other: PlacedBar): 'crowded' | 'contacts' | 'at an edge' | null {
  const [a, b] = [one.centreline as readonly [Corner, Corner], other.centreline as readonly [Corner, Corner]]
  const angle = ([from, to]: readonly [Corner, Corner]) => Math.atan2(to[1] - from[1], to[0] - from[0])
  let turn = angle(b) - angle(a)
  while (turn > Math.PI / 2) turn -= Math.PI
  while (turn < -Math.PI / 2) turn += Math.PI
  if (Math.abs(turn) > (5 * Math.PI) / 180) return null
  const middle = angle(a) + turn / 2
  const [ux, uy] = [Math.cos(middle), Math.sin(middle)]
  const place = ([x, y]: Corner) => x * ux + y * uy
  const ends = (line: readonly [Corner, Corner]) => [place(line[0]), place(line[1])].sort((p, q) => p - q)
  const [[aLow, aHigh], [bLow, bHigh]] = [ends(a), ends(b)] as [[number, number], [number, number]]
  const [low, high] = [Math.max(aLow, bLow), Math.min(aHigh, bHigh)]
  const aside = (line: readonly [Corner, Corner], at: number) => {
    const [p, q] = [place(line[0]), place(line[1])]
    const part = (at - p) / (q - p)
    const [x, y] = [0, 1].map((axis) => {
      const [from, to] = [line[0][axis as 0], line[1][axis as 0]]
      return from + part * (to - from)
    }) as [number, number]
    return -x * uy + y * ux
  }
  const bars = (one.diameter + other.diameter) / 2
  const shortest = SHORTEST * Math.min(one.diameter, other.diameter)
  const step = 0.5
  let [crowded, contact, through] = [0, 0, false]
  let nearEdge = Math.abs(high - low - shortest) < 2
  for (let at = low + step / 2; at < high; at += step) {
    const apart = Math.hypot(aside(a, at) - aside(b, at), a[0][2] - b[0][2]) - bars
    if (
      Math.abs(apart + 0.5) < 0.02 ||
      (turn === 0 && [2, ASKED].some((edge) => Math.abs(apart - edge) < 0.01))
    )
      nearEdge = true
    if (apart < -0.5) through = true
    else if (apart <= 2) contact += step
    else if (apart < ASKED) crowded += step
  }
  if (high - low <= shortest - 2) return null
  if ([crowded, contact].some((length) => Math.abs(length - shortest) < 3)) nearEdge = true
  if (nearEdge) return 'at an edge'
  if (through) return null
  if (crowded > shortest) return 'crowded'
  return contact > shortest ? 'contacts' : null
}
