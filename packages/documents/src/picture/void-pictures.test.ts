import { heldDuct, heldVoid } from '@castwright/engine/mould'
import { type Drawing, type Point, parseDrawing, placeInRing, type Ring } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { STEP_IDS } from '@castwright/engine/steps'
import { describe, expect, test } from 'vitest'
import { expectClearLabels } from './clear-labels.ts'
import { examplePlan } from './example-plan.ts'
import { panelPicture } from './panel-picture.ts'
import { type Frame, panelPoint } from './picture.ts'
import { setPicture } from './set-picture.ts'
import { stepPicture } from './step-picture.ts'
import { svgText, toSvgElements } from './svg.ts'
import { voidSection } from './void-section.ts'

const PHONE: Frame = { width: 328, height: 420, text: 13 }
const DESK: Frame = { width: 860, height: 560, text: 14 }
const PAPER: Frame = { width: 500, height: 300, text: 8, paper: 72 / 25.4 }

const box = (x: number, y: number, width: number, height: number): [number, number][] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
]

const DRAWING: Drawing = parseDrawing({
  format: 'castwright.drawing/1',
  mark: 'T9',
  thickness: 260,
  concrete: { strength: 40 },
  outline: box(0, 0, 5200, 2400),
  openings: [{ mark: 'D1', outline: box(500, 0, 700, 900) }],
  voids: [
    { mark: 'V1', outline: box(1700, 1000, 1300, 420), depth: 90, above: 85, density: 20 },
    { mark: 'V2', outline: box(3700, 1300, 900, 420), depth: 60, above: 0, mass: 30 },
  ],
  ducts: [
    {
      mark: 'P1',
      line: [
        [0, 1900],
        [3300, 1900],
        [3300, 0],
      ],
      diameter: 60,
      height: 130,
      mass: 0.6,
    },
  ],
  inserts: [
    { mark: 'A', at: [1500, 700], kind: 'face' },
    { mark: 'B', at: [3700, 700], kind: 'face' },
  ],
})

function heldPlan(): Plan {
  const plan = examplePlan(DRAWING)
  const strap = { rated: 1.2 }
  const found = [
    ...(DRAWING.voids ?? []).map((former) => heldVoid({ former, thickness: DRAWING.thickness, strap })),
  ].flatMap((one) => (one.known ? [one.value] : []))
  const ducts = (DRAWING.ducts ?? [])
    .map((duct) => heldDuct({ duct, strap }))
    .flatMap((one) => (one.known ? [one.value] : []))
  return { ...plan, mould: { ...plan.mould, voids: found, ducts } }
}
const plan = heldPlan()

describe('pictures of a panel with void formers and ducts', () => {
  for (const step of STEP_IDS) {
    test(`${step}: no label meets another or is cut, on phone, desk and paper`, () => {
      for (const frame of [PHONE, DESK, PAPER])
        expectClearLabels(stepPicture({ step, drawing: DRAWING, plan, frame }))
    })
  }

  test('every picture draws them where they are, with their marks', () => {
    const picture = panelPicture({ drawing: DRAWING, frame: DESK })
    const former = picture.shapes.filter(({ role, kind }) => role === 'void' && kind === 'polygon')
    expect(former).toHaveLength(2)
    const [ring] = former.flatMap((shape) => (shape.kind === 'polygon' ? shape.rings : []))
    for (const [i, corner] of (ring ?? []).entries()) {
      const [x, y] = panelPoint(picture, corner)
      const [wx, wy] = DRAWING.voids?.[0]?.outline[i] ?? [0, 0]
      expect(Math.hypot(x - wx, y - wy)).toBeLessThan(1e-6)
    }
    const words = picture.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))
    expect(words).toEqual(expect.arrayContaining(['V1', 'V2', 'P1, 60 mm']))
    expect(picture.key.map(({ role }) => role)).toEqual(['void', 'duct'])
  })

  test('straps lie across the former that floats, none over the one on the bed, ties on the duct', () => {
    const picture = setPicture({ drawing: DRAWING, mould: plan.mould, frame: DESK })
    const straps = picture.shapes.filter(({ role, kind }) => role === 'strap' && kind === 'line')
    const ties = picture.shapes.filter(({ role, kind }) => role === 'strap' && kind === 'circle')
    expect(straps).toHaveLength(plan.mould.voids[0]?.straps ?? -1)
    expect(ties).toHaveLength(plan.mould.ducts[0]?.ties ?? -1)
    const ring = DRAWING.voids?.[0]?.outline as unknown as Ring
    for (const strap of straps) {
      if (strap.kind !== 'line') continue
      const [a, b] = strap.points.map((point) => panelPoint(picture, point)) as [Point, Point]
      expect(placeInRing([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], ring)).toBe('inside')
    }
    expect(picture.key.find(({ role }) => role === 'strap')?.text).toMatch(/straps over V1.*ties of P1/)
  })

  test.each([0, 1])('section across former %i, labels clear, on phone, desk and paper', (which) => {
    const held = plan.mould.voids[which]
    if (held === undefined) throw new Error('no former')
    for (const frame of [PHONE, DESK, PAPER]) {
      const picture = voidSection({ drawing: DRAWING, held, frame: { ...frame, height: 260 } })
      expectClearLabels(picture)
      expect(picture.shapes.filter(({ role }) => role === 'measure')).toHaveLength(held.floats ? 1 : 0)
    }
  })

  test('golden: set, and the section', async () => {
    const held = plan.mould.voids[0]
    if (held === undefined) throw new Error('no former')
    await expect(
      svgText(toSvgElements(stepPicture({ step: 'set', drawing: DRAWING, plan, frame: PHONE }))),
    ).toMatchFileSnapshot('golden/T9-set.golden.svg')
    await expect(
      svgText(toSvgElements(voidSection({ drawing: DRAWING, held, frame: { ...PHONE, height: 220 } }))),
    ).toMatchFileSnapshot('golden/T9-void-section.golden.svg')
  })
})
