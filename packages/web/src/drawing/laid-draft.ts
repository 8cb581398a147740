import { type DrawnSteel, isEdgeBars, isStarters, isTrimmers } from '@castwright/engine/panel'
import type { InputIssue } from '@castwright/engine/working'
import { readNumber } from '../look/field.tsx'

/** Steel that is drawn by where it goes: along edges, beside openings, out of the concrete, across it. */
export type LaidForm = 'edge' | 'trim' | 'starters' | 'ties'

export interface DraftLaid {
  readonly kind: 'laid'
  readonly form: LaidForm
  /** What was typed, by field of the drawing; `diagonals.length` for a field inside one. */
  readonly texts: Readonly<Record<string, string>>
}

export interface LaidField {
  readonly name: string
  readonly label: string
  readonly unit?: string
  readonly note?: string
  /** `places`: coordinates in mm, `x y; x y`; `place`: an edge word or such a line. */
  readonly as: 'number' | 'words' | 'places' | 'place'
  readonly choices?: readonly (readonly [value: string, word: string])[]
  readonly needed?: true
}

const LAYERS = [
  ['mould', 'mould'],
  ['top', 'top'],
] as const
const EDGES = 'all, outer, openings, bottom, top, left, right, or the mark of an opening.'
const MARK: LaidField = { name: 'mark', label: 'Mark', as: 'words', note: 'Left empty it gets one.' }
const SIZE: readonly LaidField[] = [
  { name: 'diameter', label: 'Diameter', unit: 'mm', as: 'number', needed: true },
  { name: 'grade', label: 'Grade', as: 'words', needed: true },
]
const INSIDE: LaidField = {
  name: 'inside',
  label: 'Bend, inside',
  unit: 'mm',
  as: 'number',
  note: 'Left empty: the least that the code allows.',
}
const SPACING: LaidField = { name: 'spacing', label: 'Spacing', unit: 'mm', as: 'number', needed: true }

/** What a form asks for, in the order of the page. */
export const LAID_FORMS: Readonly<
  Record<LaidForm, { readonly name: string; readonly button: string; readonly fields: readonly LaidField[] }>
> = {
  edge: {
    name: 'edge bars',
    button: 'Add edge bars',
    fields: [
      MARK,
      { name: 'edge', label: 'Along', as: 'words', note: EDGES, needed: true },
      {
        name: 'form',
        label: 'Form',
        as: 'words',
        choices: [
          ['u', 'U round both layers'],
          ['hook', 'hook from one layer'],
        ],
      },
      { name: 'layer', label: 'Leg of a hook lies in', as: 'words', choices: [['', 'it is a U'], ...LAYERS] },
      ...SIZE,
      SPACING,
      { name: 'leg', label: 'Leg, outside', unit: 'mm', as: 'number', needed: true },
      INSIDE,
    ],
  },
  trim: {
    name: 'trimmers',
    button: 'Add trimmers',
    fields: [
      MARK,
      { name: 'trim', label: 'Beside', as: 'words', note: 'all, or the mark of an opening.', needed: true },
      { name: 'layer', label: 'In', as: 'words', choices: [['both', 'both layers'], ...LAYERS] },
      ...SIZE,
      { name: 'count', label: 'Bars beside each side', as: 'number', needed: true },
      { name: 'beyond', label: 'Past the corner', unit: 'mm', as: 'number', needed: true },
      { name: 'apart', label: 'Apart', unit: 'mm', as: 'number' },
      {
        name: 'diagonals.diameter',
        label: 'Diagonals, diameter',
        unit: 'mm',
        as: 'number',
        note: 'Left empty: none.',
      },
      { name: 'diagonals.grade', label: 'Diagonals, grade', as: 'words' },
      { name: 'diagonals.length', label: 'Diagonals, length', unit: 'mm', as: 'number' },
      { name: 'diagonals.count', label: 'Diagonals at each corner', as: 'number' },
    ],
  },
  starters: {
    name: 'starters',
    button: 'Add starters',
    fields: [
      MARK,
      {
        name: 'starters',
        label: 'Out of',
        as: 'place',
        note: `${EDGES} Or the two ends of a line on the top face, x y; x y.`,
        needed: true,
      },
      {
        name: 'layer',
        label: 'Out of an edge, they lie in',
        as: 'words',
        choices: [['', 'they stand on a line'], ...LAYERS],
      },
      ...SIZE,
      SPACING,
      { name: 'embed', label: 'In the concrete', unit: 'mm', as: 'number', needed: true },
      { name: 'project', label: 'Out of it', unit: 'mm', as: 'number', needed: true },
      { name: 'foot', label: 'Foot', unit: 'mm', as: 'number' },
      INSIDE,
    ],
  },
  ties: {
    name: 'ties',
    button: 'Add ties',
    fields: [
      MARK,
      {
        name: 'ties',
        label: 'At',
        unit: 'mm',
        as: 'places',
        note: 'With a spacing the two ends of a line, x y; x y; without one the middle of each tie.',
        needed: true,
      },
      { name: 'spacing', label: 'Spacing along the line', unit: 'mm', as: 'number' },
      {
        name: 'across',
        label: 'Width of single ties along',
        as: 'words',
        choices: [
          ['', 'they stand along a line'],
          ['x', 'x'],
          ['y', 'y'],
        ],
      },
      ...SIZE,
      { name: 'width', label: 'Width, outside', unit: 'mm', as: 'number', needed: true },
      INSIDE,
      { name: 'tail', label: 'Tail past the hook', unit: 'mm', as: 'number' },
    ],
  },
}

export function laidForm(steel: DrawnSteel): LaidForm {
  if (isEdgeBars(steel)) return 'edge'
  if (isTrimmers(steel)) return 'trim'
  return isStarters(steel) ? 'starters' : 'ties'
}

/** Steel of a drawing as the texts of its form. */
export function laidDraft(steel: DrawnSteel): DraftLaid {
  const form = laidForm(steel)
  const texts: Record<string, string> = {}
  for (const { name } of LAID_FORMS[form].fields) {
    const [outer = '', inner] = name.split('.')
    const held = (steel as unknown as Record<string, unknown>)[outer]
    const value = inner === undefined ? held : (held as Record<string, unknown> | undefined)?.[inner]
    texts[name] = textOf(value)
  }
  return { kind: 'laid', form, texts }
}

function textOf(value: unknown): string {
  if (value === undefined) return ''
  return Array.isArray(value)
    ? (value as number[][]).map((place) => place.join(' ')).join('; ')
    : String(value)
}

/** A new, empty one of a form; a grade is taken over from what was typed before. */
export function emptyLaid(form: LaidForm, grade: string): DraftLaid {
  const texts = Object.fromEntries(
    LAID_FORMS[form].fields.map(({ name, choices }) => [
      name,
      choices?.[0]?.[0] ?? (name === 'grade' ? grade : ''),
    ]),
  )
  return { kind: 'laid', form, texts }
}

/** The drawing's value of what was typed; what cannot be read is an issue at `<path>.<field>`. */
export function laidValue({ form, texts }: DraftLaid, path: string, issues: InputIssue[]): unknown {
  const value: Record<string, unknown> = {}
  for (const field of LAID_FORMS[form].fields) {
    const typed = (texts[field.name] ?? '').trim()
    if (typed === '') {
      if (field.needed)
        issues.push({ path: `${path}.${field.name}`, found: 'nothing', expected: wantedOf(field) })
      continue
    }
    const read = readOf(field, typed)
    if (read === null) {
      issues.push({ path: `${path}.${field.name}`, found: typed, expected: wantedOf(field) })
      continue
    }
    const [outer = '', inner] = field.name.split('.')
    if (inner === undefined) value[outer] = read
    else value[outer] = { ...(value[outer] as object | undefined), [inner]: read }
  }
  return value
}

function wantedOf({ as }: LaidField): string {
  if (as === 'number') return 'a number'
  return as === 'words' ? 'a word' : 'places in mm, x y; x y'
}

function readOf({ as }: LaidField, typed: string): unknown {
  if (as === 'words') return typed
  if (as === 'number') return readNumber(typed)
  // The start of a number tells a line from a word for edges.
  if (as === 'place' && !/^[-−+.\d]/.test(typed)) return typed
  const places = typed.split(';').map((place) =>
    place
      .trim()
      .split(/[\s,]+/)
      .map(readNumber),
  )
  return places.every((place) => place.length === 2 && !place.includes(null)) ? places : null
}
