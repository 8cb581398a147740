import {
  type Frame,
  lengthText,
  type Picture,
  panelPicture,
  panelPoint,
  picturePoint,
  textWidth,
  toSvgElements,
} from '@castwright/documents/picture'
import type { StageSupport } from '@castwright/engine/lift'
import type { TrialView } from '@castwright/engine/lift/trial'
import { type Drawing, distanceToEdge, type Point, type Region } from '@castwright/engine/panel'
import { type ReactElement, useEffect, useId, useMemo, useRef, useState } from 'react'
import { fixed } from '../look/index.ts'
import { SvgTree } from '../panel/svg-tree.tsx'
import { bandPath, bandShade } from './band-path.ts'
import { contourLabels } from './contour-labels.ts'
import { InsertHandle } from './insert-handle.tsx'
import { type Box, boxAt, type PlacedLabel, placeLabels } from './load-labels.ts'
import { loadText } from './load-text.ts'

export interface LiftPictureProps {
  readonly drawing: Drawing
  readonly region: Region
  /** Inserts as they are tried, with their places. */
  readonly inserts: readonly { readonly mark: string; readonly kind: 'face' | 'edge'; readonly at: Point }[]
  readonly view: TrialView | null
  /** Places as drawn, shown pale behind those tried; empty where nothing is moved. */
  readonly drawn: readonly Point[]
  readonly onMove: (index: number, wanted: Point) => void
  readonly onLetGo: () => void
}

/** Room above the panel for what names the peak, px. */
const HEAD = 30
const TEXT = 14
/** Half of a handle's circle, px; its target is 48 px. */
const RADIUS = 15
/** Greatest height of the picture below its head, px. */
const MOST_HIGH = 540

/** The panel with its stress as filled contours, supports with loads, and the inserts to be moved. */
export function LiftPicture(props: LiftPictureProps): ReactElement {
  const { drawing } = props
  const box = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(0)
  useEffect(() => {
    const node = box.current
    if (node === null) return
    const watch = new ResizeObserver(() => setWidth(Math.floor(node.clientWidth)))
    watch.observe(node)
    return () => watch.disconnect()
  }, [])
  // Formers and ducts are drawn over the bands.
  const bare = useMemo(() => ({ ...drawing, inserts: [], voids: [], ducts: [] }), [drawing])
  const picture = useMemo(
    () => (width < 80 ? null : panelPicture({ drawing: bare, frame: frameOf(width) })),
    [bare, width],
  )
  return (
    <div ref={box} className="lift-picture">
      {picture === null ? null : <Laid {...props} picture={picture} />}
    </div>
  )
}

function linePath(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('')
}

function frameOf(width: number): Frame {
  return { width, height: width < 500 ? 460 : MOST_HIGH, text: TEXT }
}

function Laid({
  picture,
  drawing,
  region,
  inserts,
  view,
  drawn,
  onMove,
  onLetGo,
}: LiftPictureProps & { readonly picture: Picture }): ReactElement {
  const id = useId().replace(/[^a-zA-Z0-9-]/g, '')
  const paper = useRef<HTMLDivElement>(null)
  const base = useMemo(() => <SvgTree element={toSvgElements(picture, `p${id}`)} />, [picture, id])
  const outline = useMemo(() => ringsPath(region), [region])
  const { scale, origin } = picture
  const toPicture = (at: readonly [number, number]): Point => picturePoint(picture, [at[0], at[1]])
  const spots = inserts.map(({ at }) => toPicture(at))
  const shown = labelsOf({ picture, region, view, spots, inserts, toPicture })
  const bands = view?.field?.bands ?? []
  const matrix = `matrix(${scale} 0 0 ${-scale} ${origin[0]} ${origin[1]})`
  return (
    <div
      ref={paper}
      className="lift-paper"
      style={{ width: picture.width, height: picture.height + HEAD }}
      data-quality={view?.quality ?? 'none'}
    >
      <div className="lift-base">{base}</div>
      <svg
        className="lift-over"
        width={picture.width}
        height={picture.height + HEAD}
        viewBox={`0 ${-HEAD} ${picture.width} ${picture.height + HEAD}`}
        aria-hidden="true"
      >
        <g transform={matrix}>
          {bands.map(({ level, rings }, i) => (
            <path
              key={level}
              className="lift-band"
              style={{
                fill: `color-mix(in srgb, var(--accent) ${bandShade(i, bands.length)}%, var(--sheet))`,
              }}
              d={bandPath(rings)}
              fillRule="evenodd"
            />
          ))}
          <path className="lift-outline" d={outline} />
          {(drawing.voids ?? []).map(({ mark, outline: ring }) => (
            <path key={mark} className="lift-void" d={`${linePath(ring)}Z`} />
          ))}
          {(drawing.ducts ?? []).map(({ mark, line }) => (
            <path key={mark} className="lift-duct" d={linePath(line)} />
          ))}
          {(view?.supports ?? []).flatMap((support) =>
            support.at.length === 2 ? [<LineSupport key={`${support.mark}`} at={support.at} />] : [],
          )}
        </g>
        {drawn.map((at, i) => {
          const [x, y] = toPicture(at)
          return <circle key={inserts[i]?.mark ?? i} className="lift-drawn" cx={x} cy={y} r={RADIUS} />
        })}
        {shown.peak === null ? null : (
          <>
            <path className="lift-leader" d={`M${shown.peak.from.join(' ')}L${shown.peak.at.join(' ')}`} />
            <path className="lift-peak" d={cross(shown.peak.at)} />
            <text
              className="lift-peak-text"
              x={shown.peak.middle}
              y={-HEAD / 2 + 1}
              dominantBaseline="middle"
            >
              {shown.peak.text}
            </text>
          </>
        )}
        {shown.contours.map(({ level, middle: [x, y] }) => (
          <g key={level} className="lift-contour">
            <rect x={x - halfOf(level)} y={y - 9} width={2 * halfOf(level)} height={18} />
            <text x={x} y={y}>
              {level}
            </text>
          </g>
        ))}
        {shown.loads.map(({ text, middle: [x, y], box }) => (
          <g key={`${x} ${y}`} className="lift-load">
            <rect x={box.left} y={box.top} width={box.right - box.left} height={box.bottom - box.top} />
            <text x={x} y={y}>
              {text}
            </text>
          </g>
        ))}
      </svg>
      {inserts.map((insert, i) => {
        const [x, y] = spots[i] ?? [0, 0]
        return (
          <InsertHandle
            key={insert.mark}
            mark={insert.mark}
            at={insert.at}
            x={x}
            y={y + HEAD}
            load={loadOf(view, insert.mark)}
            place={(client) => {
              const seen = paper.current?.getBoundingClientRect()
              if (seen === undefined) return insert.at
              return panelPoint(picture, [client[0] - seen.left, client[1] - seen.top - HEAD])
            }}
            onMove={(wanted) => onMove(i, wanted)}
            onLetGo={onLetGo}
          />
        )
      })}
      <p className="only-read">
        {drawing.mark}: {inserts.length} inserts,{' '}
        {inserts.map(({ mark, at }) => `${mark} at ${lengthText(at[0])}, ${lengthText(at[1])} mm`).join('; ')}
      </p>
    </div>
  )
}

function LineSupport({ at }: { readonly at: readonly Point[] }): ReactElement {
  const [a, b] = at
  return <path className="lift-line" d={`M${a?.join(' ')}L${b?.join(' ')}`} />
}

function ringsPath(region: Region): string {
  return region
    .flatMap(({ outline, holes }) => [outline, ...holes])
    .map((ring) => `M${ring.map(([x, y]) => `${x} ${y}`).join('L')}Z`)
    .join('')
}

function cross([x, y]: Point): string {
  return `M${x - 6} ${y}L${x + 6} ${y}M${x} ${y - 6}L${x} ${y + 6}`
}

function loadOf(view: TrialView | null, mark: string): number | null {
  return view?.supports.find((support) => support.kind === 'insert' && support.mark === mark)?.load ?? null
}

function halfOf(level: number): number {
  return textWidth(String(level), 12) / 2 + 3
}

interface Shown {
  readonly loads: readonly PlacedLabel[]
  readonly contours: readonly { readonly level: number; readonly middle: readonly [number, number] }[]
  readonly peak: {
    readonly text: string
    readonly at: Point
    readonly from: Point
    readonly middle: number
  } | null
}

interface LabelsInput {
  readonly picture: Picture
  readonly region: Region
  readonly view: TrialView | null
  readonly spots: readonly Point[]
  readonly inserts: LiftPictureProps['inserts']
  readonly toPicture: (at: readonly [number, number]) => Point
}

/** What is written on the picture: loads beside the supports, the peak above the panel, and at rest a number on each contour. */
function labelsOf({ picture, region, view, spots, inserts, toPicture }: LabelsInput): Shown {
  if (view === null) return { loads: [], contours: [], peak: null }
  const taken: Box[] = spots.map((spot) => boxAt(spot, [RADIUS + 2, RADIUS + 2]))
  const peak =
    view.peak === null || view.field === null
      ? null
      : peakLabel(picture, view.peak.stress, toPicture(view.peak.at))
  if (peak !== null) taken.push(boxAt(peak.at, [8, 8]))
  const wanted = [
    ...inserts.flatMap(({ mark }, i) => {
      const load = loadOf(view, mark)
      const spot = spots[i]
      return load === null || spot === undefined
        ? []
        : [{ text: loadText(load), at: spot, clear: RADIUS + 3 }]
    }),
    ...view.supports.flatMap((support) => lineLabel(support, toPicture)),
  ]
  const bounds = { left: 0, top: 0, right: picture.width, bottom: picture.height }
  const loads = placeLabels({ wanted, size: TEXT, bounds, taken })
  if (view.quality === 'quick' || view.field === null) return { loads, contours: [], peak }
  const contours = contourLabels({
    bands: view.field.bands,
    toPicture,
    half: [20, 10],
    taken: [...taken, ...loads.map(({ box }) => box)],
    clear: (at) => distanceToEdge(region, panelPoint(picture, [at[0], at[1]])) * picture.scale > 14,
  })
  return { loads, contours, peak }
}

function lineLabel(
  { at, load }: StageSupport,
  toPicture: LabelsInput['toPicture'],
): { readonly text: string; readonly at: Point; readonly clear: number }[] {
  const [a, b] = at
  if (b === undefined || load === null) return []
  const middle = toPicture([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2])
  return [{ text: loadText(load), at: middle, clear: 6 }]
}

function peakLabel(picture: Picture, stress: number, at: Point): NonNullable<Shown['peak']> {
  const text = `peak ${fixed(stress, 2)} MPa`
  const half = textWidth(text, 16) / 2 + 4
  const middle = Math.min(picture.width - half, Math.max(half, at[0] + half * 0.6))
  const from: Point = [Math.min(middle + half, Math.max(middle - half, at[0])), -6]
  return { text, at, from, middle }
}
