import { type Gain, gainOf, readGainTests } from '@castwright/engine/cure/gain'
import type { Given } from '../given.ts'
import { numberText, type Outcome, textTable, type Verb } from '../verb.ts'

export const gainVerb: Verb = {
  name: 'gain',
  file: {
    name: 'TESTS.json',
    about: 'early tests of one mix (age h, strength MPa), with its proportions where known',
  },
  options: [{ flags: '--at <age>', about: 'age asked for: 36h or 28d' }],
  example: 'castwright gain docs/examples/gain-early.json --at 28d',
  async run(given) {
    const at = readAge(given)
    const found = gainOf({ ...readGainTests(await given.fileJson(), given.fileName), at })
    return outcomeOf(found)
  },
}

/** Hours. @throws InputError where it is not a number above 0 with h or d after it. */
function readAge(given: Given): number {
  const text = given.text('at', 'an age such as 36h or 28d')
  const [, number, unit] = /^\s*(\d+\.?\d*|\.\d+)\s*([hd])\s*$/.exec(text) ?? []
  const hours = Number(number) * (unit === 'd' ? 24 : 1)
  if (!(hours > 0 && Number.isFinite(hours)))
    throw given.fault('at', text, 'an age above 0 such as 36h or 28d')
  return hours
}

function outcomeOf(found: Gain): Outcome {
  const { strength, low, high, restsOn, warnings, slipped, unknown, working, assumed } = found
  return {
    json: {
      strength,
      low,
      high,
      band: 0.9,
      restsOn,
      warnings,
      slipped,
      ...(unknown.length > 0 ? { unknown } : {}),
    },
    working,
    assumed,
    ...(unknown.length > 0 ? { verdict: 'unknown' as const } : {}),
    table: () =>
      [
        textTable([
          ['Strength', numberText(strength, 'MPa')],
          ['Band, 90 %', `${numberText(low, 'MPa')} to ${numberText(high, 'MPa')}`],
          ['Rests on', restsOn],
        ]),
        ...warnings,
        ...unknown.map((gap) => `Not known: ${gap}`),
      ].join('\n'),
  }
}
