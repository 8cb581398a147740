import type { CodeFamily } from '../codes/family.ts'
import { type WantedStrength, wantedStrength } from '../lift/wanted-strength.ts'
import type { Panel } from '../panel/panel.ts'
import type { EnteredLimit } from '../steps/facts.ts'
import { type Check, compare } from '../working/check.ts'
import { enteredBy } from '../working/source.ts'
import { type Assumed, known, type Step, unknown, type Worked } from '../working/worked.ts'
import { mixFor } from '../yard/mix-for.ts'
import type { Mix, Yard } from '../yard/yard.ts'
import { type AgeMethod, ageRate } from './age-method.ts'
import { cureAsked } from './cure-asked.ts'
import type { CurePlan, CurvePoint } from './cure-plan.ts'
import { hourMet } from './hour-met.ts'
import { mixMethod } from './strength-from-log.ts'
import { type StrengthModel, strengthModel } from './strength-model.ts'

export interface PlanCureInput {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly family: CodeFamily
  /** Strength wanted at the first lift where it is already known; else it is found here. */
  readonly wanted?: Worked<WantedStrength>
  /** Limits that an engineer entered for the yard. */
  readonly limits?: Readonly<Record<string, EnteredLimit>>
}

/** Hours of the planned curve: each hour of two days, then some of the weeks after. */
const CURVE_HOURS: readonly number[] = [
  ...Array.from({ length: 49 }, (_, hour) => hour),
  60,
  72,
  96,
  120,
  168,
  336,
  672,
]
/** Age at which a mix is held against the strength wanted, h. */
const MATURE = 672

/**
 * Strength of a panel in its mould: what is wanted at the first lift, the curve of the yard's mix at its reference
 * temperature, the hour at which it is met, and what must be recorded while it cures. Hours count from mixing.
 *
 * The concrete temperature of a plan is assumed; the log of the night replaces it.
 */
export function planCure({ panel, yard, family, wanted, limits = {} }: PlanCureInput): CurePlan {
  const { drawing } = panel
  const asked = wanted ?? wantedStrength({ drawing, yard, family, limits })
  const mix = mixFor({ yard, drawing })
  const { method, assumed } = mixMethod(mix ?? {})
  const celsius = method.reference
  const model = mix === null ? unknown(mixGap(panel, yard)) : strengthModel({ source: mix, method })
  const hour = met(asked, model, method, 'expected')
  const hourLow = met(asked, model, method, 'low')
  const gaps = [asked, model, hour, hourLow].flatMap((part) => (part.known ? [] : part.gaps))
  const steps = [asked, hour, hourLow].flatMap((part): readonly Step[] => (part.known ? part.working : []))
  return {
    wanted: asked.known ? asked.value : null,
    hour: hour.known ? hour.value : null,
    hourLow: hourLow.known ? hourLow.value : null,
    curve: model.known ? curvePoints(model.value, method, celsius) : [],
    temperature: mix === null ? null : { celsius, assumed: true },
    mix: mix?.mark ?? null,
    working: steps,
    assumed:
      mix === null
        ? []
        : [temperatureAssumed(celsius), ...assumed, ...(model.assumed ?? []), ...leavesAssumed(panel)],
    checks: [reachCheck(asked, model, mix)],
    toRecord: cureAsked({ family, limits }),
    unknown: [...new Set(gaps)],
  }
}

function met(
  asked: Worked<WantedStrength>,
  model: Worked<StrengthModel>,
  method: AgeMethod,
  edge: 'expected' | 'low',
): Worked<number> {
  if (!asked.known) return asked
  if (!model.known) return model
  return hourMet({
    model: model.value,
    method,
    wanted: asked.value.strength,
    celsius: method.kind === 'ec2' ? 20 : method.reference,
    edge,
  })
}

function curvePoints(model: StrengthModel, method: AgeMethod, celsius: number): CurvePoint[] {
  const rate = ageRate(method, celsius)
  return CURVE_HOURS.flatMap((hour): CurvePoint[] => {
    const strength = model.strength(hour * rate)
    if (strength === null) return []
    const band = model.band(hour * rate)
    return [[hour, strength, band?.low ?? null, band?.high ?? null]]
  })
}

/** Whether the mix, grown up, reaches what is wanted at the low edge at all: a mix that does not is the wrong one. */
function reachCheck(asked: Worked<WantedStrength>, model: Worked<StrengthModel>, mix: Mix | null): Check {
  const low = model.known ? lowWhenMature(model.value) : model
  return compare({
    id: 'strength-reached',
    step: 'cure',
    what: 'Mix reaches the strength wanted at the first lift',
    demand: low.known ? low.value : null,
    limit: asked.known ? asked.value.strength : null,
    unit: 'MPa',
    sense: 'at least',
    source: asked.known ? asked.value.source : enteredBy('the drawing'),
    working: low.known ? low.working : [],
    missing: [...(low.known ? [] : low.gaps), ...(asked.known ? [] : asked.gaps)],
    note: `Low edge of the curve of ${mix?.mark ?? 'the mix'} at 28 days, or at its oldest test.`,
  })
}

function lowWhenMature(model: StrengthModel): Worked<number> {
  const age = Math.min(MATURE, model.to)
  const band = model.band(age)
  if (band !== null) return known(band.low, [...model.steps(age), ...model.bandSteps(age)])
  return unknown(...(model.bandGaps.length > 0 ? model.bandGaps : ['band: not fixed by the tests']))
}

function temperatureAssumed(celsius: number): Assumed {
  return {
    field: 'cure.temperature',
    value: celsius,
    unit: '°C',
    why: 'concrete temperature of the plan: that of the mix’s reference, until it is logged',
  }
}

function mixGap({ drawing }: Panel, yard: Yard | null): string {
  const { strength } = drawing.concrete
  return yard === null
    ? 'yard: not given, so no mix is known'
    : `mixes: the yard lists none of at least ${strength} MPa and fitting aggregate`
}

/** One strength stands for all of the panel. */
function leavesAssumed({ drawing }: Panel): Assumed[] {
  return (drawing.voids ?? []).length === 0
    ? []
    : [
        {
          field: 'concrete over and under void formers',
          value: 'as the full section',
          unit: '',
          why: 'thin leaves lose their heat sooner: put a sensor there, their strength may be lower',
        },
      ]
}
