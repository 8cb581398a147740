import type { FamilyId } from '@castwright/engine/codes'
import type { ScheduledBar } from '@castwright/engine/steel'
import { shapeCode } from './shape-code.ts'
import { columnLetter } from './table.ts'

/** The scheduled bars of one panel. */
export interface PanelSchedule {
  /** Empty where the drawing names none. */
  readonly job: string
  readonly panel: string
  /** Bars of the family eu get a shape code. */
  readonly family: FamilyId | null
  readonly bars: readonly ScheduledBar[]
  /** Bars that are not in the list, and why. */
  readonly unknown: readonly string[]
}

export interface ListColumn {
  /** With its unit. */
  readonly name: string
  readonly kind: 'text' | 'number' | 'mass'
  /** Characters. */
  readonly width: number
}

/** A schedule as a table: one line a bar mark and panel. */
export interface ScheduleTable {
  readonly columns: readonly ListColumn[]
  /** Null: the cell is empty. */
  readonly rows: readonly (readonly (string | number | null)[])[]
  readonly unknown: readonly string[]
}

/** Lines of the schedule of a panel or of a job: lengths to a thousandth of a mm, turns to a ten-thousandth of a degree, masses to a gram. */
export function scheduleTable(panels: readonly PanelSchedule[]): ScheduleTable {
  const most = panels.reduce((legs, { bars }) => Math.max(legs, ...bars.map((bar) => bar.legs.length)), 1)
  const coded = panels.some(({ family }) => family === 'eu')
  const legs = Array.from({ length: most }, (_, index) => index)
  const text = (name: string, width: number): ListColumn => ({ name, kind: 'text', width })
  const number = (name: string, width: number): ListColumn => ({ name, kind: 'number', width })
  const mass = (name: string): ListColumn => ({ name, kind: 'mass', width: 12 })
  return {
    columns: [
      text('Job', 20),
      text('Panel', 10),
      text('Mark', 10),
      text('Shape', 10),
      ...(coded ? [text('Shape code (BS 8666)', 12)] : []),
      number('Diameter, mm', 10),
      text('Grade', 9),
      text('Role', 9),
      number('Count', 8),
      number('Cut length, mm', 12),
      ...legs.map((leg) => number(`${columnLetter(leg)}, mm`, 10)),
      text('Turns, °', 14),
      number('Inside diameter, mm', 12),
      mass('Mass each, kg'),
      mass('Mass, kg'),
    ],
    rows: panels.flatMap(({ job, panel, family, bars }) =>
      bars.map((bar) => [
        job,
        panel,
        bar.mark,
        bar.shape,
        ...(coded ? [family === 'eu' ? shapeCode(bar) : null] : []),
        thousandth(bar.diameter),
        bar.grade,
        bar.role,
        bar.count,
        thousandth(bar.cutLength),
        ...legs.map((leg) => thousandth(bar.legs[leg])),
        bar.turns.map((turn) => Math.round(turn * 1e4) / 1e4).join(' '),
        thousandth(bar.inside),
        thousandth(bar.mass / bar.count),
        thousandth(bar.mass),
      ]),
    ),
    unknown: panels.flatMap(({ panel, unknown }) => unknown.map((gap) => `${panel}: ${gap}`)),
  }
}

function thousandth(value: number | null | undefined): number | null {
  return value === null || value === undefined || !Number.isFinite(value)
    ? null
    : Math.round(value * 1e3) / 1e3
}
