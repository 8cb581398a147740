import type { SteelRules } from '@castwright/engine/codes'
import type { DrawnBar } from '@castwright/engine/panel'
import { cutLength } from '@castwright/engine/steel'
import type { StatedBar } from './read-row.ts'

/** Something at a field of a bar, whatever column that field stands in. */
export interface BarRemark {
  readonly field: 'diameter' | 'count' | 'cutLength' | 'legs' | 'turns' | 'inside' | 'shape'
  /** From 0, where it is one leg. */
  readonly leg?: number
  readonly found: string
  readonly expected: string
}

export interface CheckedBar {
  /** Null where the bar cannot be made as stated. */
  readonly bar: DrawnBar | null
  readonly errors: readonly BarRemark[]
  readonly warnings: readonly BarRemark[]
  /** What was taken where the list says nothing; `inside` in mm. */
  readonly assumed: { readonly role: boolean; readonly turns: boolean; readonly inside: number | null }
}

export interface CheckInput {
  readonly stated: StatedBar
  readonly rules: SteelRules
  /** Most that a stated cut length may differ from the computed one, mm; the family's cut tolerance where null. */
  readonly tolerance: number | null
}

/** More bars of one mark are looked at twice. */
const MANY = 2000
/** Longer bars are looked at twice, mm: longest as bars are commonly sold, common practice, no source. */
const LONG = 18_000
const STRAIGHT = new Set(['straight', 'str', '0', '00', '000'])
/** Shapes that are a word of the schedule. */
const WORDS = new Set(['straight', 'l', 'u', 'z', 'closed', 'bent'])

/** The listed bar of a stated row: whether it can be bent, and whether what else the row says agrees with it. */
export function checkBar({ stated, rules, tolerance }: CheckInput): CheckedBar {
  const errors: BarRemark[] = []
  const warnings: BarRemark[] = []
  const { diameter, grade, count } = stated
  const role = stated.role ?? 'main'
  const legs = legsOf(stated, errors)
  const bends = legs.length - 1
  const { turns, given } = turnsOf(stated, bends, errors)
  const [only] = legs
  if (legs.length === 1 && only !== undefined && only < diameter) {
    // Most often metres in a column of millimetres; of a bent bar the bends tell it.
    const expected = `at least the diameter, ${diameter} mm; is the unit right?`
    errors.push({ field: 'legs', leg: 0, found: `${only} mm`, expected })
  }
  const least = bends > 0 ? rules.leastBend({ diameter, grade, role, plain: false, galvanised: false }) : null
  if (bends > 0 && stated.inside === null && least?.known !== true) {
    errors.push({
      field: 'inside',
      found: 'nothing',
      expected: `the inside diameter of the bends, mm: the family gives no least one (${least?.known === false ? least.gaps.join('; ') : ''})`,
    })
  }
  const inside = bends > 0 ? (stated.inside ?? (least?.known ? least.value : null)) : null
  if (least?.known && stated.inside !== null && stated.inside < least.value - 1e-9 * least.value) {
    warnings.push({
      field: 'inside',
      found: `${stated.inside} mm`,
      expected: `at least ${round(least.value)} mm for ${diameter} mm ${grade}, ${role}`,
    })
  }
  const cut =
    errors.length > 0 || (bends > 0 && inside === null) ? null : cutLength({ diameter, inside, legs, turns })
  if (cut?.known === false) errors.push(...cut.gaps.map(gapRemark))
  if (cut?.known && cut.value.length > LONG) {
    const found = `a bar of ${round(cut.value.length)} mm`
    warnings.push({ field: 'legs', found, expected: `at most ${LONG} mm, as bars are commonly sold` })
  }
  if (cut?.known) warnings.push(...lengthRemarks({ stated, rules, tolerance, computed: cut.value.length }))
  const size = rules.barSize({ diameter })
  if (!size.known) {
    warnings.push({
      field: 'diameter',
      found: `${diameter} mm`,
      expected: 'a bar of the family: its mass is not known',
    })
  }
  if (count > MANY)
    warnings.push({ field: 'count', found: `${count} bars of one mark`, expected: `at most ${MANY}` })
  warnings.push(...shapeRemarks(stated, turns))
  const bar: DrawnBar = {
    bar: stated.mark,
    diameter,
    grade,
    role,
    legs,
    ...(bends > 0 ? { turns } : {}),
    ...(bends > 0 && stated.inside !== null ? { inside: stated.inside } : {}),
    count,
  }
  return {
    bar: errors.length > 0 ? null : bar,
    errors,
    warnings,
    assumed: {
      role: stated.role === null,
      turns: bends > 0 && !given,
      inside: bends > 0 && stated.inside === null ? inside : null,
    },
  }
}

/** Legs as stated; a straight bar may be stated by its cut length alone. */
function legsOf({ legs, cutLength, shape, shapeCode, turns }: StatedBar, errors: BarRemark[]): number[] {
  if (legs.length > 50) {
    errors.push({ field: 'legs', found: `${legs.length} legs`, expected: 'at most 50' })
    return []
  }
  if (legs.length > 0) return [...legs]
  const kind = shape || shapeCode
  if (cutLength !== null && turns.length === 0 && (kind === '' || STRAIGHT.has(kind.toLowerCase()))) {
    return [cutLength]
  }
  const found =
    cutLength === null
      ? 'nothing'
      : kind === ''
        ? `${turns.length} turns and no leg`
        : `shape ${kind} and no leg`
  errors.push({ field: 'legs', found, expected: 'the outside dimensions of the legs, mm' })
  return []
}

/** One turn a bend; a right angle where none is stated. */
function turnsOf(
  { turns }: StatedBar,
  bends: number,
  errors: BarRemark[],
): { readonly turns: number[]; readonly given: boolean } {
  if (bends < 0) return { turns: [], given: true }
  if (turns.length > 1 && turns.length !== bends) {
    const expected = bends === 0 ? 'none for a straight bar' : `one, or one for each of ${bends} bends`
    errors.push({ field: 'turns', found: `${turns.length} turns`, expected })
  } else if (turns.length === 1 && bends === 0) {
    errors.push({ field: 'turns', found: '1 turn', expected: 'none for a straight bar' })
  }
  const [one = 90] = turns
  return {
    turns: Array.from({ length: bends }, (_, index) => (turns.length > 1 ? (turns[index] ?? one) : one)),
    given: turns.length > 0,
  }
}

/** A gap of the cut length, at the leg that it names. */
function gapRemark(gap: string): BarRemark {
  const [, place = '', words = gap] = /^([\w[\]]+): (.+)$/.exec(gap) ?? []
  const leg = /^legs\[(\d+)\]$/.exec(place)?.[1]
  if (leg === undefined) {
    const field = place.startsWith('turns') ? 'turns' : place === 'inside' ? 'inside' : 'legs'
    return { field, found: words, expected: 'a bar that can be bent' }
  }
  const [, found = words, least = ''] = /^(\S+ mm) is shorter than its bends need, (.+)$/.exec(words) ?? []
  return { field: 'legs', leg: Number(leg), found, expected: `at least ${least} for its bends` }
}

function lengthRemarks({
  stated,
  rules,
  tolerance,
  computed,
}: CheckInput & { readonly computed: number }): BarRemark[] {
  if (stated.cutLength === null || stated.legs.length === 0) return []
  const limit = tolerance ?? cutTolerance(rules, computed)
  const off = stated.cutLength - computed
  if (Math.abs(off) <= limit * (1 + 1e-9)) return []
  return [
    {
      field: 'cutLength',
      found: `${round(stated.cutLength)} mm stated`,
      expected: `${round(computed)} mm as computed, within ${limit} mm`,
    },
  ]
}

/** Most that a stated cut length may differ, mm: what the family lets a cut bar differ, either way. */
export function cutTolerance(rules: SteelRules, length: number): number {
  const { minus, plus } = rules.cutTolerance({ length })
  return Math.max(minus, plus)
}

/** A shape word that the legs contradict. Which way a bend turns cannot be said by legs. */
function shapeRemarks({ shape, legs }: StatedBar, turns: readonly number[]): BarRemark[] {
  const word = shape.toLowerCase()
  if (!WORDS.has(word) || legs.length === 0) return []
  const right = turns.every((turn) => turn === 90)
  const fits =
    word === 'straight'
      ? turns.length === 0
      : word === 'l'
        ? turns.length === 1 && right
        : word === 'u'
          ? turns.length === 2 && right
          : word === 'closed'
            ? turns.length > 2
            : word === 'z'
              ? false
              : turns.length > 0
  if (fits) return []
  const expected =
    word === 'z' && turns.length === 2 && right
      ? 'a drawn path: legs do not say which way a bend turns, so the bar counts as U'
      : `the shape of ${legs.length} ${legs.length === 1 ? 'leg' : 'legs'} and turns ${turns.join(', ') || 'none'}`
  return [{ field: 'shape', found: shape, expected }]
}

function round(mm: number): number {
  return Math.round(mm * 10) / 10
}
