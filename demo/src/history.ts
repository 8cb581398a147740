import { type Drawing, parseDrawing } from '@castwright/engine/panel'
import { type Plan, plan } from '@castwright/engine/plan'
import { emptyPanelFacts, type PanelFacts, planInputOf, type StepId } from '@castwright/engine/steps'
import type { YardState } from '@castwright/record'
import { DEMO_CLOCK } from './calendar.ts'
import { demoDrawings } from './drawings.ts'
import { judgedDraft, panelActs } from './panel-acts.ts'
import { PANEL_ROWS } from './panels.ts'
import { personOf } from './people.ts'
import { setUpActs, weatherActs } from './set-up-acts.ts'
import { type CutPanel, steelActs } from './steel-acts.ts'
import { surfaceActs } from './surface-acts.ts'
import { type Act, type SignDifferences, Teller, type ToldEntry } from './telling.ts'
import { timetableOf } from './timetable.ts'
import { FOUND, LEFT_OPEN, twistActs } from './twists.ts'
import { demoYard } from './yard.ts'

const SEED = 20_260_916

/** Rows whose steel was in the yard before the clock: the days poured, and the day to come. */
const STARTED = 28

export interface DemoHistory {
  /** In the order in which the record had them. */
  readonly entries: readonly ToldEntry[]
}

/**
 * The record of the invented job up to its clock: yard, drawings, designs, weather, and every step of every panel that
 * was begun, openings included. The same bytes at every run.
 */
export function demoHistory(): DemoHistory {
  return { entries: tellHistory().told }
}

/** The same, with the state that it folds to. */
export function tellHistory(): { readonly told: readonly ToldEntry[]; readonly state: YardState } {
  const yard = demoYard()
  const drawings = demoDrawings()
  const clock = Date.parse(DEMO_CLOCK)
  const plans = new Plans()
  const teller = new Teller({
    yard: yard.name,
    seed: SEED,
    planOf: (facts, state) => {
      if (facts.drawing === null) throw new Error(`${facts.mark}: found no drawing`)
      return plans.of(facts.drawing, state, facts)
    },
  })
  for (const act of setUpActs({ yard, drawings })) teller.tell(act)
  const state = teller.state()
  const acts: (Act | SignDifferences)[] = weatherActs(clock)
  const cut: CutPanel[] = []
  for (const [index, row] of PANEL_ROWS.slice(0, STARTED).entries()) {
    const drawing = drawings[index]
    if (drawing === undefined) throw new Error(`${row.mark}: found no drawing`)
    const found = FOUND[row.mark]
    const leftOpen: StepId | undefined = LEFT_OPEN[row.mark]
    const its = plans.of(drawing, state)
    const times = timetableOf(index, row.mark)
    if (times.cutBend <= clock && leftOpen !== 'cut-bend')
      cut.push({ mark: row.mark, at: times.cutBend, plan: its })
    acts.push(
      ...panelActs({
        row,
        index,
        plan: its,
        yard,
        times,
        people: personOf,
        clock,
        bare: row.mark === 'C02',
        ...(found === undefined ? {} : { found }),
        ...(leftOpen === undefined ? {} : { leftOpen }),
      }),
    )
  }
  acts.push(...steelActs(cut))
  acts.push(...surfaceActs())
  acts.push(...twistActs((mark, id) => askedOf(plans.of(drawingOf(drawings, mark), state), id), judgedDraft))
  const happened = acts.filter(({ at }) => at <= clock)
  for (const act of happened.sort((a, b) => a.at - b.at)) teller.tell(act)
  return { told: teller.told, state: teller.state() }
}

const NO_FACTS = emptyPanelFacts({ job: '', mark: '' })

/** Plans by shape: panels of one kind differ in mark only, which no id and no limit of the plan hangs on. */
class Plans {
  private readonly known = new Map<string, Plan>()

  of(drawing: Drawing, state: YardState, facts: Pick<PanelFacts, 'revision' | 'steps'> = NO_FACTS): Plan {
    const input = planInputOf({ ...facts, drawing: parseDrawing(drawing) }, state.yard)
    if (input === null) throw new Error(`${drawing.mark}: found no code family`)
    const { mark: _, lifting, ...shape } = drawing
    const key = JSON.stringify([shape, lifting?.load, lifting?.strength, input.placing])
    const before = this.known.get(key)
    if (before !== undefined) return before
    const made = plan(input)
    this.known.set(key, made)
    return made
  }
}

function drawingOf(drawings: readonly Drawing[], mark: string): Drawing {
  const drawing = drawings.find((each) => each.mark === mark)
  if (drawing === undefined) throw new Error(`found no drawing ${mark}`)
  return drawing
}

function askedOf({ toRecord, mark }: Plan, id: string) {
  const asked = toRecord.find((item) => item.id === id)
  if (asked === undefined) throw new Error(`${mark}: expected an asked item ${id}`)
  return asked
}
