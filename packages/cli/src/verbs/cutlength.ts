import { cutLength, type ShapeLabels, shapeLabels, shortLegs } from '@castwright/engine/steel'
import { type Assumed, GEOMETRY, InputError } from '@castwright/engine/working'
import type { Given } from '../given.ts'
import { numberText, textTable, type Verb } from '../verb.ts'

/** No bar and no bend is larger, mm: a slip of the finger. */
const LARGEST = 1_000_000

export const cutlengthVerb: Verb = {
  name: 'cutlength',
  options: [
    { flags: '--diameter <mm>', about: 'nominal diameter of the bar, mm' },
    { flags: '--inside <mm>', about: 'inside diameter of the bends, mm' },
    { flags: '--legs <mm,mm,…>', about: 'outside dimensions of the legs in order, mm' },
    {
      flags: '--turns <degrees,…>',
      about: 'turn of the bends, degrees, above 0 to 180: one, or one a bend; 90 if not given',
    },
    {
      flags: '--sides <l,r,…>',
      about: 'side of each bend, l or r, for the shape code; without it only up to one bend has one',
    },
  ],
  example: 'castwright cutlength --diameter 12 --inside 48 --legs 600,400 --turns 90',
  async run(given) {
    const diameter = given.number('diameter', { above: 0, most: 1000, unit: 'mm' })
    const legs = given.optionalNumbers('legs', { above: 0, most: LARGEST, unit: 'mm' })
    if (legs === undefined) throw given.fault('legs', undefined, 'outside dimensions with commas between, mm')
    const bends = legs.length - 1
    const wanted = { above: 0, most: LARGEST, unit: 'mm' }
    const inside =
      bends > 0 ? given.number('inside', wanted) : (given.optionalNumber('inside', wanted) ?? null)
    const turns = given.optionalNumbers('turns', { above: 0, most: 180, unit: 'degrees' }) ?? [90]
    if (turns.length !== 1 && turns.length !== bends) {
      throw given.fault('turns', turns.join(','), `one turn, or one for each of ${bends} bends`)
    }
    const assumed: Assumed[] =
      given.has('turns') || bends === 0
        ? []
        : [{ field: 'turns', value: 90, unit: '°', why: 'not given: a right angle is meant' }]
    const short = shortLegs({ diameter, inside, legs, turns })
    if (short.length > 0) {
      throw new InputError(
        short.map(({ leg, found, least }) => ({
          path: `legs[${leg}]`,
          found: `${found} mm`,
          expected: `at least ${numberText(least, 'mm')} for its bends`,
        })),
        'option --legs',
      )
    }
    const cut = cutLength({ diameter, inside, legs, turns })
    const senses = sidesOf(given, bends)
    const labels =
      senses === null ? null : shapeLabels({ diameter, inside, legs, turns, senses, outOfPlane: false })
    const shape = labels?.known ? labels.value : null
    const length = cut.known ? cut.value.length : null
    const deductions = cut.known ? cut.value.deductions : null
    const unknown = cut.known ? [] : cut.gaps
    return {
      json: {
        length,
        deductions,
        source: GEOMETRY,
        ...(shape === null ? {} : { shape: shapeJson(shape) }),
        ...(unknown.length > 0 ? { unknown } : {}),
      },
      working: cut.working ?? [],
      assumed,
      ...(unknown.length > 0 ? { verdict: 'unknown' as const } : {}),
      table: () =>
        textTable([
          ['Cut length', numberText(length, 'mm')],
          ...(deductions ?? []).map((deduction, index) => [
            `Bend ${index + 1} takes off`,
            numberText(deduction, 'mm'),
          ]),
          ...(shape === null ? [] : shapeRows(shape)),
        ]),
    }
  },
}

/** Sides of the bends, or null where they are not given and matter. @throws InputError where they are not one a bend. */
function sidesOf(given: Given, bends: number): (1 | -1)[] | null {
  const text = given.optionalText('sides')
  if (text === undefined) return bends > 1 ? null : Array.from({ length: bends }, () => 1 as const)
  const sides = text.split(',').map((side) => side.trim())
  if (sides.length !== bends || sides.some((side) => side !== 'l' && side !== 'r')) {
    throw given.fault('sides', text, `l or r with commas between, one for each of ${bends} bends`)
  }
  return sides.map((side) => (side === 'l' ? 1 : -1))
}

function shapeJson({
  bs8666,
  iso3766,
  dimensions,
  formulaLength,
  difference,
  notMet,
  notes,
}: ShapeLabels): object {
  return { bs8666, iso3766, dimensions, formulaLength, difference, notMet, notes }
}

function shapeRows({ bs8666, iso3766, dimensions, formulaLength, notMet, notes }: ShapeLabels): string[][] {
  const named = Object.entries(dimensions).map(([letter, size]) => `${letter} ${numberText(size)}`)
  return [
    ['Shape, BS 8666', [bs8666, ...named].join('  ')],
    ['Shape, EN ISO 3766', iso3766],
    ...(formulaLength === null ? [] : [['By the formula of BS 8666', numberText(formulaLength, 'mm')]]),
    ...notMet.map((condition) => ['Not met', condition]),
    ...notes.map((note) => ['', note]),
  ]
}
