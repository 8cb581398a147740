import type { BedDay, DayBlock, DayCurve } from './bed-day.ts'
import type { DayWindow } from './day-window.ts'
import { type LaneLabel, type PlacedLabel, placeLabels, textWidth } from './text-lanes.ts'

/** Measures of a row in the picture, px. */
export const ROW = { height: 124, lane: 20, lanes: 2, top: 44, bottom: 112, text: 15, small: 14 } as const

export interface DrawnBlock extends DayBlock {
  readonly x: number
  readonly width: number
  /** Words that fit inside, largest first line bold; empty where none fit. */
  readonly lines: readonly string[]
}

export interface DrawnCurve {
  readonly curve: DayCurve
  readonly line: string
  readonly band: string | null
  readonly wantedY: number | null
  readonly from: number
  readonly to: number
  readonly metX: number | null
}

export interface DrawnRow {
  readonly blocks: readonly DrawnBlock[]
  readonly curves: readonly DrawnCurve[]
  readonly labels: readonly PlacedLabel[]
}

export interface RowFrame {
  readonly window: DayWindow
  /** px of 05:00 and of the next 05:00. */
  readonly left: number
  readonly right: number
  readonly clock: (at: number) => string
  /** px of the line of now, which no word crosses; null where it is not in the picture. */
  readonly nowX: number | null
}

export const WORK: Readonly<Record<DayBlock['kind'], string>> = {
  set: 'Set',
  pour: 'Pour',
  finish: 'Float',
  strip: 'Strip',
}

/** x of an instant, px. */
export function xOf(
  at: number,
  { window, left, right }: Pick<RowFrame, 'window' | 'left' | 'right'>,
): number {
  return left + ((at - window.from) / (window.to - window.from)) * (right - left)
}

/** Where everything of a row stands, so that no two words meet. */
export function drawRow(row: BedDay, frame: RowFrame): DrawnRow {
  const blocks = row.blocks.map((block) => drawBlock(block, frame))
  const curves = row.curves.map((curve) => drawCurve(curve, row.curves, frame))
  const labels = placeLabels(
    [
      ...blocks.flatMap((block) => blockLabels(block, frame)),
      ...curves.flatMap((curve) => curveLabels(curve, frame)),
    ],
    { lanes: ROW.lanes, left: frame.left, right: frame.right, taken: nowIn(frame) },
  )
  return { blocks, curves, labels }
}

function nowIn({ nowX }: RowFrame): { readonly lane: number; readonly from: number; readonly to: number }[] {
  if (nowX === null) return []
  return Array.from({ length: ROW.lanes }, (_, lane) => ({ lane, from: nowX - 2, to: nowX + 2 }))
}

function drawBlock(block: DayBlock, frame: RowFrame): DrawnBlock {
  const x = Math.max(frame.left, xOf(block.from, frame))
  const width = Math.max(3, Math.min(frame.right, xOf(block.to, frame)) - x)
  return { ...block, x, width, lines: linesInside(block, width) }
}

/** Name and mark inside where they fit with room to spare. */
function linesInside(block: DayBlock, width: number): readonly string[] {
  if (block.kind === 'finish') return [] // dots and words do not go together
  const room = width - 12
  const volume = block.volume === null ? [] : [`${block.volume.toFixed(1)} m³`]
  const choices = [
    [`${WORK[block.kind]} ${block.panel.mark}`, ...volume],
    [WORK[block.kind], block.panel.mark, ...volume],
    [WORK[block.kind], block.panel.mark],
  ]
  return (
    choices.find((lines) =>
      lines.every((line, index) => textWidth(line, index === 0 ? ROW.text : ROW.small, index === 0) <= room),
    ) ?? []
  )
}

function blockLabels(block: DrawnBlock, { clock }: RowFrame): LaneLabel[] {
  const key = `${block.panel.job}/${block.panel.mark} ${block.kind}`
  if (block.kind === 'finish') {
    const text = `float ${clock(block.from)} to ${clock(block.to)}`
    return [{ key, text, x: block.x, size: ROW.small, bold: true, rank: block.done ? 4 : 1 }]
  }
  if (block.lines.length > 0) return []
  return [{ key, text: `${WORK[block.kind]} ${block.panel.mark}`, x: block.x, size: ROW.small, rank: 2 }]
}

function curveLabels({ curve, metX, from }: DrawnCurve, { clock }: RowFrame): LaneLabel[] {
  const key = `${curve.panel.job}/${curve.panel.mark} cure`
  const wanted = curve.wanted === null ? '' : `, ${strengthText(curve.wanted)} wanted`
  if (metX === null || curve.met === null) {
    return [
      {
        key,
        text: `${curve.panel.mark} curing${wanted}`,
        short: `${curve.panel.mark} curing`,
        x: from,
        size: ROW.small,
        rank: 3,
      },
    ]
  }
  const text = `${curve.panel.mark}: ${clock(curve.met)} low edge at ${strengthText(curve.wanted)}`
  return [
    {
      key,
      text,
      short: `${curve.panel.mark}: ${clock(curve.met)}`,
      x: metX + 10,
      endsAt: metX - 10,
      size: ROW.small,
      bold: true,
      rank: 0,
    },
  ]
}

function strengthText(strength: number | null): string {
  return strength === null ? 'a strength not known' : `${Math.ceil(strength * 10 - 1e-9) / 10} MPa`
}

function drawCurve(curve: DayCurve, all: readonly DayCurve[], frame: RowFrame): DrawnCurve {
  const most = Math.max(
    ...all.flatMap((one) => [one.wanted ?? 0, ...one.points.map((p) => p.high ?? p.strength)]),
    1,
  )
  const y = (strength: number): number =>
    ROW.bottom - (Math.max(0, strength) / (most * 1.05)) * (ROW.bottom - ROW.top)
  const at = (time: number, strength: number): string => `${round(xOf(time, frame))} ${round(y(strength))}`
  const banded = curve.points.every(({ low, high }) => low !== null && high !== null)
  const high = curve.points.map((point) => at(point.at, point.high ?? point.strength))
  const low = curve.points.map((point) => at(point.at, point.low ?? point.strength)).reverse()
  return {
    curve,
    line: `M${curve.points.map((point) => at(point.at, point.strength)).join('L')}`,
    band: banded ? `M${[...high, ...low].join('L')}Z` : null,
    wantedY: curve.wanted === null ? null : round(y(curve.wanted)),
    from: round(xOf(curve.points[0]?.at ?? frame.window.from, frame)),
    to: round(xOf(curve.points.at(-1)?.at ?? frame.window.to, frame)),
    metX: curve.met === null ? null : round(xOf(curve.met, frame)),
  }
}

function round(value: number): number {
  return Math.round(value * 10) / 10
}
