import { codeFamily } from '@castwright/engine/codes'
import { checkBend } from '@castwright/engine/steel'
import { numberText, textTable, type Verb } from '../verb.ts'

export const bendVerb: Verb = {
  name: 'bend',
  options: [
    { flags: '--diameter <mm>', about: 'nominal diameter of the bar, mm' },
    {
      flags: '--grade <grade>',
      about: 'nz 300E 500E; au 250N 500N 500L; eu B500A B500B B500C; us 40 60 80 100',
    },
    { flags: '--role <role>', about: 'main or stirrup' },
    { flags: '--inside <mm>', about: 'inside diameter of the bend, mm' },
    { flags: '--plain', about: 'plain bar; without it deformed' },
    { flags: '--galvanised', about: 'galvanised bar; without it uncoated' },
    { flags: '--temperature <celsius>', about: 'bar temperature at bending, °C; without it not judged' },
  ],
  example: 'castwright bend --diameter 16 --grade 500E --role main --inside 80 --temperature 12 --code nz',
  async run(given) {
    const family = codeFamily(given.code())
    const rules = family.steel
    const bend = checkBend({
      rules,
      diameter: given.number('diameter', { above: 0, most: 1000, unit: 'mm' }),
      grade: given.choice(
        'grade',
        rules.grades.map(({ grade }) => grade),
      ),
      role: given.choice('role', ['main', 'stirrup'] as const),
      plain: given.flag('plain'),
      galvanised: given.flag('galvanised'),
      inside: given.number('inside', { above: 0, most: 100_000, unit: 'mm' }),
      temperature: given.optionalNumber('temperature', { least: -273.15, most: 2000, unit: '°C' }) ?? null,
    })
    const { limit, inside, verdict, source, cold, notes, unknown } = bend
    return {
      json: {
        limit,
        inside,
        verdict,
        source,
        ...(cold === null ? {} : { cold }),
        ...(notes.length > 0 ? { notes } : {}),
        ...(unknown.length > 0 ? { unknown } : {}),
      },
      working: bend.working,
      verdict,
      table: () =>
        [
          textTable([
            ['Inside diameter', numberText(inside, 'mm')],
            ['At least', numberText(limit, 'mm')],
            ...(cold === null
              ? []
              : [
                  [
                    'Bar temperature',
                    `${cold.temperature} °C of at least ${cold.coldest} °C: ${cold.verdict}`,
                  ],
                ]),
            [
              'Source',
              source === null ? 'not known' : `${source.standard} ${source.clause} (${source.status})`,
            ],
            ['Verdict', verdict],
          ]),
          ...notes,
          ...unknown.map((gap) => `Not known: ${gap}`),
          'The drawing and the engineer’s schedule outrank this value.',
        ].join('\n'),
    }
  },
}
