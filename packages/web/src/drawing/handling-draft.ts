import type { Drawing } from '@castwright/engine/panel'
import type { InputIssue } from '@castwright/engine/working'
import { readNumber } from '../look/index.ts'

/** How a panel is kept, or carried, as typed. */
export interface DraftLying {
  /** `flat`, `upright`, or empty where the drawing does not say. */
  readonly as: string
  readonly across: string
  readonly first: string
  readonly second: string
  readonly lean: string
}

/** Stages by their factor's name in a drawing, in the order of a panel's life. */
export const FACTOR_STAGES = ['release', 'turn', 'hang', 'store', 'travel', 'erect'] as const
export type FactorStage = (typeof FACTOR_STAGES)[number]

/** What the drawing says about turning, keeping and carrying, as typed. */
export interface DraftHandling {
  readonly about: string
  /** Marks parted by spaces. */
  readonly inserts: string
  readonly rigging: string
  readonly store: DraftLying
  readonly travel: DraftLying
  readonly factors: Readonly<Record<FactorStage, string>>
}

const EMPTY_LYING: DraftLying = { as: '', across: '', first: '', second: '', lean: '' }

export const EMPTY_HANDLING: DraftHandling = {
  about: '',
  inserts: '',
  rigging: '',
  store: EMPTY_LYING,
  travel: EMPTY_LYING,
  factors: { release: '', turn: '', hang: '', store: '', travel: '', erect: '' },
}

type Handling = NonNullable<Drawing['handling']>

/** The drawing's handling as text to go on typing at. */
export function handlingDraft(handling: Handling | undefined): DraftHandling {
  if (handling === undefined) return EMPTY_HANDLING
  const { turn, store, travel, factors } = handling
  return {
    about: turn?.about ?? '',
    inserts: (turn?.inserts ?? []).map(markText).join(' '),
    rigging: turn?.rigging ?? '',
    store: lyingDraft(store),
    travel: lyingDraft(travel),
    factors: {
      release: text(factors?.release),
      turn: text(factors?.turn),
      hang: text(factors?.hang),
      store: text(factors?.store),
      travel: text(factors?.travel),
      erect: text(factors?.erect),
    },
  }
}

function lyingDraft(lying: Handling['store']): DraftLying {
  return {
    as: lying?.as ?? '',
    across: lying?.across ?? '',
    first: text(lying?.lines?.[0]),
    second: text(lying?.lines?.[1]),
    lean: text(lying?.lean),
  }
}

function text(value: number | undefined): string {
  return value === undefined ? '' : String(value)
}

/** The fields of a drawing's `handling` that were typed; undefined where none was. What cannot be read is an issue at its field. */
export function handlingValue(
  draft: DraftHandling,
  issues: InputIssue[],
): Readonly<Record<string, unknown>> | undefined {
  const number = (typed: string, path: string): number | undefined => {
    if (typed.trim() === '') return undefined
    const value = readNumber(typed)
    if (value === null) issues.push({ path, found: typed.trim(), expected: 'a number' })
    return value ?? undefined
  }
  const lying = (name: 'store' | 'travel'): unknown => {
    const { as, across, first, second, lean } = draft[name]
    const path = `handling.${name}`
    const places = [number(first, `${path}.lines[0]`), number(second, `${path}.lines[1]`)]
    const typed = first.trim() !== '' || second.trim() !== ''
    return part({
      as: word(as),
      across: word(across),
      lines: typed ? places : undefined,
      lean: number(lean, `${path}.lean`),
    })
  }
  const marks = marksOf(draft.inserts)
  return part({
    turn: part({
      about: word(draft.about),
      inserts: marks.length === 0 ? undefined : marks,
      rigging: word(draft.rigging),
    }),
    store: lying('store'),
    travel: lying('travel'),
    factors: part(
      Object.fromEntries(
        FACTOR_STAGES.map((stage) => [stage, number(draft.factors[stage], `handling.factors.${stage}`)]),
      ),
    ),
  })
}

/** Field of the form that an issue of `handling` belongs to: lists of marks are one field, timbers are two. */
export function handlingField(path: string): string {
  const lines = /^(handling\.(?:store|travel))(?:\.lines)?$/.exec(path)
  if (lines) return path.endsWith('lines') ? `${path}[0]` : `${lines[1]}.as`
  if (/^handling\.turn\.inserts\[\d+\]$/.test(path)) return 'handling.turn.inserts'
  return path === 'handling.turn' ? 'handling.turn.about' : path
}

/** Marks parted by spaces; one that holds a space stands in quotes. */
export function marksOf(typed: string): string[] {
  return [...typed.matchAll(/"((?:[^"\\]|\\.)*)"|\S+/g)].map(([whole, quoted]) =>
    quoted === undefined ? whole : quoted.replace(/\\(.)/gs, '$1'),
  )
}

function markText(mark: string): string {
  return /^[^\s"]+$/.test(mark) ? mark : `"${mark.replace(/["\\]/g, '\\$&')}"`
}

function word(typed: string): string | undefined {
  return typed.trim() === '' ? undefined : typed.trim()
}

function part(fields: Readonly<Record<string, unknown>>): Record<string, unknown> | undefined {
  const typed = Object.entries(fields).filter(([, value]) => value !== undefined)
  return typed.length === 0 ? undefined : Object.fromEntries(typed)
}
