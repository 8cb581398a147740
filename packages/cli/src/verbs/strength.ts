import {
  type AgeMethod,
  ASSUMED_ACTIVATION,
  ASSUMED_DATUM,
  ASSUMED_REFERENCE,
  type LogStrength,
  readTemperatureLog,
  strengthFromLog,
} from '@castwright/engine/cure'
import { type Assumed, InputError, parseJson } from '@castwright/engine/working'
import { mixSchema } from '@castwright/engine/yard'
import type { Given } from '../given.ts'
import { numberText, type Outcome, textTable, type Verb } from '../verb.ts'

const METHODS = ['arrhenius', 'nurse-saul', 'ec2'] as const

/** A yard's mix or a bare curve or tests. */
const mixFile = mixSchema.partial({ mark: true, strength: true })

export const strengthVerb: Verb = {
  name: 'strength',
  file: { name: 'LOG.csv', about: 'temperature log with the header hours,celsius' },
  options: [
    { flags: '--mix <MIX.json>', about: 'the mix: a curve with its scatter, or tests' },
    { flags: '--reference <celsius>', about: `reference temperature, °C; ${ASSUMED_REFERENCE} if not given` },
    {
      flags: '--activation <energy>',
      about: `activation energy, J/mol; ${ASSUMED_ACTIVATION} if not given`,
    },
    { flags: '--method <name>', about: 'arrhenius (if not given), nurse-saul or ec2' },
    { flags: '--datum <celsius>', about: `datum of the maturity, °C; ${ASSUMED_DATUM} if not given` },
  ],
  example: 'castwright strength docs/examples/night.csv --mix docs/examples/mix.json --activation 38000',
  async run(given) {
    const mix = await readMix(given)
    const { method, datum, assumed } = readMethod(given, mix)
    const readings = readTemperatureLog(await given.fileText(), given.fileName)
    const found = strengthFromLog({ readings, source: mix, method, datum })
    return outcomeOf(found, assumed)
  },
}

async function readMix(given: Given) {
  const file = await given.optionFile('mix')
  if (file === undefined) throw given.fault('mix', undefined, 'a file with a curve or tests')
  const mix = parseJson(mixFile, file.text, file.path)
  if ((mix.curve === undefined) === (mix.tests === undefined)) {
    const found = mix.curve === undefined ? 'neither curve nor tests' : 'both curve and tests'
    throw new InputError([{ path: '', found, expected: 'either curve or tests' }], file.path)
  }
  return mix
}

interface ReadMethod {
  readonly method: AgeMethod
  readonly datum: number
  readonly assumed: readonly Assumed[]
}

function readMethod(
  given: Given,
  mix: { reference?: number | undefined; activation?: number | undefined },
): ReadMethod {
  const kind = given.optionalChoice('method', METHODS) ?? 'arrhenius'
  const assumed: Assumed[] = []
  const orAssume = (field: string, value: number | undefined, fallback: number, unit: string) => {
    if (value === undefined) assumed.push({ field, value: fallback, unit, why: 'not given' })
    return value ?? fallback
  }
  if (kind !== 'arrhenius' && given.has('activation'))
    throw given.fault('activation', given.optionalText('activation'), `no activation energy with ${kind}`)
  if (kind === 'ec2' && given.has('reference'))
    throw given.fault(
      'reference',
      given.optionalText('reference'),
      'none with ec2: the clause has its own, 20 °C',
    )
  const datum = orAssume(
    'datum',
    given.optionalNumber('datum', { least: -60, most: 60, unit: '°C' }),
    ASSUMED_DATUM,
    '°C',
  )
  if (kind === 'ec2') return { method: { kind }, datum, assumed }
  const wanted = { least: -60, most: 100, unit: '°C' }
  const asked = given.optionalNumber('reference', wanted) ?? mix.reference
  const reference = orAssume('reference', asked, ASSUMED_REFERENCE, '°C')
  if (kind === 'nurse-saul') {
    if (!(reference > datum))
      throw given.fault('datum', datum, `a number below the reference of ${reference} °C`)
    return { method: { kind, reference, datum }, datum, assumed }
  }
  const energy = given.optionalNumber('activation', { above: 0, unit: 'J/mol' }) ?? mix.activation
  const activation = orAssume('activation', energy, ASSUMED_ACTIVATION, 'J/mol')
  return { method: { kind, reference, activation }, datum, assumed }
}

function outcomeOf(found: LogStrength, assumed: readonly Assumed[]): Outcome {
  const { maturity, equivalentAge, strength, low, high, unknown } = found
  return {
    json: { maturity, equivalentAge, strength, low, high, ...(unknown.length > 0 ? { unknown } : {}) },
    working: found.working,
    assumed: [...assumed, ...found.assumed],
    ...(unknown.length > 0 ? { verdict: 'unknown' as const } : {}),
    table: () =>
      [
        textTable([
          ['Maturity', numberText(maturity, '°C·h')],
          ['Equivalent age', numberText(equivalentAge, 'h')],
          ['Strength', numberText(strength, 'MPa')],
          ['Band, 90 %', `${numberText(low, 'MPa')} to ${numberText(high, 'MPa')}`],
        ]),
        ...unknown.map((gap) => `Not known: ${gap}`),
      ].join('\n'),
  }
}
