import { instantsOf } from '@castwright/engine/yard'
import type { TimeForm } from './logger-map.ts'

/** Day and clock as written, without a zone. */
interface Written {
  readonly year: number
  readonly month: number
  readonly day: number
  readonly hour: number
  readonly minute: number
  readonly second: number
}

/**
 * The instant of a written time, ms since 1970; null where it is none, or where the clocks skip it. A local time that comes twice in autumn is the first
 * one, unless that lies before `after` and the second does not.
 */
export function instantOf(
  text: string,
  as: Exclude<TimeForm, 'hours'>,
  { zone, after }: { readonly zone: string; readonly after: number | null },
): number | null {
  if (as === 'instant') {
    const found = /\d{4}-\d\d-\d\d[T ]\d\d:\d\d(:\d\d(\.\d+)?)?\s*(Z|[+-]\d\d:?\d\d)$/i.test(text)
      ? Date.parse(text.replace(' ', 'T').replace(/\s+/g, ''))
      : Number.NaN
    return Number.isNaN(found) ? null : found
  }
  const written = writtenOf(text, as)
  if (written === null) return null
  const { year, month, day, hour, minute, second } = written
  const asUtc = Date.UTC(year, month - 1, day, hour, minute, second)
  const back = new Date(asUtc)
  if (back.getUTCMonth() !== month - 1 || back.getUTCDate() !== day || hour > 23) return null
  const candidates = instantsOf(asUtc, zone)
  return candidates.find((candidate) => after === null || candidate > after) ?? candidates[0] ?? null
}

const CLOCK = /(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*([ap]\.?m\.?)?\s*$/i

function writtenOf(text: string, as: Exclude<TimeForm, 'hours' | 'instant'>): Written | null {
  const clock = CLOCK.exec(text)
  if (clock === null) return null
  const parts = text
    .slice(0, clock.index)
    .split(/[^\d]+/)
    .filter((part) => part !== '')
    .map(Number)
  if (parts.length !== 3) return null
  const [a = 0, b = 0, c = 0] = parts
  const [year, month, day] = as === 'year first' ? [a, b, c] : as === 'day first' ? [c, b, a] : [c, a, b]
  const half = clock[4]?.[0]?.toLowerCase()
  const typed = Number(clock[1])
  const hour = half === undefined ? typed : (typed % 12) + (half === 'p' ? 12 : 0)
  const [minute, second] = [Number(clock[2]), Number(clock[3] ?? 0)]
  const full = year < 100 ? 2000 + year : year
  if (month < 1 || month > 12 || day < 1 || day > 31 || minute > 59 || second > 59) return null
  if (half !== undefined && (typed < 1 || typed > 12)) return null
  return { year: full, month, day, hour, minute, second }
}
