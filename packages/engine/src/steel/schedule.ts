import { STEEL_DENSITY } from '../codes/metric-bar.ts'
import type { SteelRules } from '../codes/steel-rules.ts'
import type { Point } from '../panel/point.ts'
import type { Worked } from '../working/worked.ts'
import { barMass } from './bar-mass.ts'
import type { LaidBars } from './laid-out/lay-context.ts'
import type { ListedPlace } from './laid-out/listed-places.ts'
import { addLaid, type Line, nextMark, SAME } from './laid-out/schedule-lines.ts'
import { type ListedBar, partOfPath, partsOnPath } from './listed-bars.ts'
import type { PlannedMat } from './mats.ts'
import type { Corner, PlacedBar, PlacedLap, ScheduledBar } from './steel-plan.ts'

/** A line of the schedule that is neither of a mat nor listed. */
export interface LaidMark {
  readonly mark: string
  readonly count: number
  /** Least inside diameter by the code; null for straight bars. */
  readonly least: Worked<number> | null
}

export interface Schedule {
  readonly bars: readonly ScheduledBar[]
  readonly placed: readonly PlacedBar[]
  readonly laps: readonly PlacedLap[]
  readonly laidMarks: readonly LaidMark[]
  /** kg; null where a line's mass is not known. */
  readonly mass: number | null
  readonly unknown: readonly string[]
}

export interface ScheduleInput {
  readonly mats: readonly PlannedMat[]
  readonly listed: readonly ListedBar[]
  readonly rules: SteelRules
  /** Where a placement of a listed bar lies. */
  readonly listedPlace: (bar: ListedBar, place: number) => ListedPlace
  /** Edge bars, trimmers, starters and ties. */
  readonly laid: readonly LaidBars[]
  /** Whether laps are as long as the drawing says. */
  readonly lapDrawn: boolean
}

/** Lines of the schedule with marks, bars where they lie, laps. Mat bars are marked by layer and direction: `MX1`, `TY2`. */
export function scheduleOf({ mats, listed, rules, listedPlace, lapDrawn, laid }: ScheduleInput): Schedule {
  const taken = new Set(listed.map((bar) => bar.mark))
  const bars: Line[] = []
  const placed: PlacedBar[] = []
  const laps: PlacedLap[] = []
  const unknown: string[] = []
  const counters = new Map<string, number>()
  for (const planned of mats) {
    const { mat, key, height } = planned
    const prefix = `${mat.layer === 'mould' ? 'M' : 'T'}${mat.direction.toUpperCase()}`
    const lines = new Map<number, Line>()
    let lapped = 0
    for (const { line, cut, aside, shares } of planned.rows) {
      const ids: string[] = []
      for (const [index, piece] of cut.pieces.entries()) {
        const length = piece.to - piece.from
        const size = Math.round(length * SAME)
        let entry = lines.get(size)
        if (entry === undefined) {
          entry = matLine(nextMark(prefix, counters, taken), planned, length)
          lines.set(size, entry)
          bars.push(entry)
        }
        entry.count += 1
        const across = line.at + (aside[index] ?? 0)
        const path = [place(mat.direction, piece.from, across), place(mat.direction, piece.to, across)]
        const id = `${entry.mark}#${entry.count}`
        ids.push(id)
        placed.push({
          id,
          mark: entry.mark,
          use: 'mat',
          layer: mat.layer,
          diameter: mat.diameter,
          path,
          height,
          centreline: atHeight(path, height),
          inside: null,
        })
      }
      for (const [index, at] of cut.laps.entries()) {
        lapped += 1
        laps.push({
          id: `${key}~${lapped}`,
          mark: key,
          layer: mat.layer,
          bars: [ids[index] as string, ids[index + 1] as string],
          at: place(mat.direction, at, line.at),
          length: planned.lap ?? 0,
          diameter: mat.diameter,
          direction: mat.direction,
          by: lapDrawn ? 'drawing' : 'code',
          share: shares[index] ?? null,
        })
      }
    }
  }
  for (const bar of listed) {
    if (!bar.shape.known) {
      unknown.push(...bar.shape.gaps.map((gap) => `${bar.mark}: ${gap}`))
      continue
    }
    addListed(bar, { bars, placed, laps, listedPlace })
  }
  const laidMarks: LaidMark[] = []
  for (const group of laid) {
    const first = bars.length
    unknown.push(...addLaid(group, { bars, placed, counters, taken }))
    laidMarks.push(...bars.slice(first).map(({ mark, count }) => ({ mark, count, least: group.least })))
  }
  const scheduled = bars.map((line): ScheduledBar => {
    const one = barMass({ rules, diameter: line.diameter, cutLength: line.cutLength })
    // No bar of the family: its mass is that of a round of this diameter, and the size itself is not known.
    if (!one.known) unknown.push(...one.gaps.map((gap) => `${line.mark}: ${gap}`))
    const mass = one.known ? one.value : roundMass(line.diameter, line.cutLength)
    return { ...line, mass: mass * line.count }
  })
  return {
    bars: scheduled,
    placed,
    laps,
    laidMarks,
    mass: unknown.length > 0 ? null : scheduled.reduce((sum, bar) => sum + bar.mass, 0),
    unknown,
  }
}

function matLine(mark: string, { mat }: PlannedMat, length: number): Line {
  return {
    mark,
    shape: 'straight',
    diameter: mat.diameter,
    grade: mat.grade,
    role: 'main',
    count: 0,
    cutLength: length,
    legs: [length],
    turns: [],
    inside: null,
  }
}

function addListed(
  bar: ListedBar,
  {
    bars,
    placed,
    laps,
    listedPlace,
  }: {
    readonly bars: Line[]
    readonly placed: PlacedBar[]
    readonly laps: PlacedLap[]
    readonly listedPlace: (bar: ListedBar, place: number) => ListedPlace
  },
): void {
  if (!bar.shape.known) return
  const { drawn, pieces } = bar
  const { word, legs, turns, length } = bar.shape.value
  const base = { diameter: drawn.diameter, grade: drawn.grade, role: bar.role }
  const whole = pieces.length < 2
  for (const [index, piece] of pieces.entries()) {
    const mark = whole ? bar.mark : `${bar.mark}/${index + 1}`
    const pieceLength = whole ? length : piece.to - piece.from
    bars.push({
      ...base,
      mark,
      shape: word,
      count: bar.count,
      cutLength: pieceLength,
      legs: whole ? legs : [pieceLength],
      turns: whole ? turns : [],
      inside: bar.inside,
    })
    for (const [place, path] of bar.paths.entries()) {
      if (drawn.layer === undefined) continue
      const { height, side } = listedPlace(bar, place)
      const part = partsOnPath(bar, path, side)[index] as readonly Point[]
      placed.push({
        id: `${mark}#${place + 1}`,
        mark,
        use: 'listed',
        layer: drawn.layer,
        diameter: drawn.diameter,
        path: part,
        height,
        centreline: atHeight(part, height),
        inside: bar.inside,
      })
    }
    const next = pieces[index + 1]
    if (next === undefined) continue
    for (const [place, path] of bar.paths.entries()) {
      const [from, to] = partOfPath(path, next.from, piece.to) as [Point, Point]
      laps.push({
        id: `${bar.mark}~${place * (pieces.length - 1) + index + 1}`,
        mark: bar.mark,
        layer: drawn.layer ?? null,
        bars: [`${mark}#${place + 1}`, `${bar.mark}/${index + 2}#${place + 1}`],
        at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
        length: piece.to - next.from,
        diameter: drawn.diameter,
        direction: Math.abs(to[0] - from[0]) >= Math.abs(to[1] - from[1]) ? 'x' : 'y',
        by: 'drawing',
        share: null,
      })
    }
  }
}

function atHeight(path: readonly Point[], height: number | null): Corner[] | null {
  return height === null ? null : path.map(([x, y]): Corner => [x, y, height])
}

/** kg of a round bar of that diameter, both in mm. */
function roundMass(diameter: number, length: number): number {
  return (((Math.PI * diameter ** 2) / 4) * length * STEEL_DENSITY) / 1e9
}

function place(direction: 'x' | 'y', along: number, across: number): Point {
  return direction === 'x' ? [along, across] : [across, along]
}
