import { codeFamily } from '@castwright/engine/codes'
import { bundleFindings, parseBundle } from '@castwright/engine/steel/incoming'
import { textTable, type Verb } from '../verb.ts'

export const bundleVerb: Verb = {
  name: 'bundle',
  file: { name: 'BUNDLE', about: 'a bundle as it came: ordered, papers, seen, weighed, as JSON' },
  options: [{ flags: '--family <family>', about: 'family whose rules hold: nz, au, eu or us' }],
  example: 'castwright bundle docs/examples/bundle.json --family nz',
  async run(given) {
    const { steel } = codeFamily(given.choice('family', ['nz', 'au', 'eu', 'us'] as const))
    const bundle = parseBundle(await given.fileJson(), given.fileName)
    const { outcome, verdict, findings, because, next } = bundleFindings({ bundle, rules: steel })
    return {
      json: {
        outcome,
        findings: findings.map(({ working: _working, ...finding }) => finding),
        because,
        ...(next.length > 0 ? { unknown: next } : {}),
      },
      working: findings.flatMap(({ working }) => working),
      verdict,
      table: () =>
        [
          textTable([
            ['Finding', 'Found', 'Wanted', 'Verdict'],
            ...findings.map(({ what, found, wanted, verdict: each }) => [
              what,
              found ?? 'nothing recorded',
              wanted,
              each,
            ]),
          ]),
          ...because,
          `Outcome: ${outcome}. Who accepts it is a person, by name.`,
        ].join('\n'),
    }
  },
}
