import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import type { Point, Ring } from '../../panel/point.ts'
import { counterClockwise } from '../../panel/polygon.ts'
import { subtract } from '../../panel/region.ts'
import { type AnchorResistanceInput, anchorResistance } from './anchor-resistance.ts'
import { handlingModes } from './handling-modes.ts'
import { HEAD, nominalOf, rectangle } from './testing.ts'

function rulesOf(code: 'us' | 'eu') {
  const rules = codeFamily(code).lift.anchor
  if (rules == null) throw new Error(`no anchor rules of ${code}`)
  return rules
}

/** Panel 6000 × 3000 × 150 with an edge lifter in the middle of its top edge. */
const OUTLINE: Ring = rectangle(0, 0, 6000, 3000)
const PANEL: AnchorResistanceInput = {
  rules: rulesOf('us'),
  at: [[3000, 3000]],
  region: subtract(OUTLINE, []),
  thickness: 150,
  depth: 300,
  head: HEAD,
  shaft: 20,
  steel: 120,
  strength: 15,
  cracked: false,
  kind: 'edge',
  tension: 20,
}

type Change = Partial<AnchorResistanceInput> & {
  readonly outline?: Ring
  readonly openings?: readonly Ring[]
}

function resistance({ outline = OUTLINE, openings = [], ...change }: Change) {
  return anchorResistance({ ...PANEL, region: subtract(counterClockwise(outline), openings), ...change })
}

function nominal(change: Change, mode = 'breakout'): number {
  const found = resistance(change)
  if (!found.known) throw new Error(found.gaps.join('; '))
  return found.value.modes.find((one) => one.mode === mode)?.nominal ?? Number.NaN
}

const gapsOf = (change: Change): string => {
  const found = resistance(change)
  return found.known ? '' : found.gaps.join('; ')
}

describe('resistance of an insert of a panel', () => {
  // computed, second method: textbook rectangles on the edge's own face.
  it('an edge lifter: cone cut by both faces, 31.730 (us), 31.948 (eu); pitched to a face 13.031, 15.715', () => {
    expect(nominal({})).toBeCloseTo(31.73, 3)
    expect(nominal({ rules: rulesOf('eu') })).toBeCloseTo(31.948, 3)
    const shear = { force: 8, direction: 90 }
    expect(nominal({ shear }, 'edge')).toBeCloseTo(13.031, 3)
    expect(nominal({ shear, rules: rulesOf('eu') }, 'edge')).toBeCloseTo(15.715, 3)
    expect(nominal({ shear: { force: 8, direction: 270 } }, 'edge')).toBeCloseTo(13.031, 3)
  })

  it('400 from the end of its edge: 29.893; the same on each edge of the panel and with the outline the other way', () => {
    const places: Point[] = [
      [400, 3000],
      [5600, 0],
      [0, 400],
      [6000, 2600],
    ]
    for (const place of places) expect(nominal({ at: [place] })).toBeCloseTo(29.893, 2)
    const outline = [...rectangle(0, 0, 6000, 3000)].reverse()
    expect(nominal({ at: [[400, 3000]], outline })).toBeCloseTo(29.893, 2)
  })

  it('a face insert is the case of the verb', () => {
    const at: Point[] = [[150, 1500]]
    const found = nominal({ kind: 'face', at, depth: 100, strength: 20, thickness: 200 })
    const same = { at, depth: 100, thickness: 200, outline: rectangle(0, 0, 6000, 3000) }
    expect(found).toBeCloseTo(nominalOf('us', same, 'breakout'), 9)
  })

  it('an opening beside an edge lifter ends its face, one behind it is the concrete that is there', () => {
    const beside = nominal({ openings: [rectangle(3400, 2800, 4000, 2900)] })
    expect(beside).toBeCloseTo(29.893, 2)
    const behind = { openings: [rectangle(2500, 2000, 3500, 2600)] }
    expect(nominal(behind)).toBeCloseTo(31.73, 3)
    expect(gapsOf({ ...behind, depth: 400 })).toMatch(/depth: below the concrete behind/)
  })

  it('an edge lifter on a slope: the acute end is nearer at its depth', () => {
    const gable: Ring = [
      [0, 0],
      [6000, 0],
      [6000, 2000],
      [3000, 3500],
      [0, 2000],
    ]
    expect(nominal({ outline: gable, at: [[1500, 2750]] })).toBeCloseTo(31.73, 3)
    const wedge: Ring = [
      [0, 0],
      [6000, 0],
      [3000, 3000],
    ]
    expect(nominal({ outline: wedge, at: [[700, 0]] })).toBeLessThan(
      nominal({ outline: wedge, at: [[3000, 0]] }),
    )
  })

  it('the mode of the greatest demand over nominal is named, for the margin of handling', () => {
    const found = anchorResistance(PANEL)
    expect(found.known && found.value.governingNominal).toMatchObject({
      mode: 'breakout',
      demand: 20,
      nominal: expect.closeTo(31.73, 3),
      ratio: expect.closeTo(20 / 31.7297, 5),
    })
  })

  it('what is not given is named and the rest is still known', () => {
    const found = anchorResistance({ ...PANEL, head: null, steel: null })
    expect(found.known && found.value.unknown.join()).toMatch(/steel: .*head.*blowout: head.*splitting/)
    expect(found.known && found.value.verdict).toBe('unknown')
    expect(nominal({ head: null, steel: null })).toBeCloseTo(31.73, 3)
  })

  it.each<[string, Change, RegExp]>([
    ['no insert', { at: [] }, /at least one insert/],
    ['a place that is not finite', { at: [[Number.NaN, 3000]] }, /at\[0\]\.x/],
    ['an edge insert off the edge', { at: [[3000, 2900]] }, /edge/],
    ['an edge insert on a corner', { at: [[0, 3000]] }, /corner/],
    [
      'edge inserts on two edges',
      {
        at: [
          [3000, 3000],
          [0, 1500],
        ],
      },
      /one edge/,
    ],
    [
      'a face insert in an opening',
      { kind: 'face', depth: 100, at: [[3000, 1500]], openings: [rectangle(2900, 1400, 3100, 1600)] },
      /inside the concrete/,
    ],
    ['a face insert on an edge', { kind: 'face', depth: 100 }, /inside the concrete/],
    ['a face insert as deep as the panel', { kind: 'face', at: [[3000, 1500]], depth: 150 }, /depth/],
    [
      'two at one point',
      {
        kind: 'face',
        depth: 100,
        at: [
          [3000, 1500],
          [3000, 1500],
        ],
      },
      /at\[1\]/,
    ],
    ['a strength of 0', { strength: 0 }, /strength/],
    ['a head of 0', { head: 0 }, /head/],
    ['a shank that is not finite', { shaft: Number.POSITIVE_INFINITY }, /shaft/],
    ['a negative tension', { tension: -1 }, /tension/],
  ])('is not known for %s', (_, change, gap) => {
    expect(gapsOf(change)).toMatch(gap)
  })

  it('300 openings round a group still answer, and fast enough for a drag', () => {
    const openings = Array.from({ length: 300 }, (_, k) => {
      const [x, y] = [100 + (k % 20) * 280, 60 + Math.floor(k / 20) * 190]
      return rectangle(x, y, x + 60, y + 60)
    })
    const found = nominal({
      kind: 'face',
      depth: 100,
      openings,
      at: [
        [270, 180],
        [550, 180],
      ],
      shear: { force: 3, direction: null },
    })
    expect(found).toBeGreaterThan(0)
  })
})

describe('modes for the margin of handling', () => {
  const kind = { mark: 'E1', kind: 'edge', depth: 300, head: HEAD, shaft: 20 } as const
  const actions = [
    { angle: 0, load: 20, tension: 0, shear: 20 },
    { angle: 90, load: 18, tension: 17, shear: 4 },
  ]
  const asked = {
    rules: rulesOf('us'),
    region: PANEL.region,
    thickness: 150,
    mark: 'A',
    at: [3000, 3000] as Point,
    others: [[1000, 3000]] as Point[],
    kind,
    cracked: false,
    actions,
  }

  it('greatest demand over all angles, and how each grows with strength', () => {
    const found = handlingModes(asked)
    if (!found.known) throw new Error(found.gaps.join())
    const { at, modes } = found.value
    const of = (name: string) => modes.find(({ mode }) => mode === name)
    expect(of('breakout, tension')).toMatchObject({ demand: 17, law: 'root' })
    expect((of('breakout, tension')?.nominal ?? 0) * Math.sqrt(15 / at)).toBeCloseTo(31.73, 3)
    expect(of('edge, shear')).toMatchObject({ demand: 20, law: 'root' })
    expect((of('edge, shear')?.nominal ?? 0) * Math.sqrt(15 / at)).toBeCloseTo(13.031, 3)
    expect((of('pullout, tension')?.nominal ?? 0) * (15 / at)).toBeCloseTo(92.891, 3)
    expect(of('pullout, tension')?.law).toBe('linear')
    // Not given by the yard: left to the rating.
    expect(modes.some(({ mode }) => /steel|splitting/.test(mode))).toBe(false)
  })

  it.each([
    ['depth', { kind: { ...kind, depth: undefined } }, /A: depth of E1/],
    ['head', { kind: { ...kind, head: undefined } }, /A: head of E1/],
    ['shank under shear', { kind: { ...kind, shaft: undefined } }, /A: edge: shaft/],
    ['room beside it', { others: [[3400, 3000]] as Point[] }, /another insert within 900 mm/],
    ['its edge', { at: [3000, 1500] as Point }, /edge/],
  ])('is not known without %s', (_, change, gap) => {
    const found = handlingModes({ ...asked, ...change })
    expect(found.known ? '' : found.gaps.join()).toMatch(gap)
  })
})
