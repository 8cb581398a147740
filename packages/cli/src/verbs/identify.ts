import { codeFamily } from '@castwright/engine/codes'
import { textTable, type Verb } from '../verb.ts'

export const identifyVerb: Verb = {
  name: 'identify',
  options: [
    { flags: '--family <family>', about: 'family whose marks are read: nz, au, eu or us' },
    {
      flags: '--seen <marks...>',
      about: 'what was read on the bar in its order; none where nothing is rolled on it',
    },
  ],
  example: 'castwright identify --family us --seen N 5 S 60',
  async run(given) {
    const family = codeFamily(given.choice('family', ['nz', 'au', 'eu', 'us'] as const))
    const seen = given.texts('seen')
    if (seen.every((mark) => !/[\p{L}\p{N}]/u.test(mark))) {
      throw given.fault(
        'seen',
        seen.length === 0 ? undefined : seen.join(' '),
        'what was read on the bar, or none',
      )
    }
    const { candidates, verdict, unknown, notes, source } = family.steel.identify({ seen })
    return {
      json: {
        candidates,
        verdict,
        source,
        ...(notes.length > 0 ? { notes } : {}),
        ...(unknown.length > 0 ? { unknown } : {}),
      },
      working: [
        {
          symbol: 'grade',
          formula: 'marks read against the marking rules',
          given: { seen: seen.join(' ') },
          result: candidates.map(({ grade }) => grade).join(' or ') || 'none',
          unit: '',
          source,
          by: 'table',
        },
      ],
      verdict,
      table: () =>
        [
          textTable([
            ['Grade', 'Process', 'Why'],
            ...candidates.map(({ grade, process, why }) => [grade, process ?? 'not known', why]),
          ]),
          ...notes,
          ...unknown.map((gap) => `Not known: ${gap}`),
          `Verdict: ${verdict}`,
          `Source: ${source.standard} ${source.clause} (${source.status})`,
        ].join('\n'),
    }
  },
}
