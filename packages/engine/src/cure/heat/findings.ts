import type { CureLimit } from '../../codes/cure-rules.ts'
import type { CodeFamily } from '../../codes/family.ts'
import type { EnteredLimit } from '../../steps/facts.ts'
import { type Check, type Compared, compare } from '../../working/check.ts'
import { commonPractice, type Source } from '../../working/source.ts'
import type { Mix } from '../../yard/yard.ts'
import { LEAST_TEMPERATURE_LIMIT, PEAK_LIMIT } from '../cure-asked.ts'
import type { Reading } from '../readings.ts'
import { strengthNow } from '../strength-from-log.ts'
import type { CoreFace, HeatProblem, HeatRun } from './problem.ts'
import { surfaceOverAir, uncoveringFrom, uncoverings } from './uncovering.ts'

/** Key of the yard's entered limits for the largest difference of core and face, K or °C. */
export const CORE_FACE_LIMIT = 'cure.coreFace'

/** Strength with which concrete may freeze once without harm, MPa. */
const FROST_STRENGTH: CureLimit = {
  value: 3.5,
  source: {
    standard: 'ACI 306R, edition not noted',
    clause: 'protection from early freezing, 500 psi',
    status: 'from memory',
  },
}

export interface NightFindingsInput {
  readonly run: HeatRun
  readonly problem: HeatProblem
  readonly family: CodeFamily
  readonly limits?: Readonly<Record<string, EnteredLimit>>
  /** Mix whose strength a frost meets; without it that is not known. */
  readonly mix?: Pick<Mix, 'curve' | 'tests' | 'scatter' | 'reference' | 'activation'> | null
}

export interface NightFindings {
  readonly checks: readonly Check[]
  /** Hour from which the top face stays within the limit to the air until the end, so that the cover may come off; null: not within the run, or no limit. */
  readonly coverOff: number | null
}

/** What a computed night says against the family's limits, or an engineer's where the family has none that is confirmed. */
export function nightFindings(input: NightFindingsInput): NightFindings {
  const { run, problem, family, limits = {} } = input
  const { peak, least, difference } = run
  const peakLimit = limitOf(family.cure.peakTemperature, limits[PEAK_LIMIT])
  const leastLimit = limitOf(family.cure.leastTemperature, limits[LEAST_TEMPERATURE_LIMIT])
  const coreFace = limitOf(family.cure.coreFace, limits[CORE_FACE_LIMIT])
  const { uncovering } = family.cure
  const missing = (what: string, limit: CureLimit | null): { readonly missing?: readonly string[] } =>
    limit === null ? { missing: [`${what}: no confirmed value for ${family.id}`] } : {}
  const peakWords = 'Highest temperature of the concrete, computed'
  const leastWords = 'Lowest temperature of the concrete, computed'
  const differenceWords = 'Difference of core and face, computed'
  const checks = [
    compare({
      ...base('night-peak', peakWords, peakLimit, '°C', 'at most'),
      demand: peak.celsius,
      note: `At ${hourText(peak.hour)} from mixing.`,
      ...missing(peakWords, peakLimit),
    }),
    compare({
      ...base('night-least', leastWords, leastLimit, '°C', 'at least'),
      demand: least.celsius,
      note: `At ${hourText(least.hour)} from mixing.`,
      ...missing(leastWords, leastLimit),
    }),
    compare({
      ...base('night-core-face', differenceWords, coreFace, 'K', 'at most'),
      ...coreFaceDemand(difference),
      ...missing(differenceWords, coreFace),
    }),
    frostCheck(input),
    ...uncoverings(problem).map((hour) => {
      const what = `Concrete surface warmer than the air when the cover comes off at ${hourText(hour)}`
      return compare({
        ...base(`night-uncovering:${hour}`, what, uncovering, 'K', 'at most'),
        demand: surfaceOverAir(run, problem, hour),
        ...missing(what, uncovering),
      })
    }),
  ]
  return { checks, coverOff: uncovering === null ? null : uncoveringFrom(run, problem, uncovering.value) }
}

function coreFaceDemand(difference: CoreFace | null): Pick<Compared, 'demand' | 'working' | 'note'> {
  if (difference === null) return { demand: null, note: 'The run ends within the first hour.' }
  const { kelvin, core, face, side, hour } = difference
  const demand = Math.abs(kelvin)
  return {
    demand,
    working: [
      {
        symbol: 'ΔT',
        formula: 'abs(Tc − Tf)',
        given: { Tc: core, Tf: face },
        result: demand,
        unit: 'K',
        source: { standard: 'heat through the thickness', clause: '', status: 'computed' },
      },
    ],
    note: `At the ${side} face, ${hourText(hour)} from mixing. Limits are those of thick concrete; panels rarely come near.`,
  }
}

function base(
  id: string,
  what: string,
  limit: CureLimit | null,
  unit: string,
  sense: 'at most' | 'at least',
) {
  const source: Source = limit?.source ?? commonPractice('no confirmed value')
  return { id, step: 'cure' as const, what, limit: limit?.value ?? null, unit, sense, source }
}

/** Before the first frost the concrete must be strong enough: low edge of the band at the coldest place. */
function frostCheck({ run, mix }: NightFindingsInput): Check {
  const { frost, least } = run
  if (frost === null)
    return compare({
      ...base(
        'night-frost',
        'Concrete does not freeze, computed',
        { ...FROST_STRENGTH, value: 0 },
        '°C',
        'at least',
      ),
      demand: least.celsius,
    })
  const readings = run.times.map((time, at): Reading => [time, run.coldest[at] ?? Number.NaN])
  const found = mix ? strengthNow({ mix, readings, hour: frost }) : null
  const gaps =
    found === null ? ['mix: not given, so the strength at the first frost is not known'] : found.unknown
  return compare({
    ...base(
      'night-frost',
      'Strength when the concrete first freezes, low edge',
      FROST_STRENGTH,
      'MPa',
      'at least',
    ),
    demand: found?.low ?? null,
    working: found?.working ?? [],
    assumed: found?.assumed ?? [],
    ...(found?.low == null ? { missing: gaps.length > 0 ? gaps : ['strength: not known at that hour'] } : {}),
    note: `Below 0 °C from ${hourText(frost)} on, at the coldest place. Frozen before it is strong enough it is scrap.`,
  })
}

function limitOf(rule: CureLimit | null, entered: EnteredLimit | undefined): CureLimit | null {
  if (rule !== null) return rule
  if (entered === undefined || !['°C', 'K'].includes(entered.unit) || !Number.isFinite(entered.value))
    return null
  return {
    value: entered.value,
    source: { standard: entered.standard, clause: entered.edition, status: 'entered' },
  }
}

function hourText(hour: number): string {
  return `${Math.round(hour * 10) / 10} h`
}
