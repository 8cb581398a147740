import { codeFamily } from '@castwright/engine/codes'
import { acceptResults, parseResults } from '@castwright/engine/quality'
import { numberText, textTable, type Verb } from '../verb.ts'

export const acceptVerb: Verb = {
  name: 'accept',
  file: { name: 'RESULTS.json', about: 'specified strength and results in the order of sampling, MPa' },
  options: [],
  example: 'castwright accept docs/examples/results.json --code eu',
  async run(given) {
    const family = codeFamily(given.code())
    const results = parseResults(await given.fileJson(), given.fileName)
    const { verdict, rules, unknown, working, assumed } = acceptResults({ results, family })
    return {
      json: {
        verdict,
        rules: rules.map(({ working: _, ...rule }) => rule),
        ...(unknown.length > 0 ? { unknown } : {}),
      },
      working,
      assumed,
      verdict,
      table: () =>
        [
          textTable([
            ['Rule', 'Found, MPa', 'Must reach, MPa', 'Verdict', 'Source'],
            ...rules.map((rule) => [
              rule.rule,
              numberText(rule.demand),
              numberText(rule.limit),
              rule.verdict,
              `${rule.source.standard} ${rule.source.clause} (${rule.source.status})`,
            ]),
          ]),
          ...unknown.map((gap) => `Not known: ${gap}`),
          `Verdict: ${verdict}`,
        ].join('\n'),
    }
  },
}
