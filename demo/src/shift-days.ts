import { type Entry, entryHash } from '@castwright/record'
import { DEMO_ZONE } from './calendar.ts'
import { daysLater } from './local-time.ts'

const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/
const DAY = /^\d{4}-\d{2}-\d{2}$/
const HOUR = 3_600_000

/**
 * A whole history so many days later: every instant keeps its time of day in the yard, also where clocks change between,
 * every date moves by as many days, and the devices' chains are made anew. Entries in the order in which the record had them.
 *
 * Ids stay, so what speaks of an entry still does. A specimen's age follows where the clocks changed after its pour.
 */
export function shiftDays<T extends Entry & { readonly stored: string }>(
  entries: readonly T[],
  days: number,
  zone: string = DEMO_ZONE,
): T[] {
  if (!Number.isInteger(days)) throw new Error(`days: found ${days}, expected a whole number`)
  if (days === 0) return [...entries]
  const ends = new Map<string, string>()
  const casts = castTimes(entries)
  return entries.map((entry) => {
    const value = moved(entry.value, days, zone)
    const shifted = {
      ...entry,
      seen: movedInstant(entry.seen, days, zone),
      stored: movedInstant(entry.stored, days, zone),
      value: entry.kind === 'specimen' ? agedValue(entry, value, casts, days, zone) : value,
      device: { ...entry.device, previous: ends.get(entry.device.id) ?? null },
    } as T
    const { stored: _, ...fact } = shifted
    ends.set(entry.device.id, entryHash(fact as unknown as Entry))
    return shifted
  })
}

function movedInstant(instant: string, days: number, zone: string): string {
  return new Date(daysLater(Date.parse(instant), days, zone)).toISOString()
}

/** Instants and dates anywhere in a value. A drawing holds none: marks and texts are never of that form alone. */
function moved(value: Entry['value'], days: number, zone: string): Entry['value'] {
  if (typeof value === 'string') {
    if (INSTANT.test(value)) return movedInstant(value, days, zone)
    if (DAY.test(value))
      return new Date(Date.parse(`${value}T00:00:00.000Z`) + 24 * days * HOUR).toISOString().slice(0, 10)
    return value
  }
  if (Array.isArray(value)) return value.map((item) => moved(item, days, zone))
  if (value === null || typeof value !== 'object') return value
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, moved(item, days, zone)]))
}

function castTimes(entries: readonly Entry[]): ReadonlyMap<string, string> {
  return new Map(
    entries.flatMap(({ kind, subject, value }) =>
      kind === 'cast' ? [[subject.id, (value as { at: string }).at] as const] : [],
    ),
  )
}

/** Hours from pour to test, where the clocks changed between them in the new weeks. */
function agedValue(
  entry: Entry,
  value: Entry['value'],
  casts: ReadonlyMap<string, string>,
  days: number,
  zone: string,
): Entry['value'] {
  const cast = casts.get(entry.subject.id)
  if (cast === undefined || value === null || typeof value !== 'object' || Array.isArray(value)) return value
  const before = Date.parse(entry.seen) - Date.parse(cast)
  const after = Date.parse(movedInstant(entry.seen, days, zone)) - Date.parse(movedInstant(cast, days, zone))
  return { ...value, age: Number(value.age) + (after - before) / HOUR }
}
