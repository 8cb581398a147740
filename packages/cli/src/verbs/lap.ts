import { codeFamily } from '@castwright/engine/codes'
import { bondCondition } from '@castwright/engine/steel'
import type { Assumed } from '@castwright/engine/working'
import { numberText, textTable, type Verb } from '../verb.ts'

const DEFAULTS = { below: 100, share: 100, apart: 0 } as const

/** No size of a panel and no strength is over it: a slip of the finger. */
const LARGEST = 100_000

export const lapVerb: Verb = {
  name: 'lap',
  options: [
    { flags: '--diameter <mm>', about: 'nominal diameter of the bar, mm' },
    { flags: '--yield <MPa>', about: 'characteristic yield of the bar, MPa; fully used' },
    { flags: '--concrete <MPa>', about: 'concrete strength (cylinder), MPa' },
    { flags: '--cover <mm>', about: 'concrete cover to the bar itself, mm' },
    { flags: '--gap <mm>', about: 'clear between neighbouring bars, or pairs where lapped, mm' },
    { flags: '--below <mm>', about: 'depth of fresh concrete below the bar, mm; 100 if not given' },
    { flags: '--bond <bond>', about: 'good or poor (eu); from --below if not given' },
    { flags: '--share <percent>', about: 'bars lapped at one section, %; 100 if not given' },
    { flags: '--epoxy', about: 'epoxy-coated bar; without it uncoated' },
    { flags: '--compression', about: 'bar in compression; without it in tension' },
    { flags: '--apart <mm>', about: 'clear between the two bars of one lap, mm; 0 (contact) if not given' },
  ],
  example:
    'castwright lap --diameter 12 --yield 500 --concrete 30 --cover 30 --gap 150 --below 100 --code eu',
  async run(given) {
    const family = codeFamily(given.code())
    const assumed: Assumed[] = []
    const withDefault = (
      name: keyof typeof DEFAULTS,
      wanted: { least?: number; above?: number; most?: number },
      unit: string,
    ): number => {
      const value = given.optionalNumber(name, { ...wanted, unit })
      if (value === undefined) {
        assumed.push({ field: name, value: DEFAULTS[name], unit, why: 'not given' })
      }
      return value ?? DEFAULTS[name]
    }
    const size = (name: string, unit: string, most = LARGEST) => given.number(name, { above: 0, most, unit })
    const bar = {
      diameter: size('diameter', 'mm', 1000),
      yield: size('yield', 'MPa'),
      concrete: size('concrete', 'MPa'),
      cover: size('cover', 'mm'),
      gap: size('gap', 'mm'),
      below: withDefault('below', { least: 0, most: LARGEST }, 'mm'),
      share: withDefault('share', { above: 0, most: 100 }, '%'),
      apart: withDefault('apart', { least: 0, most: LARGEST }, 'mm'),
    }
    const givenBond = given.optionalChoice('bond', ['good', 'poor'] as const)
    const bond = givenBond ?? bondCondition({ below: bar.below, depth: null })
    if (givenBond === undefined && family.id === 'eu') {
      assumed.push({
        field: 'bond',
        value: bond,
        unit: '',
        why: `${bar.below} mm of fresh concrete below the bar`,
      })
    }
    const asked = { ...bar, bond, epoxy: given.flag('epoxy') }
    const lap = given.flag('compression') ? family.steel.compressionLap(asked) : family.steel.lap(asked)
    const unknown = lap.known ? lap.value.gaps : lap.gaps
    const development = lap.known ? lap.value.development : null
    const length = lap.known ? lap.value.length : null
    const factors = lap.known ? lap.value.factors : []
    const source = lap.known ? lap.value.source : null
    return {
      json: { development, length, factors, source, ...(unknown.length > 0 ? { unknown } : {}) },
      working: lap.working ?? [],
      assumed,
      ...(unknown.length > 0 ? { verdict: 'unknown' as const } : {}),
      table: () =>
        [
          textTable([
            ['Development', numberText(development, 'mm')],
            ['Lap', numberText(length, 'mm')],
            ...factors.map(({ symbol, value }) => [symbol, numberText(value)]),
            [
              'Source',
              source === null ? 'not known' : `${source.standard} ${source.clause} (${source.status})`,
            ],
          ]),
          ...unknown.map((gap) => `Not known: ${gap}`),
          'The drawing and the engineer outrank this value.',
        ].join('\n'),
    }
  },
}
