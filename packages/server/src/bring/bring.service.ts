import { DRAWING_FORMAT, type Drawing, panelOf, parseDrawing } from '@castwright/engine/panel'
import type { PanelFacts } from '@castwright/engine/steps'
import { foundText, InputError, type InputIssue } from '@castwright/engine/working'
import { JOB_FORMAT, type Job, parseJob, parseYard, YARD_FORMAT, type Yard } from '@castwright/engine/yard'
import {
  canonicalText,
  type Draft,
  fold,
  type Person,
  panelSubject,
  type YardState,
} from '@castwright/record'
import type { YardLog } from '../entries/yard-log.ts'

/** A value that the file does not give and that was taken in its place. */
export interface Taken {
  readonly field: string
  readonly value: string
  readonly unit: string
  readonly why: string
}

export interface Brought {
  /** Entries that are new in the record. */
  readonly stored: number
  /** Drawings and other parts that were in the record just so. */
  readonly known: number
  readonly ids: readonly string[]
  readonly assumed: readonly Taken[]
}

/** Job of a drawing that names none. */
const LOOSE_JOB = 'loose'
const FIRST_REVISION = '1'

interface Wanted {
  readonly drafts: Draft[]
  readonly assumed: Taken[]
  known: number
}

/**
 * Brings a drawing, a yard or a job into the record: all of it or nothing. What is there just so is not stored again.
 *
 * @throws InputError with every field that does not fit, the drawings of a job by their place in it.
 */
export function bring(log: YardLog, person: Person, input: unknown, from = ''): Promise<Brought> {
  return log.turn(async () => {
    const wanted = wantedFrom(input, await log.state(), log.store.yard, from)
    const stored = wanted.drafts.length === 0 ? [] : await log.make(person, wanted.drafts)
    return {
      stored: stored.length,
      known: wanted.known,
      ids: stored.map(({ id }) => id),
      assumed: wanted.assumed,
    }
  })
}

/**
 * Reads what would be brought in, without a record.
 *
 * @throws InputError with every field that does not fit by itself.
 */
export function checkBrought(input: unknown, from = ''): void {
  wantedFrom(input, fold([]), '', from)
}

function wantedFrom(input: unknown, state: YardState, yard: string, from: string): Wanted {
  const wanted: Wanted = { drafts: [], assumed: [], known: 0 }
  const format = (input as { readonly format?: unknown } | null)?.format
  switch (format) {
    case DRAWING_FORMAT:
      wantDrawing(wanted, state, readDrawing(input, from), { job: undefined, path: '', from })
      return wanted
    case YARD_FORMAT:
      wantYard(wanted, state, parseYard(input, from), yard)
      return wanted
    case JOB_FORMAT:
      wantJob(wanted, state, parseJob(input, from), from)
      return wanted
    default:
      throw new InputError(
        [
          {
            path: 'format',
            found: foundText(format),
            expected: `one of ${[DRAWING_FORMAT, YARD_FORMAT, JOB_FORMAT].map((word) => JSON.stringify(word)).join(', ')}`,
          },
        ],
        from,
      )
  }
}

/** What was read from JSON by a schema is JSON; its type only says more. */
function asJson(value: Yard | Drawing): Draft['value'] {
  return value as unknown as Draft['value']
}

function readDrawing(value: unknown, from: string): Drawing {
  const drawing = parseDrawing(value, from)
  panelOf(drawing, from)
  return drawing
}

function wantYard(wanted: Wanted, state: YardState, yard: Yard, id: string): void {
  if (state.yard.yard !== null && canonicalText(state.yard.yard) === canonicalText(yard)) wanted.known += 1
  else wanted.drafts.push({ kind: 'yard', subject: { kind: 'yard', id }, value: asJson(yard) })
}

function wantJob(wanted: Wanted, state: YardState, job: Job, from: string): void {
  const issues: InputIssue[] = []
  const here = state.yard.yard?.name
  if (here !== undefined && here !== job.yard) {
    issues.push({
      path: 'yard',
      found: foundText(job.yard),
      expected: `${JSON.stringify(here)}, the yard of this record`,
    })
  }
  if (job.mark.includes('/')) {
    issues.push({ path: 'mark', found: foundText(job.mark), expected: 'a job mark without a slash' })
  }
  const value = { mark: job.mark, yard: job.yard, ...(job.due === undefined ? {} : { due: job.due }) }
  const known = state.jobs.get(job.mark)
  const same =
    known !== undefined &&
    known.yard === job.yard &&
    canonicalText(known.due) === canonicalText(job.due ?? {})
  if (same) wanted.known += 1
  else wanted.drafts.push({ kind: 'job', subject: { kind: 'job', id: job.mark }, value })

  const marks = new Set<string>()
  for (const [index, given] of job.drawings.entries()) {
    const path = `drawings[${index}]`
    try {
      const drawing = readDrawing(given, '')
      if (marks.has(drawing.mark)) {
        issues.push({
          path: `${path}.mark`,
          found: foundText(drawing.mark),
          expected: 'a mark used once in the job',
        })
      }
      marks.add(drawing.mark)
      wantDrawing(wanted, state, drawing, { job: job.mark, path, from: '' })
    } catch (error) {
      if (!(error instanceof InputError)) throw error
      issues.push(...error.issues.map((issue) => ({ ...issue, path: under(path, issue.path) })))
    }
  }
  if (issues.length > 0) throw new InputError(issues, from)
}

interface Place {
  /** Job that the drawing stands in; undefined for a drawing by itself. */
  readonly job: string | undefined
  readonly path: string
  readonly from: string
}

function wantDrawing(wanted: Wanted, state: YardState, drawing: Drawing, { job, path, from }: Place): void {
  const { mark } = drawing
  if (job !== undefined && drawing.job !== undefined && drawing.job !== job) {
    throw new InputError(
      [{ path: 'job', found: foundText(drawing.job), expected: JSON.stringify(job) }],
      from,
    )
  }
  const inJob = drawing.job ?? job ?? LOOSE_JOB
  if (inJob.includes('/')) {
    throw new InputError(
      [{ path: 'job', found: foundText(inJob), expected: 'a job mark without a slash' }],
      from,
    )
  }
  const facts = state.panels.get(`${inJob}/${mark}`)
  const revision =
    drawing.revision ?? (isSameDrawing(facts, drawing) ? facts?.revision : null) ?? FIRST_REVISION
  if (facts?.drawing) {
    if (isSameDrawing(facts, { ...drawing, revision })) {
      wanted.known += 1
      return
    }
    if (facts.revision === revision) {
      throw new InputError(
        [
          {
            path: 'revision',
            found: foundText(drawing.revision),
            expected: `a revision other than ${JSON.stringify(facts.revision)}: the record has another drawing of ${mark} under it`,
          },
        ],
        from,
      )
    }
  }
  if (drawing.job === undefined && job === undefined) {
    wanted.assumed.push({
      field: under(path, 'job'),
      value: inJob,
      unit: '',
      why: 'the drawing names no job',
    })
  }
  if (drawing.revision === undefined) {
    wanted.assumed.push({
      field: under(path, 'revision'),
      value: revision,
      unit: '',
      why: 'the drawing names no revision and is the first of its mark',
    })
  }
  wanted.drafts.push({
    kind: 'drawing',
    subject: panelSubject(inJob, mark),
    revision,
    value: asJson(drawing),
  })
}

/** The same drawing, whether or not job and revision are written in it. */
function isSameDrawing(facts: PanelFacts | undefined, drawing: Drawing): boolean {
  if (facts === undefined || facts.drawing === null || facts.revision === null) return false
  const whole = { job: facts.job, revision: facts.revision }
  return canonicalText({ ...facts.drawing, ...whole }) === canonicalText({ ...whole, ...drawing })
}

function under(path: string, field: string): string {
  if (path === '') return field
  if (field === '') return path
  return field.startsWith('[') ? `${path}${field}` : `${path}.${field}`
}

/** A job with the drawings in force, or null where nothing of it is in the record. */
export function jobFile(state: YardState, mark: string): Job | null {
  const job = state.jobs.get(mark)
  const panels = [...state.panels.values()].filter((facts) => facts.job === mark && facts.drawing !== null)
  if (job === undefined && panels.length === 0) return null
  return {
    format: JOB_FORMAT,
    mark,
    yard: job?.yard ?? state.yard.yard?.name ?? 'not named',
    drawings: panels.map(({ drawing, revision }) => ({
      ...drawing,
      job: mark,
      ...(revision === null ? {} : { revision }),
    })),
    ...(job === undefined || Object.keys(job.due).length === 0 ? {} : { due: { ...job.due } }),
  }
}
