import type { CodeFamily } from '../codes/family.ts'
import type { EnteredLimit } from '../steps/facts.ts'
import type { Asked } from '../working/asked.ts'
import { commonPractice, type Source } from '../working/source.ts'

/** Key of the yard's entered limits for the highest temperature of the concrete, °C. */
export const PEAK_LIMIT = 'cure.peakTemperature'
/** Key of the yard's entered limits for the least temperature of the concrete while it gains strength, °C. */
export const LEAST_TEMPERATURE_LIMIT = 'cure.leastTemperature'

export interface CureAskedInput {
  readonly family: CodeFamily
  readonly limits?: Readonly<Record<string, EnteredLimit>>
}

/** What must be seen or measured while a panel cures. */
export function cureAsked({ family, limits = {} }: CureAskedInput): Asked[] {
  const { peakTemperature, leastTemperature, uncovering } = family.cure
  return [
    {
      id: 'covered',
      step: 'cure',
      what: 'Covered, edges held down, no later than 30 minutes after finishing',
      kind: 'tick',
      unit: '',
      source: commonPractice('loss of water after finishing'),
      note: 'Sheet flat on the face, lapped and weighted. Wind under a sheet dries more than no sheet.',
    },
    {
      id: 'temperature-log',
      step: 'cure',
      what: 'Temperature of the concrete, logged from the pour on',
      kind: 'readings',
      unit: '°C',
      recordOnly: true,
      source: commonPractice('a sensor in the coldest part, near an edge'),
      note: 'Hours from mixing. The strength in the mould is computed from it.',
    },
    limited({
      id: 'peak-temperature',
      what: 'Highest temperature of the concrete',
      side: 'high',
      rule: peakTemperature,
      entered: limits[PEAK_LIMIT],
      family,
      note: 'Too hot when young costs strength and life later.',
    }),
    limited({
      id: 'least-temperature',
      what: 'Lowest temperature of the concrete until stripping',
      side: 'low',
      rule: leastTemperature,
      entered: limits[LEAST_TEMPERATURE_LIMIT],
      family,
      note: 'Cold concrete waits. Frozen before it is strong enough it is scrap.',
    }),
    limited({
      id: 'cover-off',
      what: 'Concrete surface warmer than the air when the cover comes off, by',
      side: 'high',
      rule: uncovering,
      entered: undefined,
      family,
      note: 'Fold the cover back in stages on a cold morning.',
    }),
  ]
}

interface LimitedInput {
  readonly id: string
  readonly what: string
  readonly side: 'low' | 'high'
  readonly rule: { readonly value: number; readonly source: Source } | null
  readonly entered: EnteredLimit | undefined
  readonly family: CodeFamily
  readonly note: string
}

/** A measured temperature against the family's limit, or an engineer's where the family has none that is confirmed. */
function limited({ id, what, side, rule, entered, family, note }: LimitedInput): Asked {
  const usable = rule === null && entered?.unit === '°C' && Number.isFinite(entered.value)
  const limit =
    usable && entered
      ? {
          value: entered.value,
          source: { standard: entered.standard, clause: entered.edition, status: 'entered' } as const,
        }
      : rule
  return {
    id,
    step: 'cure',
    what,
    kind: 'number',
    unit: '°C',
    ...(limit === null
      ? { unknown: [`${what}: no confirmed value for ${family.id}`] }
      : { [side]: limit.value }),
    source: limit?.source ?? commonPractice('no confirmed value'),
    note: usable && entered ? `${note} Limit entered by ${entered.by.name}.` : note,
  }
}
