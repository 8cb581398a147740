import type { Ring } from '../../panel/point.ts'
import type { LappedLine, Piece } from '../lapped-line.ts'
import type { BarLine } from '../mat-lines.ts'
import type { Obstacle } from './clear-rows.ts'
import { lapPlaces, type Stretch } from './lap-places.ts'
import { lapShares } from './lap-share.ts'
import { openingZones } from './opening-zones.ts'

/** A row of a mat as it is cut and laid. */
export interface LaidRow {
  readonly line: BarLine
  readonly cut: LappedLine
  /** How far each piece lies beside the row's line so that the bars of a lap lie side by side, mm; 0 for most. */
  readonly aside: readonly number[]
  /** Bars lapped at the section of each lap, percent. */
  readonly shares: readonly number[]
  /** Pieces for which there is no room beside the one that they lap with. */
  readonly crowded: number
}

export interface LappedRows {
  readonly rows: readonly LaidRow[]
  /** Rows longer than the stock that could not be lapped. */
  readonly unlapped: number
  readonly laps: number
  /** Greatest share lapped at one section, percent; null without laps. */
  readonly share: number | null
  /** Least clear between bars of neighbouring rows, mm; null with one row. */
  readonly clear: number | null
}

export interface LappedRowsInput {
  /** In order of their rows. */
  readonly lines: readonly BarLine[]
  readonly direction: 'x' | 'y'
  readonly diameter: number
  readonly openings: readonly Ring[]
  /** Where a bar at a place across its direction has its cover. */
  readonly spansAt: (at: number) => readonly Stretch[]
  /** mm; null: no row is cut. */
  readonly stock: number | null
  /** mm; null where not known. */
  readonly lap: number | null
  /** How far from the middle of a lap others count to its section, in laps. */
  readonly section: number
  /** What bars keep clear of where they can, grown by half a bar. */
  readonly obstacles: readonly Obstacle[]
}

/** Rows of a mat cut to stock: laps staggered from row to row and clear of openings, the bars of a lap side by side. */
export function lappedRows(input: LappedRowsInput): LappedRows {
  const { lines, stock, lap, section } = input
  const cuts = cutRows(input)
  const shares =
    lap === null
      ? cuts.map((): number[] => [])
      : lapShares(
          lines.map(({ from, to }, i) => ({ from, to, laps: cuts[i]?.laps ?? [] })),
          section * lap,
        )
  let [unlapped, laps] = [0, 0]
  let share: number | null = null
  const rows = lines.map((line, i): LaidRow => {
    const cut = cuts[i]
    if (cut === undefined || cut === null) {
      unlapped += 1
      const whole = { pieces: [{ from: line.from, to: line.to }], laps: [] }
      return { line, cut: whole, aside: [0], shares: [], crowded: 0 }
    }
    laps += cut.laps.length
    for (const each of shares[i] ?? []) share = Math.max(share ?? 0, each)
    return { line, ...besides(cut, line.at, input), shares: shares[i] ?? [] }
  })
  return {
    rows,
    unlapped: stock === null ? 0 : unlapped,
    laps,
    share,
    clear: leastClear(rows, input.diameter),
  }
}

/** How each line is cut; null where it is longer than the stock and no lap can be built. */
function cutRows({ lines, direction, openings, stock, lap }: LappedRowsInput): (LappedLine | null)[] {
  const known = new Map<string, LappedLine | null>()
  const lapsOf = new Map<number, number[]>()
  return lines.map((line) => {
    const { row, at, from, to } = line
    const whole: LappedLine = { pieces: [{ from, to }], laps: [] }
    if (stock === null || to - from <= stock) return whole
    if (lap === null) return null
    const zones = openingZones({ openings, direction, at, lap })
    const avoid = zones.filter(([low, high]) => high > from && low < to)
    const beside = lapsOf.get(row - 1) ?? []
    const before = lapsOf.get(row - 2) ?? []
    const key = [from, to, '|', ...avoid.flat(), '|', ...beside, '|', ...before].join(' ')
    let cut = known.get(key)
    if (cut === undefined) {
      cut = lapPlaces({ from, to, stock, lap, avoid, beside, before })
      known.set(key, cut)
    }
    if (cut !== null) lapsOf.set(row, [...(lapsOf.get(row) ?? []), ...cut.laps])
    return cut
  })
}

/** Every other piece of a lapped row lies one bar beside the line: to the side where it has its cover. */
function besides(
  cut: LappedLine,
  at: number,
  { diameter, spansAt, obstacles }: LappedRowsInput,
): Pick<LaidRow, 'cut' | 'aside' | 'crowded'> {
  if (cut.pieces.length < 2) return { cut, aside: [0], crowded: 0 }
  const sides = [diameter, -diameter].map((by) => besideBy(cut, at, by, spansAt(at + by), obstacles))
  const [best] = sides.sort((a, b) => a.crowded - b.crowded || a.short - b.short)
  const { pieces, aside, crowded } = best as (typeof sides)[number]
  return { cut: { ...cut, pieces }, aside, crowded }
}

/** At a sloping edge a piece beside the line ends sooner by so much at most, in diameters, or there is no room for it. */
const MOST_SHORT = 20

function besideBy(
  cut: LappedLine,
  line: number,
  by: number,
  spans: readonly Stretch[],
  obstacles: readonly Obstacle[],
) {
  const at = line + by
  const onWay = obstacles.filter(({ low, high }) => at > low + 1e-6 && at < high - 1e-6)
  let [crowded, short] = [0, 0]
  const aside: number[] = []
  const last = cut.pieces.length - 1
  const pieces = cut.pieces.map((piece, i): Piece => {
    if (i % 2 === 0) {
      aside.push(0)
      return piece
    }
    const span = spans.find(([low, high]) => low < piece.to && high > piece.from)
    const from = Math.max(piece.from, span?.[0] ?? piece.to)
    const to = Math.min(piece.to, span?.[1] ?? piece.from)
    const lost = Math.max(from - piece.from, 0) + Math.max(piece.to - to, 0)
    const atLap = (i > 0 && from > piece.from + 1e-6) || (i < last && to < piece.to - 1e-6)
    const through = onWay.some((each) => piece.from < each.to && piece.to > each.from)
    if (span === undefined || atLap || through || lost > MOST_SHORT * Math.abs(by)) {
      crowded += 1
      aside.push(0)
      return piece
    }
    short += lost
    aside.push(by)
    return { from, to }
  })
  return { pieces, aside, crowded, short }
}

/** Least clear between bars of neighbouring rows where both run, mm; null with one row. */
function leastClear(rows: readonly LaidRow[], diameter: number): number | null {
  let least: number | null = null
  let first = 0
  for (const [i, row] of rows.entries()) {
    while ((rows[first] as LaidRow).line.row < row.line.row - 1) first += 1
    for (let j = first; j < i; j += 1) {
      const other = rows[j] as LaidRow
      if (other.line.row !== row.line.row - 1) continue
      const clear = clearBetween(other, row) - diameter
      if (Number.isFinite(clear) && (least === null || clear < least)) least = clear
    }
  }
  return least
}

function clearBetween(a: LaidRow, b: LaidRow): number {
  let least = Number.POSITIVE_INFINITY
  for (const [i, one] of a.cut.pieces.entries()) {
    for (const [j, other] of b.cut.pieces.entries()) {
      if (Math.min(one.to, other.to) <= Math.max(one.from, other.from)) continue
      const apart = b.line.at + (b.aside[j] ?? 0) - (a.line.at + (a.aside[i] ?? 0))
      least = Math.min(least, apart)
    }
  }
  return least
}
