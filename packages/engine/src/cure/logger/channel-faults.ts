import { COLDEST_READING, HOTTEST_READING } from '../readings.ts'
import { between } from './log-faults.ts'
import { median } from './median.ts'
import type { LogFault, LogRow } from './raw-log.ts'

/** Neighbours each side of a reading that it is held against. */
const AROUND = 3
/** Away from its neighbours by so much a reading is a spike, K; and by so many times their own scatter. */
const SPIKE = 4
const SPIKE_SCATTER = 6
/** Standard deviation of normal scatter over its median absolute deviation. */
const MAD = 1.4826
/** From one reading to the next a concrete does not change by so much within so long, K and h. */
const JUMP = 8
const JUMP_WITHIN = 0.5
/** Two channels changed places where going straight on costs so many K more than crossing, and crossing is so small a part. */
const SWAP = 6
const SWAP_PART = 0.25
/** A channel stands still from so many readings on over so many hours, while another moves by so many K. */
const STANDS_ROWS = 24
const STANDS_HOURS = 6
const STANDS_OTHER = 3

interface Point {
  readonly row: LogRow
  readonly value: number
}

function pointsOf(rows: readonly LogRow[], channel: number): Point[] {
  return rows.flatMap((row) => {
    const value = row.celsius[channel]
    return typeof value === 'number' && value >= COLDEST_READING && value <= HOTTEST_READING
      ? [{ row, value }]
      : []
  })
}

/** Readings far from the line through their neighbours, which a slope or a step that stays is not. */
export function spikes(rows: readonly LogRow[], channel: number, name: string): LogFault[] {
  const points = pointsOf(rows, channel)
  const away = points.map((_, index) => awayFromNeighbours(points, index))
  const known = away.filter((each): each is number => each !== null)
  if (known.length === 0) return []
  const least = Math.max(SPIKE, SPIKE_SCATTER * MAD * median(known.map(Math.abs)))
  return points.flatMap(({ row, value }, index): LogFault[] => {
    const off = away[index] ?? null
    if (off === null || Math.abs(off) <= least || belongsToASide(points, index, Math.abs(off))) return []
    const text = `${name} reads ${value} °C, ${Math.abs(off).toFixed(1)} K from the readings around it.`
    return [between('spike', channel, row, row, text)]
  })
}

/** A reading less the middle of what pairs of neighbours, one each side, say for it, K; null near the ends. */
function awayFromNeighbours(points: readonly Point[], index: number): number | null {
  const pairs: number[] = []
  for (let step = 1; step <= AROUND; step += 1) {
    const [before, after] = [points[index - step], points[index + step]]
    if (before === undefined || after === undefined) return null
    pairs.push((before.value + after.value) / 2)
  }
  return (points[index] as Point).value - median(pairs)
}

/** Beside a step that stays a reading is at home on one side of it. */
function belongsToASide(points: readonly Point[], index: number, away: number): boolean {
  const value = (points[index] as Point).value
  const sides = [points.slice(index - AROUND, index), points.slice(index + 1, index + 1 + AROUND)]
  return sides.some((side) => Math.abs(value - median(side.map((point) => point.value))) < away / 3)
}

/** Steps that stay: a probe that was pulled, or put into another place. */
export function jumps(
  rows: readonly LogRow[],
  channel: number,
  name: string,
  usual: number | null,
): LogFault[] {
  const spiky = new Set(spikes(rows, channel, name).map(({ rows: [row] }) => row))
  const points = pointsOf(rows, channel).filter(({ row }) => !spiky.has(row.row))
  return points.slice(1).flatMap(({ row, value }, index): LogFault[] => {
    const before = points[index] as Point
    const within = row.hours - before.row.hours
    const change = value - before.value
    if (Math.abs(change) <= JUMP || within > Math.max(JUMP_WITHIN, 2 * (usual ?? 0))) return []
    const text = `${name} goes from ${before.value} to ${value} °C in ${Math.round(within * 60)} min and stays: was the probe moved?`
    return [between('jump', channel, before.row, row, text)]
  })
}

/** Channels that changed places from one row to the next. */
export function swaps(rows: readonly LogRow[], channels: readonly string[]): LogFault[] {
  const faults: LogFault[] = []
  for (let a = 0; a < channels.length; a += 1) {
    for (let b = a + 1; b < channels.length; b += 1) {
      for (let at = 1; at < rows.length; at += 1) {
        const [before, row] = [rows[at - 1] as LogRow, rows[at] as LogRow]
        const [a0, b0, a1, b1] = [before.celsius[a], before.celsius[b], row.celsius[a], row.celsius[b]]
        if (a0 == null || b0 == null || a1 == null || b1 == null) continue
        const straight = Math.abs(a1 - a0) + Math.abs(b1 - b0)
        const crossed = Math.abs(a1 - b0) + Math.abs(b1 - a0)
        if (straight - crossed <= SWAP || crossed > SWAP_PART * straight) continue
        const text = `${channels[a]} and ${channels[b]} change places here: were the plugs changed?`
        faults.push(between('swapped', a, before, row, text))
      }
    }
  }
  return faults
}

/** A channel that gives one value for hours while another moves. */
export function standing(rows: readonly LogRow[], channel: number, name: string): LogFault[] {
  const points = pointsOf(rows, channel)
  const faults: LogFault[] = []
  let start = 0
  for (let at = 1; at <= points.length; at += 1) {
    if (points[at]?.value === points[start]?.value) continue
    const [first, last] = [points[start], points[at - 1]]
    if (first !== undefined && last !== undefined && at - start >= STANDS_ROWS) {
      const long = last.row.hours - first.row.hours
      if (long >= STANDS_HOURS && othersMove(rows, channel, first.row, last.row)) {
        const text = `${name} stands at ${first.value} °C for ${long.toFixed(1)} h while another channel moves.`
        faults.push(between('stands', channel, first.row, last.row, text))
      }
    }
    start = at
  }
  return faults
}

function othersMove(rows: readonly LogRow[], channel: number, from: LogRow, to: LogRow): boolean {
  const within = rows.filter(({ hours }) => hours >= from.hours && hours <= to.hours)
  return from.celsius.some((_, other) => {
    if (other === channel) return false
    const values = pointsOf(within, other).map(({ value }) => value)
    return values.length > 1 && Math.max(...values) - Math.min(...values) >= STANDS_OTHER
  })
}
