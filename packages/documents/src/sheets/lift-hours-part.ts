import { type ConditionNow, liftHoursNow } from '@castwright/engine/steps'
import { type Paper, POINTS_PER_MM } from '../paper/paper.ts'
import { dayAndTime, shortDay } from '../paper/when.ts'
import { type HourRow, hoursPicture } from '../picture/hours-picture.ts'
import type { SheetInput } from './sheet.ts'

const HOUR = 3_600_000
const DAY = 24 * HOUR
/** Least span of the picture, hours. */
const SPAN = 12
/** What lies later is said in words and not drawn, hours from mixing. */
const MOST = 168

/** When each condition of the lift is met by the low edge of the strength: a forecast, told as such. */
export function hoursPart(paper: Paper, input: SheetInput): void {
  const { plan, facts, yard, made, timezone } = input
  const hours = liftHoursNow({ plan, facts, yard, now: made })
  const cast = facts.cast === null ? null : Date.parse(facts.cast.at)
  const poured = cast ?? 0
  const start = Math.floor(poured / HOUR) * HOUR
  const rows = shownConditions(hours.conditions, hours.first.governing?.check ?? null)
  const last = Math.max(SPAN, ...rows.flatMap(({ hour }) => hour ?? [])) * 1.15
  const end = start + Math.min(MOST, Math.ceil(last)) * HOUR
  const days = end - start > DAY
  const clock = (instant: number): string => {
    if (cast === null) return `${Math.round((instant - start) / HOUR)} h`
    const time = timeOf(instant, timezone)
    return days ? `${shortDay(iso(instant), timezone).split(' ').slice(0, 2).join(' ')}, ${time}` : time
  }
  const when = (instant: number): string =>
    cast === null
      ? `${tenth((instant - start) / HOUR)} h from mixing`
      : `${shortDay(iso(instant), timezone)}, ${timeOf(instant, timezone)}`
  const now = cast === null ? start - HOUR : Date.parse(made)
  const picture = hoursPicture({
    rows: rows.map((row) => hourRow(row, poured, hours.first.governing?.check ?? null)),
    now,
    start,
    end,
    clock,
    when: (instant) => (instant < start ? 'before mixing' : when(instant)),
    frame: { width: paper.width, height: 300, text: 9, paper: POINTS_PER_MM },
  })
  paper.need(picture.height + 70)
  paper.heading('When is it met?')
  paper.picture(picture)
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

function hourRow(condition: ConditionNow, poured: number, governing: string | null): HourRow {
  const { what, state, hour, why, check } = condition
  const governs = check === governing
  if (state === 'at' && hour !== null) return { name: what, from: poured + hour * HOUR, governs }
  if (state === 'always') return { name: what, from: poured, words: 'at any strength', governs }
  const words = {
    never: 'at no strength',
    beyond: 'not within the computed hours',
    unknown: `not known: ${withoutName(why[0] ?? 'what it needs', what)}`,
    at: 'not known',
  } as const
  return { name: what, from: null, words: words[state], governs }
}

/** The reason alone, where it begins with the name that it stands beside. */
function withoutName(why: string, what: string): string {
  return why.startsWith(`${what}: `) ? why.slice(what.length + 2) : why
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
