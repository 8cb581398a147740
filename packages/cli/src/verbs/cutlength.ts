import { cutLength, shortLegs } from '@castwright/engine/steel'
import { type Assumed, GEOMETRY, InputError } from '@castwright/engine/working'
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
    const length = cut.known ? cut.value.length : null
    const deductions = cut.known ? cut.value.deductions : null
    const unknown = cut.known ? [] : cut.gaps
    return {
      json: { length, deductions, source: GEOMETRY, ...(unknown.length > 0 ? { unknown } : {}) },
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
        ]),
    }
  },
}
