import { DRAWING_FORMAT, type Drawing, panelOf, parseDrawing } from '@castwright/engine/panel'
import { InputError, type InputIssue } from '@castwright/engine/working'
import { readNumber } from '../look/index.ts'
import type { Draft, DraftBar, DraftCorner, DraftDuct, DraftMat, DraftOpening, DraftVoid } from './draft.ts'
import { fieldOf } from './field-of.ts'
import { handlingValue } from './handling-draft.ts'
import { laidValue } from './laid-draft.ts'

export interface ReadDraft {
  /** Null while something is missing or wrong. */
  readonly drawing: Drawing | null
  /** What is wrong, by field; of each field the first. */
  readonly faults: ReadonlyMap<string, string>
}

/** A draft as the drawing that it says, or what is wrong with it at each field. */
export function readDraft(draft: Draft): ReadDraft {
  const typed = typedDrawing(draft)
  const issues: InputIssue[] = [...typed.issues]
  let drawing: Drawing | null = null
  try {
    const read = parseDrawing(typed.value)
    panelOf(read)
    drawing = read
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    issues.push(...error.issues)
  }
  const faults = new Map<string, string>()
  const typedGroups = new Set(typed.issues.map(({ path }) => groupOf(path)))
  for (const [index, issue] of issues.entries()) {
    const own = index < typed.issues.length
    const field = own ? issue.path : fieldOf(issue.path, draft)
    // Where a number of a group cannot be read, what follows from it in the same group is no fault of its own.
    if (!own && typedGroups.has(groupOf(field)) && groupOf(field) !== '') continue
    if (!faults.has(field)) faults.set(field, sentence(issue))
  }
  return { drawing: issues.length === 0 ? drawing : null, faults }
}

/** `openings[0]` of `openings[0].width`, `outline` of `outline.length`; empty for a field of its own. */
function groupOf(field: string): string {
  return (
    /^(openings\[\d+\]|voids\[\d+\]|ducts\[\d+\]|steel\[\d+\]|inserts\[\d+\]|outline)/.exec(field)?.[0] ?? ''
  )
}

/** The schema's words for kinds of values, in those of the form. */
const KIND_WORDS: Readonly<Record<string, string>> = {
  'a value of kind number': 'a number',
  'a value of kind string': 'a word',
}

export function sentence({ found, expected }: InputIssue): string {
  const wanted = KIND_WORDS[expected] ?? expected
  return found === 'nothing' ? `Missing: ${wanted}.` : `Found ${found}, expected ${wanted}.`
}

interface Typed {
  readonly value: unknown
  readonly issues: readonly InputIssue[]
}

/** The drawing's fields with every typed number read; those that cannot be read are issues at their field. */
function typedDrawing(draft: Draft): Typed {
  const issues: InputIssue[] = []
  const number = (text: string, path: string, needed = false): number | undefined => {
    if (text.trim() === '') {
      if (needed) issues.push({ path, found: 'nothing', expected: 'a number' })
      return undefined
    }
    const value = readNumber(text)
    if (value === null) issues.push({ path, found: text.trim(), expected: 'a number' })
    return value ?? undefined
  }
  const size = (text: string, path: string): number | undefined => {
    const value = number(text, path, true)
    if (value === undefined || value > 0) return value
    issues.push({ path, found: text.trim(), expected: 'a number above 0' })
    return undefined
  }
  const corners = (list: readonly DraftCorner[], path: string): unknown[] =>
    list.map(({ x, y }, index) => [
      number(x, `${path}[${index}].x`, true),
      number(y, `${path}[${index}].y`, true),
    ])
  const value = {
    format: DRAWING_FORMAT,
    ...words({
      mark: draft.mark,
      job: draft.job,
      revision: draft.revision,
      code: draft.code,
      edition: draft.edition,
    }),
    outline:
      draft.form === 'box'
        ? box(0, 0, size(draft.length, 'outline.length'), size(draft.width, 'outline.width'))
        : corners(draft.corners, 'outline'),
    ...given({ thickness: number(draft.thickness, 'thickness') }),
    concrete: given({
      strength: number(draft.strength, 'concrete.strength'),
      density: number(draft.density, 'concrete.density'),
      aggregate: number(draft.aggregate, 'concrete.aggregate'),
    }),
    ...whole('cover', {
      mould: number(draft.coverMould, 'cover.mould'),
      top: number(draft.coverTop, 'cover.top'),
      edge: number(draft.coverEdge, 'cover.edge'),
    }),
    ...list(
      'openings',
      draft.openings.map((opening, index) =>
        openingValue(opening, `openings[${index}]`, { number, size, corners }),
      ),
    ),
    ...list(
      'voids',
      draft.voids.map((former, index) => voidValue(former, `voids[${index}]`, { number, size, corners })),
    ),
    ...list(
      'ducts',
      draft.ducts.map((duct, index) => ductValue(duct, `ducts[${index}]`, { number, corners })),
    ),
    ...list(
      'steel',
      draft.steel.map((steel, index) =>
        steel.kind === 'mat'
          ? matValue(steel, `steel[${index}]`, number)
          : steel.kind === 'laid'
            ? laidValue(steel, `steel[${index}]`, issues)
            : barValue(steel, `steel[${index}]`, { number, corners, issues }),
      ),
    ),
    ...whole('lap', { length: number(draft.lap, 'lap.length') }),
    ...list(
      'inserts',
      draft.inserts.map((insert, index) => ({
        ...words({ mark: insert.mark, kind: insert.kind, type: insert.type }),
        at: [number(insert.x, `inserts[${index}].x`, true), number(insert.y, `inserts[${index}].y`, true)],
      })),
    ),
    ...list('congested', draft.congested),
    ...words({ rigging: draft.rigging }),
    ...whole('lifting', {
      strength: number(draft.liftStrength, 'lifting.strength'),
      load: number(draft.liftLoad, 'lifting.load'),
      ...words({ reference: draft.liftReference, by: draft.liftBy }),
    }),
    ...given({ handling: handlingValue(draft.handling, issues) }),
  }
  return { value, issues }
}

interface Readers {
  readonly number: (text: string, path: string, needed?: boolean) => number | undefined
  readonly size: (text: string, path: string) => number | undefined
  readonly corners: (list: readonly DraftCorner[], path: string) => unknown[]
}

function openingValue(opening: DraftOpening, path: string, readers: Readers): unknown {
  return { ...words({ mark: opening.mark }), outline: ringValue(opening, path, readers) }
}

function ringValue(opening: DraftOpening, path: string, { number, size, corners }: Readers): unknown {
  return opening.form === 'corners'
    ? corners(opening.corners, `${path}.outline`)
    : box(
        number(opening.x, `${path}.x`, true),
        number(opening.y, `${path}.y`, true),
        size(opening.width, `${path}.width`),
        size(opening.height, `${path}.height`),
      )
}

function voidValue(former: DraftVoid, path: string, readers: Readers): unknown {
  const { number } = readers
  return {
    ...words({ mark: former.mark }),
    outline: ringValue(former, path, readers),
    ...given({
      depth: number(former.depth, `${path}.depth`, true),
      above: number(former.above, `${path}.above`, true),
      mass: number(former.mass, `${path}.mass`),
      density: number(former.density, `${path}.density`),
      section: number(former.section, `${path}.section`),
    }),
  }
}

function ductValue(
  duct: DraftDuct,
  path: string,
  { number, corners }: Pick<Readers, 'number' | 'corners'>,
): unknown {
  return {
    ...words({ mark: duct.mark }),
    line: corners(duct.corners, `${path}.line`),
    ...given({
      diameter: number(duct.diameter, `${path}.diameter`, true),
      height: number(duct.height, `${path}.height`, true),
      mass: number(duct.mass, `${path}.mass`),
    }),
  }
}

function matValue(mat: DraftMat, path: string, number: Readers['number']): unknown {
  return {
    ...words({ layer: mat.layer, direction: mat.direction, grade: mat.grade }),
    ...given({
      diameter: number(mat.diameter, `${path}.diameter`, true),
      spacing: number(mat.spacing, `${path}.spacing`, true),
      spare: number(mat.spare ?? '', `${path}.spare`),
    }),
  }
}

function barValue(
  bar: DraftBar,
  path: string,
  { number, corners, issues }: Pick<Readers, 'number' | 'corners'> & { readonly issues: InputIssue[] },
): unknown {
  const row = (text: string, field: string): number[] | undefined => {
    const parts = text.split(/[\s;]+/).filter((part) => part !== '')
    const numbers = parts.map(readNumber)
    const bad = numbers.indexOf(null)
    if (bad >= 0)
      issues.push({ path: `${path}.${field}`, found: parts[bad] ?? '', expected: 'numbers parted by spaces' })
    return parts.length === 0 || bad >= 0 ? undefined : (numbers as number[])
  }
  return {
    ...words({ bar: bar.bar, grade: bar.grade, role: bar.role, layer: bar.layer }),
    ...given({
      diameter: number(bar.diameter, `${path}.diameter`, true),
      inside: number(bar.inside, `${path}.inside`),
      count: number(bar.count, `${path}.count`),
    }),
    ...(bar.tied === '' ? {} : { tied: bar.tied === 'yes' }),
    ...(bar.form === 'path'
      ? { path: corners(bar.corners, `${path}.path`) }
      : given({ legs: row(bar.legs, 'legs'), turns: row(bar.turns, 'turns') })),
  }
}

function box(x = Number.NaN, y = Number.NaN, width = Number.NaN, height = Number.NaN): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

/** Words that were typed; an empty field is absent. */
function words(fields: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(
    Object.entries(fields).flatMap(([name, text]) => (text.trim() === '' ? [] : [[name, text.trim()]])),
  )
}

function given(fields: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined))
}

/** A part of the drawing that is there as soon as one of its fields is. */
function whole(name: string, fields: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const part = given(fields)
  return Object.keys(part).length === 0 ? {} : { [name]: part }
}

function list(name: string, items: readonly unknown[]): Record<string, unknown> {
  return items.length === 0 ? {} : { [name]: items }
}
