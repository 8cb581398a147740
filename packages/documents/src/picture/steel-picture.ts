import { type Drawing, isListed, isMat, type Layer, type Point } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { lengthText } from './chain.ts'
import type { Layout } from './layout.ts'
import { basePicture, finishPicture, sizeTitle } from './panel-picture.ts'
import type { Frame, KeyLine, Picture, Shape } from './picture.ts'

type SteelPlan = Plan['steel']

export interface SteelPictureInput {
  readonly drawing: Drawing
  readonly steel: SteelPlan
  readonly frame: Frame
  /** One layer alone; both where missing. */
  readonly layer?: Layer
}

/** Bars of the top layer are drawn this much aside where those of the mould layer would lie under them, units. */
const ASIDE = 2.2

/** Bars where they lie, by layer, with their laps. */
export function steelPicture({ drawing, steel, frame, layer }: SteelPictureInput): Picture {
  const base = basePicture({ drawing, frame })
  const bars = steel.placed.filter((bar) => layer === undefined || bar.layer === layer)
  const shift = new Set(bars.map((bar) => bar.layer)).size > 1 ? ASIDE : 0
  // A lap of bars that have no layer has no place either.
  const laps = steel.laps.filter((lap) => lap.layer !== null && (layer === undefined || lap.layer === layer))
  return finishPicture({
    base,
    inside: [
      ...laps.map((lap) => lapShape(base.layout, lap)),
      ...bars.map(
        (bar): Shape => ({
          kind: 'line',
          role: bar.layer === 'mould' ? 'bar-mould' : 'bar-top',
          points: bar.path.map((point) => aside(base.layout.at(point), bar.layer === 'top' ? shift : 0)),
        }),
      ),
    ],
    title: `${sizeTitle(drawing)}: ${bars.length} bars and ${laps.length} laps where they lie.`,
    key: [
      ...(bars.some((bar) => bar.layer === 'mould')
        ? [{ role: 'bar-mould', text: `near the mould: ${matText(drawing, 'mould')}` } as const]
        : []),
      ...(bars.some((bar) => bar.layer === 'top')
        ? [
            {
              role: 'bar-top',
              text: `near the top${shift > 0 ? ', drawn a little aside' : ''}: ${matText(drawing, 'top')}`,
            } as const,
          ]
        : []),
      ...lapKey(laps),
    ],
  })
}

function aside([x, y]: Point, by: number): Point {
  return [x + by, y - by]
}

function lapShape(layout: Layout, lap: SteelPlan['laps'][number]): Shape {
  const half = lap.length / 2
  const [x, y] = lap.at
  const ends: [Point, Point] =
    lap.direction === 'x'
      ? [
          [x - half, y],
          [x + half, y],
        ]
      : [
          [x, y - half],
          [x, y + half],
        ]
  return { kind: 'line', role: 'lap', points: ends.map(layout.at) }
}

function matText(drawing: Drawing, layer: Layer): string {
  const mats = (drawing.steel ?? []).filter(isMat).filter((mat) => mat.layer === layer)
  const listed = (drawing.steel ?? []).filter(
    (steel) => isListed(steel) && (steel.layer ?? layer) === layer,
  ).length
  return [
    ...mats.map((mat) => `${mat.diameter} mm ${mat.grade} at ${mat.spacing} along ${mat.direction}`),
    ...(listed > 0 ? ['listed bars'] : []),
  ].join(', ')
}

function lapKey(laps: SteelPlan['laps']): KeyLine[] {
  const lengths = [...new Set(laps.map((lap) => lengthText(lap.length)))]
  return lengths.length === 0 ? [] : [{ role: 'lap', text: `laps, ${lengths.join(' and ')} mm` }]
}
