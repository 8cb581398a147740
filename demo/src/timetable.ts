import { BED_ORDER, DEMO_ZONE, pourDay, workDay } from './calendar.ts'
import { at } from './local-time.ts'

/** When a panel's steps begin, ms; what lies after the clock of the job has not happened yet. */
export interface Timetable {
  readonly steelIn: number
  readonly cutBend: number
  readonly cage: number
  readonly mould: number
  readonly set: number
  readonly setHold: number
  readonly mixed: number
  readonly deliver: number
  readonly place: number
  readonly screed: number
  readonly float: number
  readonly powerFloat: number
  readonly cover: number
  readonly cylinders: number
  readonly cureEnd: number
  readonly strip: number
  readonly stripHold: number
  readonly asBuilt: number
  readonly store: number
  readonly load: number | null
  readonly handOver: number | null
}

const MINUTE = 60_000
const NEVER = Number.POSITIVE_INFINITY

type Late = Partial<Record<keyof Timetable, readonly [day: string, time: string] | null>>

/** Days that went otherwise than planned, by mark. */
const OTHERWISE: Readonly<Record<string, Late>> = {
  // The truck came in the afternoon; the night was cold and the cover blew off.
  C02: {
    mould: ['2026-09-15', '12:40'],
    set: ['2026-09-15', '13:40'],
    setHold: ['2026-09-15', '14:10'],
    mixed: ['2026-09-15', '14:25'],
    deliver: ['2026-09-15', '14:48'],
    place: ['2026-09-15', '15:02'],
    screed: ['2026-09-15', '15:40'],
    float: ['2026-09-15', '17:35'],
    powerFloat: ['2026-09-15', '18:10'],
    cover: ['2026-09-15', '18:45'],
    cylinders: ['2026-09-16', '13:35'],
    cureEnd: ['2026-09-16', '18:30'],
    strip: ['2026-09-16', '14:20'],
    stripHold: ['2026-09-16', '18:45'],
    asBuilt: null,
  },
  // Waits for the bed that C02 still lies on.
  T04: { mould: null },
  E03: {
    mould: ['2026-09-16', '11:30'],
    set: ['2026-09-16', '12:50'],
    setHold: ['2026-09-16', '13:40'],
    mixed: ['2026-09-16', '13:52'],
    deliver: ['2026-09-16', '14:15'],
    place: ['2026-09-16', '14:42'],
    screed: null,
  },
  // The second truck of the bed came at noon; the surface is under the float.
  S06: {
    mould: ['2026-09-16', '10:05'],
    set: ['2026-09-16', '10:45'],
    setHold: ['2026-09-16', '11:20'],
    mixed: ['2026-09-16', '11:35'],
    deliver: ['2026-09-16', '11:56'],
    place: ['2026-09-16', '12:08'],
    screed: ['2026-09-16', '12:55'],
    float: ['2026-09-16', '14:40'],
    powerFloat: ['2026-09-16', '15:35'],
    cover: ['2026-09-16', '16:10'],
  },
  // Set a day early at the free end of bed 1.
  N06: {
    steelIn: ['2026-09-15', '10:10'],
    cutBend: ['2026-09-15', '10:50'],
    cage: ['2026-09-16', '08:10'],
    mould: ['2026-09-16', '13:05'],
    set: ['2026-09-16', '14:25'],
    setHold: null,
  },
  G02: { cage: ['2026-09-16', '15:08'] },
  C03: { cutBend: ['2026-09-16', '15:09'] },
  S05: { asBuilt: ['2026-09-16', '14:52'], store: null },
  B03: { asBuilt: ['2026-09-16', '09:05'], store: null },
}

/** Load and hand-over of the panels that have left or are about to. */
const TRUCKS: Readonly<Record<string, readonly [day: string, load: string, handOver: string]>> = {
  N01: ['2026-09-15', '09:40', '11:35'],
  B01: ['2026-09-15', '10:05', '11:42'],
  S01: ['2026-09-16', '07:50', '09:40'],
  T01: ['2026-09-16', '08:10', '09:48'],
  N02: ['2026-09-16', '10:20', '12:15'],
  B02: ['2026-09-16', '10:40', '12:22'],
  S02: ['2026-09-16', '14:15', '16:10'],
  T02: ['2026-09-16', '14:35', '16:18'],
}

/** Timetable of the panel of a row; beds start 25 minutes after each other. */
export function timetableOf(index: number, mark: string): Timetable {
  const day = pourDay(index)
  const bed = index % BED_ORDER.length
  const [before, after] = [workDay(day, -1), workDay(day, 1)]
  const on = (date: string, time: string, minutes = 0) => at(date, time, DEMO_ZONE) + minutes * MINUTE
  const late = 25 * bed
  const usual: Timetable = {
    steelIn: on(before, '13:00', late),
    cutBend: on(before, '13:45', late),
    cage: on(before, '14:30', late),
    mould: on(day, '07:10', late),
    set: on(day, '07:50', late),
    setHold: on(day, '08:20', late),
    mixed: on(day, '08:30', late),
    deliver: on(day, '08:50', late),
    place: on(day, '09:02', late),
    screed: on(day, '09:50', late),
    float: on(day, '11:20', late),
    powerFloat: on(day, '11:50', late),
    cover: on(day, '12:20', late),
    cylinders: on(after, '05:40', 4 * bed),
    cureEnd: on(after, '06:00', 4 * bed),
    strip: on(after, '06:15', 6 * bed),
    stripHold: on(after, '06:35', 8 * bed),
    asBuilt: on(after, '08:30', late),
    store: on(after, '09:25', late),
    load: null,
    handOver: null,
  }
  const truck = TRUCKS[mark]
  const times: Timetable =
    truck === undefined ? usual : { ...usual, load: on(truck[0], truck[1]), handOver: on(truck[0], truck[2]) }
  const otherwise = OTHERWISE[mark] ?? {}
  const changed: Partial<Record<keyof Timetable, number>> = {}
  let stopped = false
  for (const step of Object.keys(times) as (keyof Timetable)[]) {
    const when = otherwise[step]
    // What was put off has no time yet, and what comes after it has none either.
    stopped ||= when === null
    if (stopped) changed[step] = NEVER
    else if (when) changed[step] = on(when[0], when[1])
  }
  return { ...times, ...changed }
}
