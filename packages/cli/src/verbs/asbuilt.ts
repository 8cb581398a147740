import { codeFamily } from '@castwright/engine/codes'
import { asBuilt, type Deviation, parseMeasured } from '@castwright/engine/quality'
import { numberText, textTable, type Verb } from '../verb.ts'

export const asbuiltVerb: Verb = {
  name: 'asbuilt',
  file: { name: 'MEASURED.json', about: 'the drawing with corners, sides, diagonals, thickness, mm' },
  options: [],
  example: 'castwright asbuilt docs/examples/measured.json --code eu',
  async run(given) {
    const measured = parseMeasured(await given.fileJson(), given.fileName)
    const family = codeFamily(given.code(measured.drawing.code))
    const { deviations, verdict, assumed } = asBuilt({ measured, family })
    return {
      json: { deviations: deviations.map(({ working: _, ...deviation }) => deviation) },
      working: deviations.flatMap(({ working }) => working),
      assumed,
      verdict,
      table: () => deviationTable(deviations),
    }
  },
}

function deviationTable(deviations: readonly Deviation[]): string {
  return [
    textTable([
      ['What', 'Deviation, mm', 'Limits, mm', 'Verdict', 'Source'],
      ...deviations.map(({ what, value, low, high, verdict, source, limit }) => [
        what,
        numberText(value),
        low === null || high === null ? 'not known' : `${numberText(low)} to ${numberText(high)}`,
        verdict,
        limit === null ? '' : `${source.standard} ${source.clause} (${source.status})`,
      ]),
    ]),
    ...deviations.flatMap(({ what, unknown }) =>
      (unknown ?? []).map((gap) => `Not known: ${gap.startsWith(what) ? gap : `${what}: ${gap}`}`),
    ),
    ...deviations.flatMap(({ what, note }) => (note === undefined ? [] : [`${what}: ${note}`])),
  ].join('\n')
}
