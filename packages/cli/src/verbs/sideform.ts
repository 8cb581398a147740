import { ASSUMED_BOW_LIMIT, type SpanCount, sideForm } from '@castwright/engine/mould'
import { numberText, textTable, type Verb } from '../verb.ts'

export const sideformVerb: Verb = {
  name: 'sideform',
  options: [
    { flags: '--thickness <mm>', about: 'depth of fresh concrete against the form, mm' },
    { flags: '--modulus <MPa>', about: 'modulus of the rail, MPa' },
    { flags: '--inertia <mm4>', about: 'second moment of the rail bending sideways, mm⁴' },
    { flags: '--spacing <mm>', about: 'spacing of the props, mm' },
    { flags: '--spans <count>', about: 'equal spans between props: 1, 2 or 3; 3 stands for three or more' },
    { flags: '--weight <weight>', about: 'weight density, kN/m³; 25 if not given' },
    { flags: '--limit <mm>', about: `largest bow, mm; ${ASSUMED_BOW_LIMIT} if not given` },
  ],
  example: 'castwright sideform --thickness 200 --modulus 8000 --inertia 1139000 --spacing 1200 --spans 3',
  async run(given) {
    const spans = Number(given.choice('spans', ['1', '2', '3'] as const)) as SpanCount
    const found = sideForm({
      thickness: given.number('thickness', { above: 0, unit: 'mm' }),
      modulus: given.number('modulus', { above: 0, unit: 'MPa' }),
      inertia: given.number('inertia', { above: 0, unit: 'mm⁴' }),
      spacing: given.number('spacing', { above: 0, unit: 'mm' }),
      spans,
      weight: given.optionalNumber('weight', { above: 0, unit: 'kN/m³' }),
      limit: given.optionalNumber('limit', { above: 0, unit: 'mm' }),
    })
    if (!found.known) {
      return {
        json: { thrust: null, bow: null, spacingAtLimit: null, verdict: 'unknown', unknown: found.gaps },
        verdict: 'unknown',
        table: () => found.gaps.map((gap) => `Not known: ${gap}`).join('\n'),
      }
    }
    const { thrust, overturning, bow, spacingAtLimit, check } = found.value
    const { limit, verdict, source } = check
    return {
      json: { thrust, overturning, bow, limit, spacingAtLimit, verdict, source },
      working: found.working,
      assumed: found.assumed ?? [],
      verdict,
      table: () =>
        [
          textTable([
            ['Thrust', numberText(thrust, 'kN/m')],
            ['Overturning about the bed', numberText(overturning, 'kN·m/m')],
            [
              'Bow between props',
              `${numberText(bow, 'mm')} of at most ${numberText(limit, 'mm')}: ${verdict}`,
            ],
            ['Spacing at the limit', numberText(spacingAtLimit, 'mm')],
          ]),
          'Strength of rail and props, screeds and people leaning on the form are not in it.',
        ].join('\n'),
    }
  },
}
