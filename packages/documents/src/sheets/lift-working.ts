import type { LiftStage, LiftStageId, StageInsert } from '@castwright/engine/lift'
import type { Plan } from '@castwright/engine/plan'
import { type Check, ceilTo, floorTo, type Step } from '@castwright/engine/working'
import { type Paper, POINTS_PER_MM } from '../paper/paper.ts'
import { stressPicture } from '../picture/stress-picture.ts'
import { stageField } from './lift-field.ts'
import { openSheet, type SheetInput, sourceText, VERDICT_WORDS } from './sheet.ts'

const FIRST: readonly LiftStageId[] = ['release', 'turn', 'hang']

/** The working of the tension and of the insert that ask for most at the first lift, step by step, to be followed by hand. */
export async function liftWorking(input: SheetInput): Promise<Uint8Array> {
  const { plan, drawing } = input
  const paper = openSheet(input, 'Lift: working', 'strip')
  paper.paragraph(
    'The tension of one stage and the load of one insert, those that are nearest to their limits at the first lift. Each line gives the formula, the numbers put in, the result and where the rule is from. Units: N, mm, MPa, kN, m as noted. Numbers to five figures; nothing was rounded in between.',
  )
  const tension = governing(plan, 'lift-peak:')
  const insert = governing(plan, 'lift-insert:')
  const stage = tension === null ? undefined : stageOf(plan, tension)
  if (stage !== undefined && stage.supports.length > 0) {
    const name = `${stage.name}, ${stage.how}`
    const picture = stressPicture({
      drawing,
      supports: stage.supports,
      peak: stage.peak,
      field: stageField(input, stage.id),
      name,
      unknown: stage.unknown,
      frame: {
        width: paper.width,
        height: plan.width > plan.length ? 430 : 260,
        text: 9,
        paper: POINTS_PER_MM,
      },
    })
    paper.need(picture.height + 60)
    paper.heading(name)
    paper.picture(picture)
  }
  part(paper, 'Tension of the panel', tension, tension?.working ?? [])
  const hung = insert === null ? null : insertOf(plan, insert)
  part(
    paper,
    hung === null ? 'Load of an insert' : `Load of insert ${hung.mark}`,
    insert,
    ofInsert(
      insert !== null && insert.working.length > 0 ? insert.working : (hung?.working ?? []),
      hung?.mark ?? '',
      plan.lift.inserts.map(({ mark }) => mark),
    ),
  )
  paper.heading('What the plate is')
  paper.paragraph(
    'Moments and support loads marked as found by search are from thin-plate finite elements: own weight square to the panel, supports as points or lines that do not give, the concrete uncracked. To check them by hand: the support loads add up to the weight, and the moment averaged over a strip is held against a beam of that width over the same supports.',
    { size: 9 },
  )
  paper.paragraph(
    'The figures replace neither the local code nor the engineer. Nobody stands under or beside a panel.',
    { bold: true },
  )
  paper.paragraph(`Planned by the rules of ${plan.editions.join('; ')}. Engine ${plan.engine}.`, {
    size: 8.5,
  })
  paper.need(60)
  paper.signatures(['Followed by, engineer', 'Checked by'])
  return paper.finish()
}

/** The check of the first lift that fails by most or is nearest to its limit; without a limit the greatest; null where there is none. */
export function governing(
  { checks }: Pick<Plan, 'checks'>,
  begin: 'lift-peak:' | 'lift-insert:',
): Check | null {
  const own = FIRST.flatMap((id) => checks.filter((check) => check.id === `${begin}${id}`))
  const worse = (a: Check, b: Check): boolean =>
    a.ratio !== null && b.ratio !== null
      ? a.ratio > b.ratio
      : (a.demand ?? Number.NEGATIVE_INFINITY) > (b.demand ?? Number.NEGATIVE_INFINITY)
  return own.reduce<Check | null>(
    (worst, next) => (worst === null || worse(next, worst) ? next : worst),
    null,
  )
}

function stageOf({ lift }: Plan, { id }: Check): LiftStage | undefined {
  return lift.stages.find((stage) => id.endsWith(`:${stage.id}`))
}

/** The insert with the greatest working load at the stage of a check. */
function insertOf(plan: Plan, check: Check): StageInsert | null {
  const inserts = stageOf(plan, check)?.inserts ?? []
  const named = inserts.find(({ mark }) => check.note?.startsWith(`${mark}: `) === true)
  return (
    named ??
    inserts.reduce<StageInsert | null>(
      (most, next) => (most === null || (next.load ?? 0) > (most.load ?? 0) ? next : most),
      null,
    )
  )
}

/** The working without what belongs to other inserts: their marks end the symbols. */
export function ofInsert(working: readonly Step[], mark: string, marks: readonly string[]): readonly Step[] {
  const others = marks.filter((other) => other !== mark)
  return working.filter(({ symbol }) => !others.some((other) => symbol.endsWith(` ${other}`)))
}

function part(paper: Paper, title: string, check: Check | null, working: readonly Step[]): void {
  paper.need(120)
  paper.heading(title)
  if (check === null) {
    paper.paragraph('No stage of the first lift asks for it, or nothing is drawn that carries.')
    return
  }
  paper.paragraph(`${check.what}: ${judged(check)}`, { bold: true })
  if (check.note !== undefined && check.note !== '') paper.paragraph(check.note)
  if (check.unknown !== undefined) paper.paragraph(`Missing: ${check.unknown.join('; ')}.`)
  if (working.length === 0) {
    paper.paragraph('Nothing could be worked out.')
    return
  }
  paper.table(
    [
      { head: 'No.', share: 8, align: 'right' },
      { head: 'Formula', share: 40 },
      { head: 'Numbers put in', share: 32 },
      { head: 'Result', share: 20, align: 'right' },
      { head: 'Where from, remark', share: 40 },
    ],
    working.map((step, index) => [
      String(index + 1),
      `${step.symbol} = ${step.formula}`,
      Object.entries(step.given)
        .map(([name, value]) => `${name} = ${figure(value)}`)
        .join(', '),
      `${figure(step.result)}${step.unit === '' ? '' : ` ${step.unit}`}`,
      remark(step),
    ]),
    8.5,
  )
}

/** Found up, limit down, as on the lift card. */
function judged({ demand, limit, unit, verdict }: Check): string {
  const step = unit === 'MPa' ? 0.01 : 0.1
  const places = unit === 'MPa' ? 2 : 1
  const found = demand === null ? 'not known' : `${ceilTo(demand, step).toFixed(places)} ${unit}`
  const most =
    limit === null ? 'a limit that is not known' : `at most ${floorTo(limit, step).toFixed(places)} ${unit}`
  return `${found}, ${most}: ${VERDICT_WORDS[verdict]}.`
}

/** Five figures, which is more than any input has. */
function figure(value: number | string): string {
  return typeof value === 'number' ? String(Number(value.toPrecision(5))).replace('-', '−') : value
}

function remark(step: Step): string {
  const how = step.by === 'table' ? 'read from a table' : step.by === 'search' ? 'found by search' : ''
  return [sourceText(step.source), how, step.note ?? ''].filter((word) => word !== '').join('; ')
}
