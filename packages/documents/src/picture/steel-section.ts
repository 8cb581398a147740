import type { Drawing, Point } from '@castwright/engine/panel'
import type { BesidePair, SteelPlan } from '@castwright/engine/steel'
import { lengthText } from './chain.ts'
import { dimensionShapes } from './dimensions.ts'
import { boxAround, setText, take } from './labels.ts'
import { type Layout, layOut } from './layout.ts'
import { distinct } from './panel-picture.ts'
import type { Frame, Picture, Shape } from './picture.ts'
import {
  type Cut,
  cutAt,
  cutThrough,
  type Disc,
  type Lying,
  nearestLying,
  nearestStanding,
  onEnd,
  type Standing,
} from './steel-section-cut.ts'

export interface SteelSectionInput {
  readonly drawing: Drawing
  readonly steel: Pick<SteelPlan, 'placed'>
  readonly frame: Frame
  /** Cut parallel to this axis: what runs across it is seen on end. */
  readonly along: 'x' | 'y'
  /** Two bars side by side: the cut goes through the middle of where they are near, and both are marked and measured. */
  readonly pair?: ShownPair
}

export interface ShownPair extends BesidePair {
  /** Neither clear nor in contact and tied. */
  readonly isFault: boolean
}

/** Of the frame's height that the thickness takes at most. */
const SHARE = 0.5
const LEAST_LENGTH = 280
/**
 * Section through the thickness at an edge of the panel, to scale: bars on end as discs, the nearest bar of each layer that runs along
 * it; cover, bars and gaps measured from the mould face, which is below. Null where no cover is given: no bar has a height.
 */
export function steelSection({ drawing, steel, frame, along, pair }: SteelSectionInput): Picture | null {
  const placed = steel.placed.filter(({ centreline }) => centreline !== null)
  if (placed.length === 0) return null
  const { thickness } = drawing
  const wanted = Math.max(LEAST_LENGTH, (frame.width * 0.7 * thickness) / (SHARE * frame.height))
  const cut =
    pair === undefined
      ? cutAt(drawing, along, wanted)
      : cutThrough(drawing, along, [pair.at[0], pair.at[1]], wanted)
  const discs = placed.flatMap((bar) => onEnd(bar, along, cut))
  const lying = nearestLying(placed, along, cut)
  const standing = nearestStanding(placed, along, cut)
  const outline: Point[] = [
    [cut.from, 0],
    [cut.to, 0],
    [cut.to, thickness],
    [cut.from, thickness],
  ]
  const heights = heightChain([...discs, ...lying], thickness)
  const layout = layOut({
    outline,
    frame,
    chains: {
      right: [heights],
      left: [[0, thickness]],
      bottom: pair === undefined ? edgeChain(cut, discs, lying) : pairChain(pair, discs),
    },
  })
  const dimensions = dimensionShapes(layout)
  const names = nameBars(layout, lying, discs)
  return {
    width: layout.width,
    height: layout.height,
    scale: layout.scale,
    ratio: layout.ratio,
    origin: layout.origin,
    shapes: [
      ...drawn(layout, cut, thickness, { lying, standing, discs }, pair),
      ...dimensions,
      ...names.shapes,
    ],
    title: `Panel ${drawing.mark}, section along ${along} at ${along === 'x' ? 'y' : 'x'} = ${lengthText(cut.at)} mm, mould face below: ${heightWords(heights)}. ${pair === undefined ? '' : `${pairWords(pair)}. `}${barWords([...lying, ...discs])}.`,
    key: [
      ...(pair === undefined ? [] : [{ role: pairRole(pair), text: pairWords(pair) }]),
      { role: 'peak', text: `bars across ${along}, cut` },
      {
        role: 'timber',
        text: `nearest bars along ${along}${standing.length > 0 ? `, and ${standing.map(({ mark }) => mark).join(', ')}` : ''}; each bar with its middle above the mould face`,
      },
    ],
    notes: names.notes,
  }
}

/** Concrete and steel in turn from the mould face up: bars that lie on each other are one. */
function heightChain(
  bars: readonly { readonly z: number; readonly diameter: number }[],
  thickness: number,
): number[] {
  const chain: [number, number][] = []
  const sorted = bars.map(({ z, diameter }): [number, number] => [z - diameter / 2, z + diameter / 2])
  for (const [low, high] of sorted.sort((a, b) => a[0] - b[0])) {
    const last = chain.at(-1)
    if (last !== undefined && low <= last[1] + 0.5) last[1] = Math.max(last[1], high)
    else chain.push([low, high])
  }
  return distinct([0, thickness, ...chain.flat()].filter((z) => z >= 0 && z <= thickness))
}

/** Concrete to the first bar end, then middles of the lowest bars on end. */
function edgeChain({ from, to }: Cut, discs: readonly Disc[], lying: readonly Lying[]): number[][] {
  const lowest = Math.min(...discs.map(({ z }) => z))
  const middles = discs.filter(({ z }) => z - lowest < 1).map(({ s }) => s)
  const chain = distinct([from, ...middles])
  const end = Math.min(...lying.map((bar) => bar.from))
  return [
    ...(Number.isFinite(end) && end > from + 0.5 && end < to ? [[from, end]] : []),
    ...(chain.length > 1 ? [chain] : []),
  ]
}

/** The bars of a pair in the cut, in order along it. */
function pairDiscs({ bars }: BesidePair, discs: readonly Disc[]): Disc[] {
  return discs.filter(({ id }) => bars.includes(id)).sort((a, b) => a.s - b.s)
}

/** From the one to the other where concrete lies between them along the cut, else their middles. */
function pairChain(pair: BesidePair, discs: readonly Disc[]): number[][] {
  const [one, other] = pairDiscs(pair, discs)
  if (one === undefined || other === undefined) return []
  const sides = [one.s + one.diameter / 2, other.s - other.diameter / 2] as const
  const chain = sides[1] - sides[0] > 1 ? [...sides] : [one.s, other.s]
  return (chain[1] ?? 0) - (chain[0] ?? 0) > 0.5 ? [chain] : []
}

function pairWords({ marks, clear, asked, inContact }: BesidePair): string {
  const found = inContact ? 'in contact' : `${lengthText(clear)} mm clear`
  return `${marks.join(' and ')}: ${found}${asked > 0 ? `, ${lengthText(asked)} mm asked` : ''}`
}

function pairRole({ isFault }: ShownPair): 'defect' | 'picked' {
  return isFault ? 'defect' : 'picked'
}

/** One end of the section, broken where the panel goes on; from the mould face up. */
function endOf(s: number, isBroken: boolean, thickness: number): Point[] {
  const tooth = thickness * 0.06
  return isBroken
    ? [
        [s, 0],
        [s, thickness * 0.42],
        [s - tooth, thickness * 0.46],
        [s + tooth, thickness * 0.54],
        [s, thickness * 0.58],
        [s, thickness],
      ]
    : [
        [s, 0],
        [s, thickness],
      ]
}

function drawn(
  layout: Layout,
  { from, to, goesOn, beganBefore }: Cut,
  thickness: number,
  { lying, standing, discs }: SectionBars,
  pair?: ShownPair,
): Shape[] {
  const [corner, ...left] = endOf(from, beganBefore, thickness) as [Point, ...Point[]]
  const ring = [corner, ...endOf(to, goesOn, thickness), ...left.reverse()].map(layout.at)
  return [
    { kind: 'polygon', role: 'concrete', rings: [ring] },
    ...lying.map(
      (bar): Shape => ({
        kind: 'polygon',
        role: 'timber',
        rings: [
          (
            [
              [bar.from, bar.z - bar.diameter / 2],
              [bar.to, bar.z - bar.diameter / 2],
              [bar.to, bar.z + bar.diameter / 2],
              [bar.from, bar.z + bar.diameter / 2],
            ] as Point[]
          ).map(layout.at),
        ],
      }),
    ),
    ...standing.flatMap((bar) => standingShapes(layout, bar)),
    ...(pair === undefined ? [] : pairRings(layout, pair, discs)),
    ...discs.map(
      (disc): Shape => ({
        kind: 'circle',
        role: 'peak',
        at: layout.at([disc.s, disc.z]),
        radius: (disc.diameter / 2) * layout.scale,
      }),
    ),
    { kind: 'polygon', role: 'outline', rings: [ring] },
  ]
}

/** A ring around each bar of a pair. */
function pairRings(layout: Layout, pair: ShownPair, discs: readonly Disc[]): Shape[] {
  return pairDiscs(pair, discs).map(
    ({ s, z, diameter }): Shape => ({
      kind: 'circle',
      role: pairRole(pair),
      at: layout.at([s, z]),
      radius: (diameter / 2) * layout.scale + PAIR_RIM,
    }),
  )
}

/** Room between a bar of the pair and the ring around it, units. */
const PAIR_RIM = 2.5

interface SectionBars {
  readonly lying: readonly Lying[]
  readonly standing: readonly Standing[]
  readonly discs: readonly Disc[]
}

/** Each straight of a standing bar as thick as it is. */
function standingShapes(layout: Layout, { corners, diameter }: Standing): Shape[] {
  const half = diameter / 2
  return corners.slice(1).flatMap((b, i): Shape[] => {
    const a = corners[i] as Point
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (length < 0.5) return []
    const [ux, uz] = [((b[0] - a[0]) / length) * half, ((b[1] - a[1]) / length) * half]
    const ring: Point[] = [
      [a[0] - ux - uz, a[1] - uz + ux],
      [b[0] + ux - uz, b[1] + uz + ux],
      [b[0] + ux + uz, b[1] + uz - ux],
      [a[0] - ux + uz, a[1] - uz - ux],
    ]
    return [{ kind: 'polygon', role: 'timber', rings: [ring.map(layout.at)] }]
  })
}

/** Size and height of each layer's bar, beside it in the concrete. */
function nameBars(
  layout: Layout,
  lying: readonly Lying[],
  discs: readonly Disc[],
): { readonly shapes: readonly Shape[]; readonly notes: readonly string[] } {
  const labels = { ...layout.labels, taken: [...layout.labels.taken] }
  const half = (diameter: number): number => (diameter / 2) * layout.scale
  for (const { from, to, z, diameter } of lying) {
    const [[left, y], [right]] = [layout.at([from, z]), layout.at([to, z])]
    take(labels, { left, right, top: y - half(diameter), bottom: y + half(diameter) })
  }
  for (const { s, z, diameter } of discs) take(labels, boxAround(layout.at([s, z]), half(diameter)))
  const { left, right, top, bottom } = layout.panel
  for (const y of [top, bottom]) take(labels, { left, right, top: y - 1, bottom: y + 1 })
  take(labels, { left: left - layout.text, right: left + 2, top, bottom })
  const goesOn = layout.text * 1.2
  take(labels, { left: right - goesOn, right: right + goesOn, top, bottom })
  const shapes: Shape[] = []
  const notes: string[] = []
  for (const bar of onePerHeight([...lying, ...discs])) {
    const text = barWord(bar)
    const label = { role: 'label', text, size: layout.text } as const
    const set = setText(labels, label, beside(layout, bar))
    if (set === null) notes.push(text)
    else shapes.push(set)
  }
  return { shapes, notes }
}

/** Places over and under a bar: of one on end around it, of one that lies along it. */
function* beside(layout: Layout, bar: Named): Generator<Point> {
  const away = (bar.diameter / 2) * layout.scale + layout.text * 0.75
  for (const place of 's' in bar
    ? [bar.s]
    : [0.62, 0.38, 0.8, 0.5].map((part) => bar.from + part * (bar.to - bar.from))) {
    const [x, y] = layout.at([place, bar.z])
    for (const aside of 's' in bar ? [0, -3.2, 3.2] : [0]) {
      yield [x + aside * layout.text, y + away]
      yield [x + aside * layout.text, y - away]
    }
    if ('s' in bar) yield [x - away - layout.text * 2.8, y]
  }
}

type Named = Lying | Disc

/** Bars of one size and height once: the last of those on end, since the edge is crowded. */
function onePerHeight(bars: readonly Named[]): Named[] {
  const found = new Map(bars.map((bar) => [barWord(bar), bar]))
  return [...found.values()].sort((a, b) => a.z - b.z)
}

function barWord({ z, diameter }: Pick<Named, 'z' | 'diameter'>): string {
  return `${lengthText(diameter)} mm at ${lengthText(z)}`
}

function barWords(bars: readonly Named[]): string {
  return `Bars: ${onePerHeight(bars).map(barWord).join(', ')}`
}

/** The chain of heights in words, for those who hear the picture. */
function heightWords(heights: readonly number[]): string {
  const parts = heights.slice(1).map((z, i) => lengthText(z - (heights[i] ?? 0)))
  return `${parts.join(', ')} mm from the mould face to the top`
}
