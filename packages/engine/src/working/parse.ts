import type { z } from 'zod'
import { foundText, InputError, type InputIssue } from './issue.ts'

/**
 * Reads a value by its schema once, at the edge.
 *
 * @throws InputError with one issue a fault: path, what came, what was expected.
 */
export function parseInput<T extends z.ZodType>(schema: T, value: unknown, from = ''): z.output<T> {
  const result = schema.safeParse(value)
  if (result.success) return result.data
  throw new InputError(inputIssues(result.error, value), from)
}

/** What a schema found wrong in `value`, as issues: for an edge that has parsed by itself. */
export function inputIssues(error: z.ZodError, value: unknown): InputIssue[] {
  return error.issues.flatMap((issue) => issuesOf(issue as LooseIssue, value, []))
}

/** JSON text to a value by its schema. @throws InputError, also where the text is not JSON. */
export function parseJson<T extends z.ZodType>(schema: T, text: string, from = ''): z.output<T> {
  return parseInput(schema, readJson(text, from), from)
}

/** @throws InputError where the text is not JSON. A byte-order mark is fine. */
export function readJson(text: string, from = ''): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''))
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    throw new InputError([{ path: '', found: `text that is not JSON (${why})`, expected: 'JSON' }], from)
  }
}

/** The fields of a zod issue that are read here, whatever its kind. */
interface LooseIssue {
  readonly code: string
  readonly path: readonly PropertyKey[]
  readonly message: string
  readonly expected?: string
  readonly keys?: readonly string[]
  readonly values?: readonly unknown[]
  readonly minimum?: number
  readonly maximum?: number
  readonly inclusive?: boolean
  readonly origin?: string
  readonly errors?: readonly (readonly LooseIssue[])[]
}

function issuesOf(issue: LooseIssue, root: unknown, above: readonly PropertyKey[]): InputIssue[] {
  const path = [...above, ...issue.path]
  if (issue.code === 'invalid_union' && issue.errors && issue.errors.length > 0) {
    // The branch that fits best is the one the writer meant: fewest faults.
    const best = [...issue.errors].sort((a, b) => faults(a) - faults(b))[0] ?? []
    if (best.length > 0) return best.flatMap((inner) => issuesOf(inner, root, path))
  }
  if (issue.code === 'unrecognized_keys') {
    return (issue.keys ?? []).map((key) => ({
      path: pathText([...path, key]),
      found: foundText(valueAt(root, [...path, key])),
      expected: 'no field of this name',
    }))
  }
  return [{ path: pathText(path), found: foundText(valueAt(root, path)), expected: expectedText(issue) }]
}

function faults(issues: readonly LooseIssue[]): number {
  return issues.reduce(
    (sum, issue) => sum + (issue.code === 'unrecognized_keys' ? (issue.keys?.length ?? 1) : 1),
    0,
  )
}

function expectedText(issue: LooseIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.expected === 'int' ? 'a whole number' : `a value of kind ${issue.expected ?? 'other'}`
    case 'invalid_value':
      return (issue.values ?? []).length === 1
        ? JSON.stringify(issue.values?.[0])
        : `one of ${(issue.values ?? []).map((value) => JSON.stringify(value)).join(', ')}`
    case 'too_small':
      return sizeText(issue, issue.inclusive === false ? 'above' : 'at least', issue.minimum)
    case 'too_big':
      return sizeText(issue, issue.inclusive === false ? 'below' : 'at most', issue.maximum)
    default:
      return issue.message
  }
}

function sizeText(issue: LooseIssue, words: string, bound: number | undefined): string {
  const of = issue.origin === 'array' ? ' entries' : issue.origin === 'string' ? ' characters' : ''
  return `${of === '' ? 'a number ' : ''}${words} ${bound}${of}`
}

export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, key) =>
      typeof key === 'number' ? `${text}[${key}]` : text === '' ? String(key) : `${text}.${String(key)}`,
    '',
  )
}

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((value, key) => {
    if (value === null || typeof value !== 'object') return undefined
    return (value as Record<PropertyKey, unknown>)[key]
  }, root)
}
