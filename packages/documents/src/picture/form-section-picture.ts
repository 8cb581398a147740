import { bowedPlate } from '@castwright/engine/mould'
import type { Point } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { ceilTo } from '@castwright/engine/working'
import { lengthText } from './chain.ts'
import { dimensionShapes } from './dimensions.ts'
import { timesLarger, timesText } from './enlarged.ts'
import { placesAround, setText } from './labels.ts'
import { type Layout, layOut } from './layout.ts'
import type { Frame, KeyLine, Picture, Shape } from './picture.ts'
import { textWidth } from './text-width.ts'

export interface FormSectionInput {
  readonly mark: string
  /** Of the panel, mm. */
  readonly thickness: number
  /** Height of the side form, mm; null where none is chosen. */
  readonly height: number | null
  readonly mould: Plan['mould']
  readonly frame: Frame
}

/** Parts of the depth: how wide the triangle of pressure is drawn, how thick the form, how far the brace runs out. */
const TRIANGLE = 0.6
const FORM = 0.14
const BRACE = 0.75
/** Room over the form for what the brace holds. */
const OVER = 0.3
/** Heights at which pressure is drawn as an arrow, parts of the depth. */
const ARROWS = [0.12, 0.3, 0.48, 0.66, 0.82] as const

/**
 * Section through a side form: the triangle of pressure, its thrust at a third of the depth, what a brace at the top edge holds against turning over,
 * and the plate as it bows, larger. Null where the thrust is not known. Form and brace are drawn where they stand, not as thick as they are.
 */
export function formSectionPicture({
  mark,
  thickness: t,
  height,
  mould,
  frame,
}: FormSectionInput): Picture | null {
  const { pressure, thrust, overturning, brace, weight, plate } = mould
  if (pressure === null || thrust === null || overturning === null || brace === null) return null
  const high = Math.max(height ?? t, t)
  const [left, right] = [-(FORM + BRACE + 0.25) * t, 1.75 * t]
  const layout = layOut({
    outline: [
      [left, 0],
      [right, 0],
      [right, high + OVER * t],
      [left, high + OVER * t],
    ],
    frame,
    chains: {
      right: [
        [0, t / 3, t],
        [0, t],
      ],
      ...(high > t + 0.5 ? { left: [[0, high]] } : {}),
    },
  })
  const dimensions = dimensionShapes(layout)
  const steps = layout.text
  const form = -FORM * t
  const bow = bowShape(layout, t, plate)
  const arrows = ARROWS.map(
    (part): Shape => arrow(layout, [TRIANGLE * t * (1 - part), part * t], [0, part * t]),
  )
  const push: Shape = {
    kind: 'line',
    role: 'picked',
    points: [layout.at([1.05 * t, t / 3]), layout.at([(TRIANGLE * t * 2) / 3, t / 3])],
    arrow: true,
  }
  const words = (text: number): number => text / layout.scale
  const atBed = `${shownKn(pressure, 0.01)} kPa`
  const [labels, notes] = worded(layout, [
    [`${shownKn(thrust, 0.001)} kN/m`, [1.25 * t, t / 3 + words(steps)]],
    [atBed, [TRIANGLE * t + words(textWidth(atBed, steps) / 2 + steps * 0.4), words(steps * 0.9)]],
    [`${shownKn(brace, 0.001)} kN/m`, [form - 0.4 * t, t + words(steps * 1.1)]],
  ])
  return {
    width: layout.width,
    height: layout.height,
    scale: layout.scale,
    ratio: layout.ratio,
    origin: layout.origin,
    shapes: [
      ...body(layout, t, high, right),
      {
        kind: 'polygon',
        role: 'band-2',
        rings: [[layout.at([0, 0]), layout.at([TRIANGLE * t, 0]), layout.at([0, t])]],
      },
      ...arrows,
      push,
      ...braceShapes(layout, t, form),
      ...bow.shapes,
      { kind: 'line', role: 'ground', points: [layout.at([left, 0]), layout.at([right, 0])] },
      ...dimensions,
      ...labels,
    ],
    title: `Panel ${mark}, section through the side form: fresh concrete ${lengthText(t)} mm deep pushes with ${shownKn(pressure, 0.01)} kPa at the bed, ${shownKn(thrust, 0.001)} kN a metre of form at ${lengthText(t / 3)} mm, turning it over about the bed with ${shownKn(overturning, 0.0001)} kN·m a metre.`,
    key: [
      {
        role: 'band-2',
        text: `pressure γ z, γ ${lengthText(weight)} kN/m³, largest at the bed`,
      },
      {
        role: 'picked',
        text: `thrust on a metre of form, at a third of the depth; turns it over about the bed with ${shownKn(overturning, 0.0001)} kN·m/m`,
      },
      {
        role: 'prop',
        text: `props, and a brace at the top of the concrete: what it holds of a metre of form${braceWords(mould)}`,
      },
      ...bow.key,
    ],
    notes,
  }
}

/** Loads rounded up. */
function shownKn(value: number, step: number): string {
  return String(Number(ceilTo(value, step).toPrecision(6)))
}

function braceWords({ sides }: Plan['mould']): string {
  const most = Math.max(0, ...sides.map(({ brace }) => brace))
  return most > 0 ? `; at most ${shownKn(most, 0.01)} kN in one` : ''
}

function body(layout: Layout, t: number, high: number, right: number): Shape[] {
  const tooth = t * 0.05
  const concrete: Point[] = [
    [0, 0],
    [right, 0],
    [right, t * 0.42],
    [right - tooth, t * 0.46],
    [right + tooth, t * 0.54],
    [right, t * 0.58],
    [right, t],
    [0, t],
  ]
  const form: Point[] = [
    [-FORM * t, 0],
    [0, 0],
    [0, high],
    [-FORM * t, high],
  ]
  return [
    { kind: 'polygon', role: 'concrete', rings: [concrete.map(layout.at)] },
    { kind: 'polygon', role: 'form', rings: [form.map(layout.at)], pattern: 'hatch' },
    { kind: 'line', role: 'outline', points: [layout.at([0, t]), layout.at([right, t])] },
  ]
}

function braceShapes(layout: Layout, t: number, form: number): Shape[] {
  const foot: Point = [form - BRACE * t, 0]
  return [
    { kind: 'line', role: 'sling', points: [layout.at([form, t]), layout.at(foot)] },
    { kind: 'circle', role: 'prop', at: layout.at(foot), radius: layout.text * 0.25 },
    { kind: 'circle', role: 'prop', at: layout.at([form, t]), radius: layout.text * 0.25 },
    { kind: 'circle', role: 'prop', at: layout.at([form, 0]), radius: layout.text * 0.25 },
    arrow(layout, [form - 0.42 * t, t], [form - (layout.text * 0.4) / layout.scale, t]),
  ]
}

/** The inside face of the plate as it bows. */
function bowShape(
  layout: Layout,
  t: number,
  plate: Plan['mould']['plate'],
): { readonly shapes: readonly Shape[]; readonly key: readonly KeyLine[] } {
  if (plate === null) return { shapes: [], key: [] }
  const times = timesLarger(plate.bow, FORM * t)
  const points = Array.from({ length: 33 }, (_, k): Point => {
    const up = k / 32
    return layout.at([-plate.bow * times * bowedPlate(plate.held, up), up * t])
  })
  return {
    shapes: [{ kind: 'line', role: 'now', points }],
    key: [
      {
        role: 'now',
        text: `plate of ${lengthText(plate.thickness)} mm as it bows, ${shownKn(plate.bow, 0.001)} mm ${timesText(times)}`,
      },
    ],
  }
}

function arrow(layout: Layout, from: Point, to: Point): Shape {
  return { kind: 'line', role: 'load', points: [layout.at(from), layout.at(to)], arrow: true }
}

function worded(layout: Layout, texts: readonly (readonly [text: string, at: Point])[]): [Shape[], string[]] {
  const shapes: Shape[] = []
  const notes: string[] = []
  for (const [text, at] of texts) {
    const label = { role: 'load', text, size: layout.text, bold: true } as const
    const place = layout.at(at)
    const aside = [0, 0.8, -0.8].map((step): Point => [place[0] + step * layout.text, place[1]])
    const set = setText(layout.labels, label, [...aside, ...placesAround(place, layout.text * 0.2, label)])
    if (set === null) notes.push(text)
    else shapes.push(set)
  }
  return [shapes, notes]
}
