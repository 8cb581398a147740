import { DIN_FLOWS, PRESSURE_METHODS, pressure } from '@castwright/engine/mould'
import { numberText, textTable, type Verb } from '../verb.ts'

export const pressureVerb: Verb = {
  name: 'pressure',
  options: [
    { flags: '--method <name>', about: `one of ${PRESSURE_METHODS.join(', ')}` },
    { flags: '--height <mm>', about: 'height of fresh concrete, mm' },
    { flags: '--rate <rate>', about: 'rate of rise, m/h; never assumed' },
    { flags: '--temperature <celsius>', about: 'concrete temperature, °C; never assumed' },
    { flags: '--density <density>', about: 'density of the mix, kg/m³, for aci347; 2400 if not given' },
    { flags: '--weight <weight>', about: 'weight density, kN/m³, for the other methods; 25 if not given' },
    { flags: '--kind <kind>', about: 'wall (if not given) or column' },
    { flags: '--cw <value>', about: 'aci347: unit-weight coefficient; from the density if not given' },
    { flags: '--cc <value>', about: 'aci347: chemistry coefficient; 1.0 if not given' },
    { flags: '--c1 <value>', about: 'ciria108: shape coefficient; 1.0 wall, 1.5 column if not given' },
    { flags: '--c2 <value>', about: 'ciria108: mix coefficient; 0.30 if not given' },
    { flags: '--flow <class>', about: `din18218: ${DIN_FLOWS.join(', ')}; F3 if not given` },
    { flags: '--setting <hours>', about: 'din18218: end of setting, h; 5 if not given' },
  ],
  example: 'castwright pressure --method aci347 --height 3000 --rate 1.5 --temperature 20 --kind wall',
  async run(given) {
    const found = pressure({
      method: given.choice('method', PRESSURE_METHODS),
      height: given.number('height', { above: 0, unit: 'mm' }),
      rate: given.optionalNumber('rate', { above: 0, unit: 'm/h' }),
      temperature: given.optionalNumber('temperature', { least: -273.15, most: 2000, unit: '°C' }),
      density: given.optionalNumber('density', { above: 0, unit: 'kg/m³' }),
      weight: given.optionalNumber('weight', { above: 0, unit: 'kN/m³' }),
      kind: given.optionalChoice('kind', ['wall', 'column'] as const),
      cw: given.optionalNumber('cw', { above: 0 }),
      cc: given.optionalNumber('cc', { above: 0 }),
      c1: given.optionalNumber('c1', { above: 0 }),
      c2: given.optionalNumber('c2', { above: 0 }),
      flow: given.optionalChoice('flow', DIN_FLOWS),
      setting: given.optionalNumber('setting', { above: 0, unit: 'h' }),
    })
    const { maximum, hydrostatic, source, unknown } = found
    return {
      json: { maximum, hydrostatic, source, ...(unknown.length > 0 ? { unknown } : {}) },
      working: found.working,
      assumed: found.assumed,
      ...(maximum === null ? { verdict: 'unknown' as const } : {}),
      table: () =>
        [
          textTable([
            ['Largest pressure', numberText(maximum, 'kPa')],
            ['Full head', numberText(hydrostatic, 'kPa')],
            [
              'Source',
              [source.standard, source.clause, `(${source.status})`].filter((part) => part !== '').join(' '),
            ],
          ]),
          ...unknown.map((gap) => `Not known: ${gap}`),
          'Self-compacting concrete, external vibration, pumping from below: take the full head.',
        ].join('\n'),
    }
  },
}
