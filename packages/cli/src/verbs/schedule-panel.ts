import type { PanelSchedule } from '@castwright/documents/bar-list'
import { codeFamily } from '@castwright/engine/codes'
import { panelOf, parseDrawing } from '@castwright/engine/panel'
import { planSteel } from '@castwright/engine/steel'
import type { Assumed, Step } from '@castwright/engine/working'
import type { Yard } from '@castwright/engine/yard'
import type { Given } from '../given.ts'
import { numberText, textTable } from '../verb.ts'

/** The steel of one drawing as the verb `schedule` prints and writes it. */
export interface ScheduledPanel {
  readonly json: Readonly<Record<string, unknown>>
  /** As a line or lines of a bar list. */
  readonly list: PanelSchedule
  readonly mass: number | null
  readonly unknown: readonly string[]
  readonly assumed: readonly Assumed[]
  readonly working: readonly Step[]
  readonly table: () => string
}

/** @throws InputError naming the field of the drawing. */
export function schedulePanel(
  input: unknown,
  {
    given,
    yard,
    from,
    job = '',
  }: {
    readonly given: Given
    readonly yard: Yard | null
    readonly from: string
    /** Mark of the job whose file the drawing stands in. */
    readonly job?: string
  },
): ScheduledPanel {
  const drawing = parseDrawing(input, from)
  const family = codeFamily(given.code(drawing.code, yard?.code))
  const plan = planSteel({ panel: panelOf(drawing, from), yard, family })
  // Without a yard the bars are scheduled in one length: said as an assumption, not as a gap of the schedule.
  const unknown =
    yard === null ? plan.unknown.filter((gap) => !gap.includes(': yard: bar stock')) : plan.unknown
  return {
    json: {
      mark: drawing.mark,
      bars: plan.bars,
      mass: plan.mass,
      laps: plan.laps.map(({ mark, at, length }) => ({ mark, at, length })),
      ties: plan.ties,
      wire: plan.wire,
      ...(unknown.length > 0 ? { unknown } : {}),
    },
    list: { job: drawing.job ?? job, panel: drawing.mark, family: family.id, bars: plan.bars, unknown },
    mass: plan.mass,
    unknown,
    assumed:
      yard === null && plan.bars.length > 0
        ? [
            ...plan.assumed,
            { field: 'yard.stock', value: 'any length', unit: '', why: 'no yard given: bars are not lapped' },
          ]
        : plan.assumed,
    working: plan.working,
    table: () =>
      [
        textTable([
          ['Mark', 'Shape', 'Bar', 'Count', 'Cut length, mm', 'Legs, mm', 'Mass, kg'],
          ...plan.bars.map((bar) => [
            bar.mark,
            bar.shape,
            `${bar.diameter} ${bar.grade}`,
            String(bar.count),
            numberText(bar.cutLength),
            bar.legs.map((leg) => numberText(leg)).join(' '),
            numberText(bar.mass),
          ]),
        ]),
        textTable([
          ['Mass in all', numberText(plan.mass, 'kg')],
          ['Laps', String(plan.laps.length)],
          ['Crossings to tie', numberText(plan.ties)],
          ['Tying wire', numberText(plan.wire, 'kg')],
        ]),
        ...unknown.map((gap) => `Not known: ${gap}`),
      ].join('\n'),
  }
}
