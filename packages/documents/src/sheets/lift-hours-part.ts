import { type ConditionNow, liftHoursNow } from '@castwright/engine/steps'
import { type Paper, POINTS_PER_MM } from '../paper/paper.ts'
import { dayAndTime, shortDay } from '../paper/when.ts'
import { type HourRow, hoursPicture } from '../picture/hours-picture.ts'
import type { SheetInput } from './sheet.ts'

const HOUR = 3_600_000
/** Least span of the picture, hours. */
const SPAN = 12
/** What lies later is said in words and not drawn, hours from mixing. */
const MOST = 168

/** When each condition of the lift is met by the low edge of the strength: a forecast, told as such. */
export function hoursPart(paper: Paper, input: SheetInput): void {
  const { plan, facts, yard, made, timezone } = input
  const hours = liftHoursNow({ plan, facts, yard, now: made })
  paper.heading('When is it met?')
  const cast = facts.cast === null ? null : Date.parse(facts.cast.at)
  const start = cast ?? 0
  const rows = shownConditions(hours.conditions, hours.first.governing?.check ?? null)
  const last = Math.max(SPAN, ...rows.flatMap(({ hour }) => hour ?? [])) * 1.15
  const end = start + Math.min(MOST, Math.ceil(last)) * HOUR
  const clock = (instant: number): string =>
    cast === null ? `${Math.round((instant - start) / HOUR)} h` : timeOf(instant, timezone)
  const when = (instant: number): string =>
    cast === null
      ? `${tenth((instant - start) / HOUR)} h from mixing`
      : `${shortDay(iso(instant), timezone)}, ${timeOf(instant, timezone)}`
  const now = cast === null ? start - HOUR : Date.parse(made)
  paper.picture(
    hoursPicture({
      rows: rows.map((row) => hourRow(row, start, hours.first.governing?.check ?? null)),
      now,
      start,
      end,
      clock,
      when: (instant) => (instant < start ? 'before mixing' : when(instant)),
      frame: { width: paper.width, height: 300, text: 9, paper: POINTS_PER_MM },
    }),
  )
  const temperature =
    hours.temperature === 'logged' ? 'this pour’s own temperatures' : 'the planned temperature'
  const lowered =
    hours.share < 1 ? ` lowered to ${Math.floor(100 * hours.share)} % by results of the pour,` : ''
  paper.paragraph(
    `A forecast along ${temperature},${lowered} by the low edge of the strength. The hold opens on results of the pour, not on this. ${
      hours.low === null
        ? 'No result of this pour is on record.'
        : `By the record the low edge is now ${Math.floor(hours.low * 10) / 10} MPa.`
    }`,
    { size: 8.5 },
  )
}

/** What is asked, then of each stage the tension and the insert that is met last. */
function shownConditions(conditions: readonly ConditionNow[], governing: string | null): ConditionNow[] {
  const kept: ConditionNow[] = []
  const groups = new Map<string, ConditionNow[]>()
  for (const one of conditions) {
    const key = one.check.split(':').slice(0, 2).join(':')
    groups.set(key, [...(groups.get(key) ?? []), one])
  }
  for (const group of groups.values()) {
    const named = group.find(({ check }) => check === governing)
    const open = group.find(({ hour }) => hour === null)
    const latest = group.reduce((worst, next) => ((next.hour ?? 0) > (worst.hour ?? 0) ? next : worst))
    kept.push(named ?? open ?? latest)
  }
  return kept
}

function hourRow(condition: ConditionNow, start: number, governing: string | null): HourRow {
  const { what, state, hour, why, check } = condition
  const governs = check === governing
  if (state === 'at' && hour !== null) return { name: what, from: start + hour * HOUR, governs }
  if (state === 'always') return { name: what, from: start, words: 'at any strength', governs }
  const words = {
    never: 'at no strength',
    beyond: 'not within the computed hours',
    unknown: `not known: ${why[0] ?? 'what it needs'}`,
    at: 'not known',
  } as const
  return { name: what, from: null, words: words[state], governs }
}

function tenth(hours: number): string {
  return String(Math.ceil(hours * 10 - 1e-9) / 10)
}

function iso(instant: number): string {
  return new Date(instant).toISOString()
}

/** The next full minute: an hour is never told earlier than it is. */
function timeOf(instant: number, timezone: string): string {
  return dayAndTime(iso(Math.ceil(instant / 60_000) * 60_000), timezone).split(', ')[1] ?? ''
}
