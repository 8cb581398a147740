import { codeFamily, MADE_BY } from '@castwright/engine/codes'
import { permittedActs } from '@castwright/engine/steel'
import { textTable, type Verb } from '../verb.ts'

export const barMayVerb: Verb = {
  name: 'bar-may',
  options: [
    { flags: '--family <family>', about: 'family whose rules hold: nz, au, eu or us' },
    {
      flags: '--grade <grade>',
      about: 'nz 300E 500E; au 250N 500N 500L; eu B500A B500B B500C; us 40 60 80 100',
    },
    {
      flags: '--process <process>',
      about:
        'from the certificate: micro-alloyed, "quenched and tempered", "cold worked", "hot rolled" or unknown',
    },
    {
      flags: '--diameter <mm>',
      about: 'nominal diameter of the bar, mm; without it what hangs on it is not known',
    },
    { flags: '--galvanised', about: 'galvanised bar; without it uncoated' },
    { flags: '--standard <standard>', about: 'us: A615 or A706, as the bar shows' },
  ],
  example: 'castwright bar-may --family nz --grade 500E --process unknown --diameter 16',
  async run(given) {
    const family = codeFamily(given.choice('family', ['nz', 'au', 'eu', 'us'] as const))
    const { grades, acts: rules } = family.steel
    const { acts, notes, unknown } = permittedActs({
      family,
      grade: given.choice(
        'grade',
        grades.map(({ grade }) => grade),
      ),
      process: given.choice('process', [...MADE_BY, 'unknown'] as const),
      diameter: given.optionalNumber('diameter', { above: 0, most: 1000, unit: 'mm' }) ?? null,
      galvanised: given.flag('galvanised'),
      standard: given.optionalChoice('standard', Object.keys(rules.standards)) ?? null,
    })
    return {
      json: {
        acts,
        ...(notes.length > 0 ? { notes } : {}),
        ...(unknown.length > 0 ? { unknown } : {}),
      },
      working: acts.flatMap(({ act, answer, source }) =>
        source === null
          ? []
          : [
              {
                symbol: act,
                formula: 'row of the family’s rules',
                given: {},
                result: answer,
                unit: '',
                source,
                by: 'table' as const,
              },
            ],
      ),
      ...(unknown.length > 0 ? { verdict: 'unknown' as const } : {}),
      table: () =>
        [
          textTable([
            ['Act', 'Answer', 'Conditions'],
            ...acts.flatMap(({ act, answer, conditions }) =>
              conditions.map((condition, index) => [
                index === 0 ? act : '',
                index === 0 ? answer : '',
                condition,
              ]),
            ),
          ]),
          ...notes,
          ...unknown.map((gap) => `Not known: ${gap}`),
          'The drawing, the certificate and the engineer outrank these answers.',
        ].join('\n'),
    }
  },
}
