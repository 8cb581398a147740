import type { DueTest } from '@castwright/engine/quality/specimens'
import { dayIn } from '@castwright/engine/steps'
import { ageText } from '../panel/set-text.ts'

/** Specimens of one set that are tested at one age. */
export interface DueGroup {
  readonly key: string
  readonly first: DueTest
  readonly tests: readonly DueTest[]
}

/** What stands under one heading. */
export interface DueList {
  readonly overdue: readonly DueGroup[]
  readonly today: readonly DueGroup[]
  readonly week: readonly DueGroup[]
  readonly later: readonly DueGroup[]
  /** Tested in the last week, latest first. */
  readonly done: readonly DueGroup[]
}

const DAY = 86_400_000
const WEEK = 7 * DAY

/** Due tests by set and age, under the headings of the page. A group that is tested in part stands where its rest does. */
export function dueList(tests: readonly DueTest[], now: number): DueList {
  const groups = new Map<string, DueTest[]>()
  for (const test of tests) {
    const key = `${test.set.set} ${test.set.made} ${test.age} ${test.cured}`
    groups.set(key, [...(groups.get(key) ?? []), test])
  }
  const list = {
    overdue: [] as DueGroup[],
    today: [] as DueGroup[],
    week: [] as DueGroup[],
    later: [] as DueGroup[],
    done: [] as DueGroup[],
  }
  for (const [key, its] of groups) {
    const open = its.filter(({ state }) => state !== 'done')
    const first = open[0] ?? its[0]
    if (first === undefined) continue
    const group = { key, first, tests: its }
    if (open.length === 0) {
      const seen = Math.max(...its.map(({ result }) => Date.parse(result?.seen ?? '')))
      if (now - seen < WEEK) list.done.push(group)
    } else if (first.state === 'missed' || first.state === 'overdue') list.overdue.push(group)
    else if (first.state === 'due') list.today.push(group)
    else if (Date.parse(first.due) - now < WEEK) list.week.push(group)
    else list.later.push(group)
  }
  return { ...list, done: list.done.reverse() }
}

/** Open tests as an iCalendar file (RFC 5545): half an hour each at the hour that the age falls on. */
export function calendarText(groups: readonly DueGroup[], now: string): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Castwright//Specimens due//EN',
    ...groups.flatMap(({ first, tests }) => {
      const open = tests.filter(({ state }) => state !== 'done').map(({ specimen }) => specimen)
      const { set, age, cured, panels, within } = first
      return [
        'BEGIN:VEVENT',
        `UID:${escaped(`${set.set}-${stamp(set.made)}-${age}-${cured}`)}@castwright`,
        `DTSTAMP:${stamp(now)}`,
        `DTSTART:${stamp(first.due)}`,
        'DURATION:PT30M',
        `SUMMARY:${escaped(`Test ${open.join(', ')} at ${ageText(age)}`)}`,
        `DESCRIPTION:${escaped(
          `${set.kind}s of set ${set.set} for ${panels.join(', ')}, cured ${cured === 'panel' ? 'with the panel' : 'by the standard'}.${
            within === null ? '' : ` Between ${within.from.slice(0, 16)} and ${within.to.slice(0, 16)} UTC.`
          }`,
        )}`,
        'END:VEVENT',
      ]
    }),
    'END:VCALENDAR',
  ]
  return `${lines.map(foldedLine).join('\r\n')}\r\n`
}

function stamp(instant: string): string {
  return `${instant.slice(0, 19).replace(/[-:]/g, '')}Z`
}

function escaped(text: string): string {
  return text.replace(/[\\;,]/g, (sign) => `\\${sign}`).replace(/\n/g, '\\n')
}

/** At most 75 octets a line, the rest after a blank: a sign of several octets stays whole. */
function foldedLine(line: string): string {
  const encoder = new TextEncoder()
  const parts: string[] = []
  let part = ''
  let size = 0
  for (const sign of line) {
    const more = encoder.encode(sign).length
    if (size + more > (parts.length === 0 ? 75 : 74)) {
      parts.push(part)
      part = ''
      size = 0
    }
    part += sign
    size += more
  }
  return [...parts, part].join('\r\n ')
}

/** Day of an instant in the yard, `2026-09-16`; empty where it cannot be read. */
export function dayOf(instant: string, zone: string): string {
  return dayIn(zone, instant) ?? ''
}
