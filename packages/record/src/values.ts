import { drawingSchema, parseDrawing } from '@castwright/engine/panel'
import { bundleSchema } from '@castwright/engine/steel/incoming'
import { panelStep } from '@castwright/engine/steps'
import { foundText, InputError, type InputIssue, parseInput } from '@castwright/engine/working'
import { yardSchema } from '@castwright/engine/yard'
import * as z from 'zod'
import { docketDecisionSchema, docketSchema } from './docket-values.ts'
import { type Entry, type EntryKind, entrySchema, type Subject } from './entry.ts'
import { cutPlanSchema, cutSchema, rackSchema, releaseSchema, usedSchema } from './steel-values.ts'

const word = z.string().min(1).max(200)
const mark = z.string().min(1).max(40)
const text = z.string().min(1).max(4000)
const instant = z.iso.datetime({ offset: false, precision: 3 })
const day = z.iso.date()
const nothing = z.null()

/** A tick, a number, words, a choice, or readings: numbers in a row, pairs, points, or named numbers. */
const seen = z.union([
  z.boolean(),
  z.number(),
  z.string().max(4000),
  z.array(z.union([z.number(), z.array(z.number()).max(100)])).max(20_000),
  z.record(word, z.union([z.boolean(), z.number(), z.string().max(4000), z.null()])),
])

/** The form of `value` by kind of entry; units in `docs/formats.md`. */
export const valueSchemas = {
  value: seen,
  close: nothing,
  request: nothing,
  opening: nothing,
  decision: nothing,
  /** Reference of the lifting design that is confirmed, as the drawing gives it. */
  design: z.strictObject({ reference: word }),
  /** What it was signed for: the row of the strip card as it stood, and the lifting design that it was held beside. */
  difference: z.strictObject({
    reference: word,
    verdict: z.enum(['fail', 'unknown']),
    demand: z.number().nullable(),
    limit: z.number().nullable(),
    unit: z.string().max(40),
    missing: z.array(text).max(200),
  }),
  defect: z.strictObject({
    text,
    /** Where on the panel, mm in the drawing's coordinates. */
    place: z.tuple([z.number(), z.number()]).nullable().optional(),
  }),
  disposition: z.strictObject({ decision: z.enum(['accept', 'repair', 'reject']) }),
  inspection: z.strictObject({ verdict: z.enum(['pass', 'fail', 'unknown']) }),
  /** The new value, in the form of what is corrected; null takes the earlier entry back. */
  correction: z.json(),
  drawing: drawingSchema,
  yard: yardSchema,
  /** The job's own data; its drawings are entries of their own. */
  job: z.strictObject({ mark, yard: z.string().min(1).max(120), due: z.record(mark, day).optional() }),
  cast: z.strictObject({
    /** Water met cement, UTC. */
    at: instant,
    bed: mark.nullable().optional(),
    mix: mark.nullable().optional(),
  }),
  docket: docketSchema,
  'docket-decision': docketDecisionSchema,
  temperature: z.strictObject({
    channel: word,
    /** Mixing time that the hours were counted from, UTC; the hours follow where the pour is corrected later. */
    mixed: instant.optional(),
    /** Hours from mixing, °C; hours rise. */
    readings: z
      .array(z.tuple([z.number(), z.number()]))
      .min(1)
      .max(20_000)
      .refine(rising, 'hours that rise from one reading to the next'),
  }),
  specimen: z.strictObject({
    specimen: mark,
    kind: z.enum(['cylinder', 'cube', 'probe']),
    /** Hours from mixing to the test. */
    age: z.number().positive(),
    /** MPa */
    strength: z.number().positive(),
    /** With the panel, or at the standard's temperature; with the panel where it is left out. */
    cured: z.enum(['panel', 'standard']).optional(),
  }),
  'specimen-set': z
    .strictObject({
      set: mark,
      kind: z.enum(['cylinder', 'cube']),
      /** Diameter or side, mm. */
      size: z.number().positive().max(1000).optional(),
      /** UTC; test ages count from here. */
      made: instant,
      docket: word.optional(),
      tests: z
        .array(
          z.strictObject({
            /** Hours from making to the test: up to ten years. */
            age: z.number().positive().max(87_660),
            cured: z.enum(['panel', 'standard']),
            specimens: z.array(mark).min(1).max(20),
          }),
        )
        .min(1)
        .max(20),
    })
    .refine(({ tests }) => {
      const marks = tests.flatMap(({ specimens }) => specimens)
      return new Set(marks).size === marks.length
    }, 'a mark of its own for each specimen'),
  weather: z.strictObject({
    /** What is still to come, as somebody foretold it; left out or false: as logged. */
    forecast: z.boolean().optional(),
    readings: z
      .array(
        z.strictObject({
          at: instant,
          /** °C */
          air: z.number().nullable(),
          /** % */
          humidity: z.number().min(0).max(100).nullable(),
          /** km/h */
          wind: z.number().min(0).nullable(),
          /** Height at which the wind was read, m; a station's 10 m where left out */
          windHeight: z.number().min(0.2).max(100).optional(),
          /** On a level face, W/m² */
          sun: z.number().min(0).max(1500).nullable().optional(),
          /** Temperature that the sky radiates at, °C */
          sky: z.number().min(-120).max(60).nullable().optional(),
        }),
      )
      .min(1)
      .max(20_000),
  }),
  /** In date up to and with this day of the yard. */
  gear: z.strictObject({ due: day, what: z.string().max(200).optional() }),
  limit: z.strictObject({ value: z.number(), unit: z.string().max(40), standard: word, edition: word }),
  place: z.strictObject({ place: word }),
  photo: z.union([nothing, z.strictObject({ text })]),
  bundle: bundleSchema,
  release: releaseSchema,
  rack: rackSchema,
  used: usedSchema,
  'cut-plan': cutPlanSchema,
  cut: cutSchema,
  passport: z.strictObject({
    sha256: z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hex'),
    to: word.optional(),
  }),
} as const satisfies Record<EntryKind, z.ZodType>

export type ValueOf<K extends EntryKind> = z.output<(typeof valueSchemas)[K]>

const STEP_WORDS = {
  hold: 'a hold point: set or strip',
  strip: 'strip',
  open: 'a step that is not a hold point',
  any: 'a step',
} as const

interface Needs {
  readonly subject?: readonly Subject['kind'][]
  readonly step?: keyof typeof STEP_WORDS
  readonly fields?: readonly ('check' | 'about' | 'reason' | 'revision' | 'rests' | 'attachments')[]
}

const PANEL = ['panel'] as const
const BUNDLE = ['bundle'] as const
const BAR = ['bar'] as const

/** What an entry of a kind must have beside its value. */
const NEEDS: Readonly<Record<EntryKind, Needs>> = {
  value: { fields: ['check'] },
  close: { subject: PANEL, step: 'open' },
  request: { subject: PANEL, step: 'hold' },
  opening: { subject: PANEL, step: 'hold', fields: ['rests'] },
  decision: { subject: PANEL, step: 'any', fields: ['check', 'reason'] },
  design: { subject: PANEL, fields: ['revision'] },
  difference: { subject: PANEL, step: 'strip', fields: ['check', 'reason', 'revision'] },
  defect: { subject: PANEL },
  disposition: { subject: PANEL, fields: ['about', 'reason'] },
  inspection: { subject: PANEL, fields: ['about'] },
  correction: { fields: ['about', 'reason'] },
  drawing: { subject: PANEL, fields: ['revision'] },
  yard: { subject: ['yard'] },
  job: { subject: ['job'] },
  cast: { subject: PANEL },
  docket: { subject: PANEL },
  'docket-decision': { subject: PANEL, fields: ['about', 'reason'] },
  temperature: { subject: PANEL },
  specimen: { subject: PANEL },
  'specimen-set': { subject: PANEL },
  weather: { subject: ['yard'] },
  gear: { subject: ['gear'] },
  limit: { subject: ['yard'], fields: ['check'] },
  place: { subject: PANEL },
  photo: { fields: ['attachments'] },
  bundle: { subject: BUNDLE },
  release: { subject: BUNDLE },
  rack: { subject: BAR },
  used: { subject: BUNDLE },
  'cut-plan': { subject: ['yard', 'job'] },
  cut: { subject: BAR },
  passport: { subject: PANEL },
}

/**
 * Reads an entry as it comes from a device: its frame, its value by kind, and what its kind needs beside the value.
 *
 * @throws InputError naming each field.
 */
export function parseEntry(value: unknown, from = ''): Entry {
  const entry = parseInput(entrySchema, value, from)
  const issues = [...needIssues(entry), ...valueIssues(entry)]
  if (issues.length > 0) throw new InputError(issues, from)
  return entry
}

/** Whether a corrected value has the form that its kind asks for. Null takes the entry back and always has. */
export function isValueOf<K extends EntryKind>(kind: K, value: unknown): value is ValueOf<K> {
  return valueSchemas[kind].safeParse(value).success
}

/** Job and mark of a panel's subject id, or null where it is not of the form `<job>/<mark>`. */
export function panelOfSubject(id: string): { readonly job: string; readonly mark: string } | null {
  const cut = id.indexOf('/')
  return cut > 0 && cut < id.length - 1 ? { job: id.slice(0, cut), mark: id.slice(cut + 1) } : null
}

function needIssues(entry: Entry): InputIssue[] {
  const needs = NEEDS[entry.kind]
  const issues: InputIssue[] = []
  if (needs.subject && !needs.subject.includes(entry.subject.kind)) {
    issues.push({
      path: 'subject.kind',
      found: foundText(entry.subject.kind),
      expected: needs.subject.map((kind) => JSON.stringify(kind)).join(' or '),
    })
  }
  if (entry.subject.kind === 'panel' && panelOfSubject(entry.subject.id) === null) {
    issues.push({ path: 'subject.id', found: foundText(entry.subject.id), expected: 'job/mark' })
  }
  const step = needs.step ?? (entry.kind === 'value' && entry.subject.kind === 'panel' ? 'any' : undefined)
  if (step !== undefined) issues.push(...stepIssues(entry, step))
  for (const field of needs.fields ?? []) {
    const given = entry[field]
    const empty = given === undefined || (typeof given !== 'string' && given.length === 0) || given === ''
    if (empty && !(field === 'rests' && given !== undefined)) {
      issues.push({ path: field, found: foundText(given), expected: `${field} of a ${entry.kind}` })
    }
  }
  return issues
}

function stepIssues({ step }: Entry, wanted: keyof typeof STEP_WORDS): InputIssue[] {
  const good =
    step !== undefined &&
    (wanted === 'any' ||
      (wanted === 'strip' ? step === 'strip' : panelStep(step).hold === (wanted === 'hold')))
  return good ? [] : [{ path: 'step', found: foundText(step), expected: STEP_WORDS[wanted] }]
}

function valueIssues(entry: Entry): InputIssue[] {
  try {
    parseInput(valueSchemas[entry.kind], entry.value)
    return entry.kind === 'drawing' ? drawingIssues(entry) : entry.kind === 'job' ? jobIssues(entry) : []
  } catch (error) {
    if (error instanceof InputError) return error.issues.map(underValue)
    throw error
  }
}

function drawingIssues(entry: Entry): InputIssue[] {
  const drawing = parseDrawing(entry.value)
  const panel = panelOfSubject(entry.subject.id)
  const issues: InputIssue[] = []
  const differ = (path: string, found: string | undefined, wanted: string | undefined) => {
    if (found !== undefined && wanted !== undefined && found !== wanted) {
      issues.push({ path, found: foundText(found), expected: `${JSON.stringify(wanted)}, as in the entry` })
    }
  }
  differ('mark', drawing.mark, panel?.mark)
  differ('job', drawing.job, panel?.job)
  differ('revision', drawing.revision, entry.revision)
  return issues.map(underValue)
}

function jobIssues(entry: Entry): InputIssue[] {
  const { mark: found } = entry.value as ValueOf<'job'>
  return found === entry.subject.id
    ? []
    : [{ path: 'value.mark', found: foundText(found), expected: JSON.stringify(entry.subject.id) }]
}

function underValue(issue: InputIssue): InputIssue {
  const path =
    issue.path === '' ? 'value' : issue.path.startsWith('[') ? `value${issue.path}` : `value.${issue.path}`
  return { ...issue, path }
}

function rising(readings: readonly (readonly [number, number])[]): boolean {
  return readings.every(([hours], index) => index === 0 || hours > (readings[index - 1]?.[0] ?? -Infinity))
}
