import { readTemperatureLog } from '@castwright/engine/cure'
import { ASSUMED_ACTIVATION, setting, type TemperatureReadings } from '@castwright/engine/pour'
import type { Given } from '../given.ts'
import { numberText, textTable, type Verb } from '../verb.ts'

export const settingVerb: Verb = {
  name: 'setting',
  file: { name: 'LOG.csv', about: 'temperature log from mixing, header hours,celsius', optional: true },
  options: [
    { flags: '--initial <hours>', about: 'initial set at the reference temperature, h from mixing' },
    { flags: '--reference <celsius>', about: 'reference temperature, °C' },
    { flags: '--temperature <celsius>', about: 'one temperature all the time, °C, in place of a log' },
    { flags: '--final <hours>', about: 'final set at the reference temperature, h; without it not computed' },
    { flags: '--activation <energy>', about: `activation energy, J/mol; ${ASSUMED_ACTIVATION} if not given` },
  ],
  example: 'castwright setting --initial 5 --reference 23 --temperature 15',
  async run(given) {
    const initial = given.number('initial', { above: 0, unit: 'h' })
    const final = given.optionalNumber('final', { above: 0, unit: 'h' })
    if (final !== undefined && final < initial)
      throw given.fault('final', final, `not before the initial set of ${initial} h`)
    const found = setting({
      initial,
      final,
      reference: given.number('reference', { above: -273.15, most: 2000, unit: '°C' }),
      activation: given.optionalNumber('activation', { above: 0, unit: 'J/mol' }),
      temperature: await temperatureOf(given),
    })
    if (!found.known) {
      return {
        json: { initialSet: null, ...(final === undefined ? {} : { final: null }), unknown: found.gaps },
        verdict: 'unknown',
        table: () => found.gaps.map((gap) => `Not known: ${gap}`).join('\n'),
      }
    }
    const { initialSet, finalSet } = found.value
    return {
      json: { initialSet, ...(finalSet === null ? {} : { final: finalSet }) },
      working: found.working,
      assumed: found.assumed ?? [],
      table: () =>
        [
          textTable([
            ['Initial set', `${numberText(initialSet, 'h')} from mixing`],
            ...(finalSet === null ? [] : [['Final set', `${numberText(finalSet, 'h')} from mixing`]]),
          ]),
          'The surface decides: this is a planned time.',
        ].join('\n'),
    }
  },
}

/** Either a log or one temperature. @throws InputError where both or neither came. */
async function temperatureOf(given: Given): Promise<number | TemperatureReadings> {
  const one = given.optionalNumber('temperature', { least: -273.15, most: 2000, unit: '°C' })
  if (given.file === undefined) {
    if (one === undefined) throw given.fault('temperature', undefined, 'a temperature, °C, or a log file')
    return one
  }
  if (one !== undefined) throw given.fault('temperature', one, 'either a temperature or a log file, not both')
  return readTemperatureLog(await given.fileText(), given.fileName)
}
