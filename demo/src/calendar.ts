/** Wednesday 16 September 2026, 15:10 in the yard: where the invented job stands. */
export const DEMO_CLOCK = '2026-09-16T14:10:00.000Z'

export const DEMO_ZONE = 'Europe/Dublin'

/** Ten days of pouring, weekends left out; the clock stands in the sixth. */
export const POUR_DAYS = [
  '2026-09-09',
  '2026-09-10',
  '2026-09-11',
  '2026-09-14',
  '2026-09-15',
  '2026-09-16',
  '2026-09-17',
  '2026-09-18',
  '2026-09-21',
  '2026-09-22',
] as const

/** Working day before and after a pour day, weekends left out. */
export function workDay(day: string, steps: number): string {
  const at = new Date(`${day}T00:00:00.000Z`)
  for (let left = Math.abs(steps); left > 0; ) {
    at.setUTCDate(at.getUTCDate() + Math.sign(steps))
    if (at.getUTCDay() % 6 !== 0) left -= 1
  }
  return at.toISOString().slice(0, 10)
}

/** Beds in the order of the rows of a day. */
export const BED_ORDER = ['1', '2', '3', '4'] as const

/** Day on which the panel of a row is poured: four a day. */
export function pourDay(index: number): string {
  const day = POUR_DAYS[Math.floor(index / BED_ORDER.length)]
  if (day === undefined) throw new Error(`no pour day for row ${index}: found only ${POUR_DAYS.length} days`)
  return day
}

/** Due on site twelve days after the pour. */
export function dueDay(index: number): string {
  const due = new Date(`${pourDay(index)}T00:00:00.000Z`)
  due.setUTCDate(due.getUTCDate() + 12)
  return due.toISOString().slice(0, 10)
}
