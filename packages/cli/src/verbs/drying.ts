import { ASSUMED_DRYING_LIMIT, drying } from '@castwright/engine/pour'
import { numberText, textTable, type Verb } from '../verb.ts'

export const dryingVerb: Verb = {
  name: 'drying',
  options: [
    { flags: '--air <celsius>', about: 'air temperature, °C' },
    { flags: '--humidity <percent>', about: 'relative humidity, %' },
    { flags: '--wind <speed>', about: 'wind half a metre above the surface, km/h' },
    { flags: '--concrete <celsius>', about: 'temperature of the concrete surface, °C' },
    {
      flags: '--limit <rate>',
      about: `rate that asks for precautions, kg/m²/h; ${ASSUMED_DRYING_LIMIT} if not given`,
    },
  ],
  example: 'castwright drying --air 30 --humidity 40 --wind 20 --concrete 30',
  async run(given) {
    const found = drying({
      air: given.number('air', { least: -273.15, most: 2000, unit: '°C' }),
      humidity: given.number('humidity', { least: 0, most: 100, unit: '%' }),
      wind: given.number('wind', { least: 0, unit: 'km/h' }),
      concrete: given.number('concrete', { least: -273.15, most: 2000, unit: '°C' }),
      limit: given.optionalNumber('limit', { above: 0, unit: 'kg/m²/h' }),
    })
    if (!found.known) {
      return {
        json: { rate: null, other: null, verdict: 'unknown', unknown: found.gaps },
        verdict: 'unknown',
        table: () => found.gaps.map((gap) => `Not known: ${gap}`).join('\n'),
      }
    }
    const { rate, other, check } = found.value
    const { limit, verdict, source } = check
    return {
      json: { rate, other, limit, verdict, source },
      working: found.working,
      assumed: found.assumed ?? [],
      verdict,
      table: () =>
        [
          textTable([
            [
              'Evaporation (Uno 1998)',
              `about ${numberText(rate, 'kg/m²/h')} of at most ${numberText(limit)}: ${verdict}`,
            ],
            ['By Menzel', `about ${numberText(other, 'kg/m²/h')}`],
          ]),
          rate < 0
            ? 'Below 0: water condenses on the surface.'
            : 'The estimate is within 40 % at best; the mix decides.',
        ].join('\n'),
    }
  },
}
