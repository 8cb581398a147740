import type { LiftStageId, StageSupport } from '@castwright/engine/lift'
import { parseDrawing } from '@castwright/engine/panel'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { expectClearLabels } from './clear-labels.ts'
import { DOOR_AND_WINDOW, EXAMPLE_DRAWINGS } from './example-drawings.ts'
import { exampleLift } from './example-lift.ts'
import { hangingPicture } from './hanging-picture.ts'
import { type HourRow, hoursPicture } from './hours-picture.ts'
import { type Frame, type Picture, picturePoint } from './picture.ts'
import { sketchOf, stagesPicture } from './stages-picture.ts'
import { peakWords, stressPicture } from './stress-picture.ts'
import { svgText, toSvgElements } from './svg.ts'

const PHONE: Frame = { width: 328, height: 420, text: 13 }
const DESK: Frame = { width: 860, height: 560, text: 14 }
const PAPER: Frame = { width: 500, height: 300, text: 8, paper: 72 / 25.4 }
const FRAMES = [PHONE, DESK, PAPER]

const START = Date.UTC(2026, 4, 12, 5)
const HOUR = 3_600_000
const clock = (instant: number): string => new Date(instant).toISOString().slice(11, 16)
const when = (instant: number): string =>
  instant < START + 19 * HOUR ? clock(instant) : `13 May, ${clock(instant)}`
const ROWS: readonly HourRow[] = [
  { name: 'Insert E, 27 kN', from: START + 5.4 * HOUR, governs: true },
  { name: 'Tension while it is turned about its bottom edge', from: START + 4.2 * HOUR },
  { name: 'Tension off the mould', from: START - HOUR },
  { name: 'Bars at the corner of D1', from: null, words: 'not known: no bar drawn across' },
  { name: 'Insert B', from: START + 30 * HOUR },
]

function texts(picture: Picture): string[] {
  return picture.shapes.flatMap((shape) =>
    shape.kind === 'text' ? [shape.text] : shape.kind === 'circle' && shape.letter ? [shape.letter] : [],
  )
}

function hours(rows: readonly HourRow[], frame: Frame): Picture {
  return hoursPicture({
    rows,
    now: START + 6 * HOUR,
    start: START,
    end: START + 9 * HOUR,
    clock,
    when,
    frame,
  })
}

for (const drawing of EXAMPLE_DRAWINGS) {
  const lift = exampleLift(drawing)
  const stress = (frame: Frame, part: 'supports' | 'timbers'): Picture =>
    stressPicture({
      drawing,
      supports: lift[part],
      peak: lift.peak,
      field: lift.field,
      name: 'Leaves the mould',
      selected: drawing.inserts?.[0]?.mark ?? null,
      frame,
    })
  const hanging = (frame: Frame, hang: 'flat' | 'row'): Picture =>
    hangingPicture({
      drawing,
      rigged: lift.rigged.picks.length === 0 ? null : lift.rigged,
      hang,
      rigging: 'R4',
      centre: lift.centre,
      frame,
    })

  describe(`${drawing.mark} while it is lifted`, () => {
    test('no label meets another or is cut, on phone, desk and paper', () => {
      for (const frame of FRAMES) {
        for (const picture of [
          stress(frame, 'supports'),
          stress(frame, 'timbers'),
          hanging(frame, 'flat'),
          hanging(frame, 'row'),
        ]) {
          expectClearLabels(picture)
          expect(picture.width).toBe(frame.width)
          expect(picture.height).toBeLessThanOrEqual(frame.height + 1e-6)
        }
      }
    })

    test('golden: tension, hanging', async () => {
      for (const [name, picture] of [
        ['stress', stress(PHONE, 'supports')],
        ['timbers', stress(DESK, 'timbers')],
        ['hanging', hanging(PHONE, 'flat')],
        ['upright', hanging(PHONE, 'row')],
      ] as const) {
        await expect(svgText(toSvgElements(picture))).toMatchFileSnapshot(
          `golden/${drawing.mark}-${name}.golden.svg`,
        )
      }
    })
  })
}

describe('tension picture', () => {
  const drawing = DOOR_AND_WINDOW
  const lift = exampleLift(drawing)
  const of = (change: Partial<Parameters<typeof stressPicture>[0]>): Picture =>
    stressPicture({
      drawing,
      supports: lift.supports,
      peak: lift.peak,
      field: lift.field,
      name: 'Leaves the mould',
      frame: DESK,
      ...change,
    })

  test('loads are rounded up, what is not known says so', () => {
    const said = texts(of({}))
    expect(said).toContain('17.3 kN')
    expect(said).toContain('not known')
  })

  test('the peak carries its value rounded up, its face, the width that it is averaged over and where', () => {
    expect(peakWords({ peak: lift.peak })).toBe(
      'peak 0.82 MPa, top face, averaged over a strip of 1500 mm at A',
    )
    expect(peakWords({ peak: { ...lift.peak, of: 'plate', width: 0 } })).toBe(
      'peak 0.82 MPa, top face, the panel’s own value there',
    )
    expect(peakWords({ peak: { ...lift.peak, of: 'corner', width: 150 } })).toContain(
      'averaged over 150 mm at a corner',
    )
    expect(peakWords({ peak: null, unknown: ['rigging: the drawing names none'] })).toBe(
      'Peak tension not known: rigging: the drawing names none',
    )
  })

  test('each band is told by its number, in the legend and where there is room on its line', () => {
    const said = texts(of({}))
    for (const level of [0.1, 0.2, 0.35, 0.45, 0.6, 0.8]) {
      expect(said.filter((text) => text === String(level)).length).toBeGreaterThanOrEqual(1)
    }
    expect(said.filter((text) => text === '0.1').length).toBeGreaterThanOrEqual(2)
  })

  test('without a field the legend says why, and nothing is shaded', () => {
    const picture = of({ field: null, peak: null, unknown: ['mould face: not given'] })
    expect(picture.shapes.some(({ role }) => role.startsWith('band'))).toBe(false)
    expect(picture.title).toContain('not known: mould face: not given')
  })

  test('the insert that is moved has its ring, and stands where it is on the panel', () => {
    const picture = of({ selected: 'B' })
    const ring = picture.shapes.find(({ role }) => role === 'picked')
    expect(ring?.kind === 'circle' ? ring.at : null).toEqual(picturePoint(picture, [5400, 2550]))
  })

  test('an insert that carries nothing has no load beside it', () => {
    const picture = of({ supports: lift.supports.slice(0, 3) })
    expect(picture.key.map(({ role }) => role)).toContain('unused')
  })
})

describe('hanging picture', () => {
  test('says angles, height and how it hangs in words, rounded to the steep side', () => {
    const drawing = DOOR_AND_WINDOW
    const lift = exampleLift(drawing)
    const { title } = hangingPicture({
      drawing,
      rigged: lift.rigged,
      hang: 'flat',
      rigging: 'R4',
      centre: lift.centre,
      frame: DESK,
    })
    // A at 500, 2550 is 2712 mm from the hook, which hangs 3500 above: atan(2712 / 3500) = 37.8°.
    expect(title).toContain('Legs up to 38° from the vertical')
    expect(title).toContain('Hook at least 3500 mm above the picks')
    expect(title).toContain('0.3° out of level')
  })

  test('without a rigging it says what is missing', () => {
    const { title } = hangingPicture({
      drawing: DOOR_AND_WINDOW,
      rigged: null,
      hang: 'row',
      rigging: null,
      centre: [3000, 1500],
      unknown: ['rigging: the drawing names none'],
      frame: PHONE,
    })
    expect(title).toContain('Rigging not known: rigging: the drawing names none.')
  })
})

describe('stages picture', () => {
  const stages = (
    [
      ['hoisted', 'Leaves the mould'],
      ['turned', 'Turned about its edge'],
      ['hanging', 'Hangs upright'],
      ['lying', 'Stored'],
      ['leaning', 'Stored, leaning'],
      ['carried', 'On the trailer'],
    ] as const
  ).map(([sketch, name]) => ({ sketch, name, words: 'tension 82 % of its limit: passes' }))

  test('no label meets another or is cut; none at all is an empty picture', () => {
    for (const frame of FRAMES) {
      expectClearLabels(stagesPicture({ stages, frame }))
      expect(stagesPicture({ stages: [], frame }).shapes).toEqual([])
    }
  })

  test('golden: phone and desk', async () => {
    for (const [name, frame] of [
      ['phone', PHONE],
      ['desk', DESK],
    ] as const) {
      await expect(svgText(toSvgElements(stagesPicture({ stages, frame })))).toMatchFileSnapshot(
        `golden/stages-${name}.golden.svg`,
      )
    }
  })

  test('each stage has its own sketch', () => {
    const insert = { mark: 'A', kind: 'insert', at: [[0, 0]], load: null } as const
    const edge = { mark: 'edge 1', kind: 'edge', at: [[0, 0]], load: null } as const
    const of = (id: LiftStageId, angle: number, supports: readonly StageSupport[], how = ''): string =>
      sketchOf({ id, angle, supports, how })
    expect(of('release', 0, [insert])).toBe('hoisted')
    expect(of('release', 0, [insert, edge])).toBe('turned')
    expect(of('turn', 0, [])).toBe('turned')
    expect(of('hang', 90, [])).toBe('hanging')
    expect(of('store', 0, [])).toBe('lying')
    expect(of('store', 82, [edge])).toBe('leaning')
    expect(of('travel', 0, [])).toBe('carried')
    expect(of('erect', 0, [insert])).toBe('hoisted')
  })
})

describe('hours picture', () => {
  test('no label meets another or is cut, however many conditions', () => {
    for (const frame of FRAMES) {
      expectClearLabels(hours(ROWS, frame))
      expectClearLabels(hours([], frame))
      expectClearLabels(
        hours(
          ROWS.flatMap((row) => [row, row, row]),
          frame,
        ),
      )
    }
  })

  test('golden: phone and desk', async () => {
    await expect(svgText(toSvgElements(hours(ROWS, PHONE)))).toMatchFileSnapshot(
      'golden/hours-phone.golden.svg',
    )
    await expect(svgText(toSvgElements(hours(ROWS, DESK)))).toMatchFileSnapshot(
      'golden/hours-desk.golden.svg',
    )
  })

  test('a bar begins at its hour; what is not known or comes later has none', () => {
    const picture = hours(ROWS, DESK)
    const bars = picture.shapes.filter(({ role }) => role === 'met')
    expect(bars).toHaveLength(3)
    expect(picture.title).toContain('Insert E, 27 kN, from 10:24')
    expect(picture.title).toContain('not known: no bar drawn across')
  })
})

describe('any panel and any rigging', () => {
  const drawn = fc
    .record({
      length: fc.integer({ min: 400, max: 15_000 }),
      width: fc.integer({ min: 400, max: 6000 }),
      inserts: fc.array(
        fc.record({
          x: fc.double({ min: 0, max: 1, noNaN: true }),
          y: fc.double({ min: 0, max: 1, noNaN: true }),
          mark: fc.string({ minLength: 0, maxLength: 20 }),
        }),
        { maxLength: 12 },
      ),
    })
    .map(({ length, width, inserts }) =>
      parseDrawing({
        format: 'castwright.drawing/1',
        mark: 'P',
        thickness: 150,
        concrete: { strength: 40 },
        outline: [
          [0, 0],
          [length, 0],
          [length, width],
          [0, width],
        ],
        inserts: inserts.map(({ x, y, mark }, i) => ({
          mark: `${i}${mark}`,
          at: [x * length, y * width],
          kind: 'face',
        })),
      }),
    )

  test('no label meets another or is cut (seed 20261125)', () => {
    fc.assert(
      fc.property(
        drawn,
        fc.integer({ min: 300, max: 1300 }),
        fc.constantFrom('flat' as const, 'row' as const),
        fc.boolean(),
        (drawing, width, hang, timbers) => {
          const lift = exampleLift(drawing)
          const frame = { width, height: 480, text: 13 }
          const rigged = lift.rigged.picks.length === 0 ? null : lift.rigged
          expectClearLabels(
            stressPicture({
              drawing,
              supports: timbers ? lift.timbers : lift.supports,
              peak: lift.peak,
              field: lift.field,
              name: 'Leaves the mould',
              frame,
            }),
          )
          expectClearLabels(
            hangingPicture({ drawing, rigged, hang, rigging: 'R', centre: lift.centre, frame }),
          )
        },
      ),
      { seed: 20_261_125, numRuns: 100 },
    )
  })

  test('hours: no label meets another or is cut, whatever the names (seed 7)', () => {
    const row = fc.record({
      name: fc.string({ minLength: 1, maxLength: 80 }),
      from: fc.option(fc.integer({ min: -10, max: 60 }).map((hours) => START + hours * HOUR)),
    })
    fc.assert(
      fc.property(
        fc.array(row, { maxLength: 10 }),
        fc.integer({ min: 300, max: 1300 }),
        fc.integer({ min: 1, max: 200 }),
        fc.integer({ min: -5, max: 90 }),
        (rows, width, span, now) => {
          expectClearLabels(
            hoursPicture({
              rows,
              now: START + now * HOUR,
              start: START,
              end: START + span * HOUR,
              clock,
              when,
              frame: { width, height: 480, text: 13 },
            }),
          )
        },
      ),
      { seed: 7, numRuns: 100 },
    )
  })
})
