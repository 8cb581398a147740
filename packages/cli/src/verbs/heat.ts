import { type HeatRun, parseHeatCase, runHeat } from '@castwright/engine/cure/heat'
import { numberText, type Outcome, textTable, type Verb } from '../verb.ts'

export const heatVerb: Verb = {
  name: 'heat',
  file: { name: 'CASE.json', about: 'panel, concrete, both faces, air, hours' },
  options: [],
  example: 'castwright heat docs/examples/heat-night.json',
  async run(given) {
    const { problem, assumed } = parseHeatCase(await given.fileJson(), given.fileName)
    return outcomeOf(runHeat(problem), assumed)
  },
}

function outcomeOf(run: HeatRun, assumed: Outcome['assumed'] = []): Outcome {
  const { times, core, top, bottom, mean, hottest, coldest, equivalentAge, degree, peak, corePeak, energy } =
    run
  return {
    json: {
      times,
      core,
      top,
      bottom,
      mean,
      equivalentAge,
      degree,
      hottest,
      coldest,
      peak,
      corePeak,
      energy,
    },
    assumed,
    table: () =>
      [
        textTable([
          ['h', 'Core', 'Top', 'Bottom', 'Mean', 'Hottest', 'Age, h', 'Degree'],
          ...times.map((time, at) => [
            numberText(time),
            ...[core, top, bottom, mean, hottest].map((column) => (column[at] ?? Number.NaN).toFixed(1)),
            (equivalentAge[at] ?? Number.NaN).toFixed(1),
            (degree[at] ?? Number.NaN).toFixed(3),
          ]),
        ]),
        `Peak ${numberText(peak.celsius, '°C')} at ${numberText(peak.hour, 'h')}`,
      ].join('\n'),
  }
}
