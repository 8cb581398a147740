import type { SheetInput } from '@castwright/documents'
import type { Plan } from '@castwright/engine/plan'
import { carriedFrom, emptyPanelFacts, type PanelFacts } from '@castwright/engine/steps'
import { InputError } from '@castwright/engine/working'
import { type PassportPlan, passportEntries, type StoredEntry, type YardState } from '@castwright/record'
import { issuePassport } from '@castwright/record/store'
import { planOf } from '../entries/cards.ts'
import type { YardLog } from '../entries/yard-log.ts'
import { Problem } from '../problem.ts'

const PAGE = 5000

export interface PlannedPanel {
  readonly facts: PanelFacts & { readonly drawing: NonNullable<PanelFacts['drawing']> }
  readonly plan: Plan
}

/** A panel with its plan. @throws Problem 404 where the record has no drawing of it, 409 where nothing says the code. */
export function plannedPanel(state: YardState, job: string, mark: string): PlannedPanel {
  const facts = state.panels.get(`${job}/${mark}`) ?? emptyPanelFacts({ job, mark })
  if (facts.drawing === null) {
    throw new Problem('not-found', `The record has no drawing of ${mark} in job ${job}.`)
  }
  const plan = planOf(facts, state.yard)
  if (plan === null) {
    throw new Problem(
      'conflict',
      'Neither the drawing nor the yard says the code family, so there is no plan.',
    )
  }
  if (plan instanceof InputError) {
    throw new Problem('conflict', 'The drawing in the record cannot be planned.', { issues: plan.issues })
  }
  return { facts: { ...facts, drawing: facts.drawing }, plan }
}

/** The passport file of a panel as of now: RFC 8785 bytes. */
export async function passportFile(log: YardLog, job: string, mark: string): Promise<Uint8Array> {
  const { facts, plan } = plannedPanel(await log.state(), job, mark)
  return issuePassport({
    store: log.store,
    panel: { job, mark, revision: facts.revision },
    drawing: facts.drawing,
    plan: figuresOf(plan, facts),
    entries: passportEntries(`${job}/${mark}`, await wholeLog(log)),
    now: log.now(),
  })
}

/** What a sheet is made from. `address` is where the code on it leads. */
export async function sheetInput(
  log: YardLog,
  { job, mark, paper, address }: { job: string; mark: string; paper: SheetInput['size']; address: string },
): Promise<SheetInput> {
  const state = await log.state()
  const { facts, plan } = plannedPanel(state, job, mark)
  const yard = state.yard.yard
  return {
    plan,
    drawing: facts.drawing,
    facts,
    yard: state.yard,
    yardName: yard?.name ?? log.store.yard,
    timezone: yard?.timezone ?? 'UTC',
    size: paper,
    made: log.now(),
    address,
  }
}

/**
 * The figures of a plan that go into a passport: sizes, each check with its source, without the working, and the differences from the
 * lifting design that an engineer signed.
 */
function figuresOf(plan: Plan, facts: PanelFacts): PassportPlan {
  const { mass, volume, centre, length, width, thickness } = plan
  const checks = plan.checks.map(({ id, step, verdict, demand, limit, unit, source }) => ({
    id,
    step,
    verdict,
    demand,
    limit,
    unit,
    source,
  }))
  const differences = carriedFrom('strip', facts, plan).flatMap(({ kind, check, what, signed }) =>
    kind === 'difference' ? [{ check, what, ...signed }] : [],
  )
  const figures = {
    mass,
    volume,
    centre,
    length,
    width,
    thickness,
    checks,
    differences,
    assumed: plan.assumed,
  }
  return {
    engine: plan.engine,
    family: plan.family,
    editions: [...plan.editions],
    // Through JSON and back: what JSON leaves out, such as a field that is not given, cannot be signed.
    figures: JSON.parse(JSON.stringify(figures)) as PassportPlan['figures'],
  }
}

async function wholeLog(log: YardLog): Promise<StoredEntry[]> {
  const entries: StoredEntry[] = []
  for (;;) {
    const page = await log.store.read({ after: entries.length - 1, limit: PAGE })
    entries.push(...page)
    if (page.length < PAGE) return entries
  }
}
