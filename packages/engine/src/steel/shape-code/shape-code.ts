import { bendRow } from '../../codes/eu/bs8666-2005/bend-table.ts'
import { ceilTo } from '../../working/round.ts'
import type { Source } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import { cutLength } from '../cut-length.ts'
import { isoCode } from './iso3766.ts'
import { type FlatShape, matchShape } from './match-shape.ts'
import type { ShapeRow } from './shape-rows.ts'
import { sideConditions } from './side-conditions.ts'

export interface ShapeInput {
  /** mm */
  readonly diameter: number
  /** Inside diameter of every bend, mm; null for a straight bar. */
  readonly inside: number | null
  /** Outside dimensions as `cutLength` takes them, mm. */
  readonly legs: readonly number[]
  /** Turn of each bend, degrees: one for all, or one a bend. */
  readonly turns: readonly number[]
  /** Side of each turn: 1 to the left, −1 to the right; one a bend. */
  readonly senses: readonly (1 | -1)[]
  /** Whether a leg leaves the plane of the others. */
  readonly outOfPlane: boolean
}

export interface ShapeLabels {
  /** Shape code of BS 8666; 99 where none fits exactly: then a dimensioned sketch goes with it. */
  readonly bs8666: string
  /** Code of EN ISO 3766, from memory. */
  readonly iso3766: string
  /** Whether the BS 8666 label needs a sketch. */
  readonly sketch: boolean
  /** Dimensions by the letters of BS 8666, mm; empty for 99. */
  readonly dimensions: Readonly<Record<string, number>>
  /** True length along the centreline, mm: what is cut. */
  readonly length: number
  /** Length by the standard's own formula, mm, not rounded; null where it has none that holds here. */
  readonly formulaLength: number | null
  /** The formula's length less the true one, mm. */
  readonly difference: number | null
  /** Side conditions of the shape that the bar does not meet. */
  readonly notMet: readonly string[]
  readonly notes: readonly string[]
  /** Of the figure; null for 99. */
  readonly source: Source | null
}

/** Lengths on a schedule of BS 8666 go up to a multiple of this, mm. */
const SCHEDULE_STEP = 25

/** From this many bends on the standard says that tolerances may not be held. */
const MANY_BENDS = 5

/** Steepest bend that the approximate formulas are for, degrees. */
const ROUGH_TO = 45

/**
 * Labels for a bar's shape where one fits exactly, read from either end. The length is always the true one; the standard's own formula stands
 * beside it.
 *
 * Unknown as `cutLength` is, and where the sides of the turns are not one a bend. Example: 12 mm, inside 48, legs 600 and 400: shape 11,
 * 975.1 mm, by the formula 976.
 */
export function shapeLabels(input: ShapeInput): Worked<ShapeLabels> {
  const { diameter, inside, legs, senses, outOfPlane } = input
  const cut = cutLength(input)
  if (!cut.known) return cut
  if (senses.length !== legs.length - 1) return unknown('senses: one for each bend')
  const turns = legs
    .slice(1)
    .map((_, at) => (input.turns.length === 1 ? input.turns[0] : input.turns[at]) ?? 0)
  const flat: FlatShape = { legs, turns, senses }
  const standard = isStandard(diameter, inside)
  const { length } = cut.value
  const found = outOfPlane ? null : matchShape(flat, standard ?? false)
  const iso3766 = outOfPlane ? '99' : isoCode(flat, standard ?? false)
  if (found === null) {
    return known(
      {
        bs8666: '99',
        iso3766,
        sketch: true,
        dimensions: {},
        length,
        formulaLength: null,
        difference: null,
        notMet: [],
        notes: whyNone(input, standard),
        source: null,
      },
      cut.working,
    )
  }
  const { row, read } = found
  const dimensions = dimensionsOf(row, read, input)
  const step = formulaStep(row, read, input, dimensions)
  const formulaLength = step === null ? null : Number(step.result)
  return known(
    {
      bs8666: row.code,
      iso3766,
      sketch: false,
      dimensions,
      length,
      formulaLength,
      difference: formulaLength === null ? null : formulaLength - length,
      notMet: sideConditions(row.code, { diameter, inside: inside ?? 0, dimensions }),
      notes: [
        ...(step === null ? [formulaMissing(row)] : []),
        ...(row.bends.length >= MANY_BENDS ? ['Five or more bends: the tolerance may not be held.'] : []),
      ],
      source: { standard: 'BS 8666:2005', clause: `Table 3, shape ${row.code}`, status: row.status },
    },
    step === null ? cut.working : [...cut.working, step],
  )
}

/** A length as BS 8666 schedules it: up to a multiple of 25 mm (from memory). */
export function scheduledLength(length: number): number {
  return ceilTo(length, SCHEDULE_STEP)
}

/** Whether the bends are on the least former of BS 8666; null where the size has none or the bar no bend. */
function isStandard(diameter: number, inside: number | null): boolean | null {
  const row = bendRow(diameter)
  if (inside === null || row === undefined) return null
  // The table rounds the radius of 25 mm to 87: formers within a millimetre are that former.
  return Math.abs(inside - row.former) <= 1
}

function whyNone({ diameter, inside, outOfPlane }: ShapeInput, standard: boolean | null): string[] {
  if (outOfPlane) return ['A leg leaves the plane of the others: a sketch is needed.']
  if (standard === null) return [`BS 8666 lists no standard radius for ${diameter} mm: a sketch is needed.`]
  return standard
    ? ['No shape of the standard fits exactly: a sketch is needed.']
    : [`Inside diameter ${inside} mm is not the standard one: a sketch is needed.`]
}

function dimensionsOf(
  row: ShapeRow,
  { legs }: FlatShape,
  { inside, diameter }: ShapeInput,
): Record<string, number> {
  const named: Record<string, number> = {}
  for (const [index, letter] of row.legs.entries()) named[letter] ??= legs[index] ?? 0
  if (row.width !== undefined) named[row.width] = (inside ?? 0) + 2 * diameter
  if (row.radius !== undefined) named[row.radius] = (inside ?? 0) / 2
  return Object.fromEntries(Object.entries(named).sort(([a], [b]) => a.localeCompare(b)))
}

/** The standard's length with its numbers; null where it is not confirmed, or rough and a shallow bend is over 45°. */
function formulaStep(
  row: ShapeRow,
  { turns }: FlatShape,
  { diameter, inside }: ShapeInput,
  dimensions: Readonly<Record<string, number>>,
): Step | null {
  if (row.length === null) return null
  const steep = turns.some((turn) => turn > ROUGH_TO && turn < 90 - 1)
  if (row.rough === true && steep) return null
  const values: Record<string, number> = { ...dimensions, r: (inside ?? 0) / 2, d: diameter }
  const parts = Object.entries(row.length)
  const given = Object.fromEntries(parts.map(([letter]) => [letter, values[letter] ?? Number.NaN]))
  return {
    symbol: 'L',
    formula: parts.map(([letter, times], index) => partText(letter, times, index === 0)).join(' '),
    given,
    result: parts.reduce((sum, [letter, times]) => sum + times * (values[letter] ?? Number.NaN), 0),
    unit: 'mm',
    source: { standard: 'BS 8666:2005', clause: `Table 3, shape ${row.code}`, status: 'seen' },
    note:
      row.rough === true ? 'approximate; bars are cut to the true length' : 'bars are cut to the true length',
  }
}

function partText(letter: string, times: number, first: boolean): string {
  const size = Math.abs(times) === 1 ? letter : `${Math.abs(times)} ${letter}`
  if (first) return times < 0 ? `−${size}` : size
  return `${times < 0 ? '−' : '+'} ${size}`
}

function formulaMissing(row: ShapeRow): string {
  return row.length === null
    ? 'The length formula of this shape is not confirmed: the true length stands alone.'
    : 'The formula of this shape is not for bends over 45°: the true length stands alone.'
}
