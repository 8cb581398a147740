import type { CodeFamily } from '../codes/family.ts'
import type { Panel } from '../panel/panel.ts'
import { distance, type Ring } from '../panel/point.ts'
import { counterClockwise, edges } from '../panel/polygon.ts'
import { ringsOf } from '../panel/region.ts'
import { type ChairsInput, planChairs } from '../steel/chairs/plan-chairs.ts'
import { type Check, compare } from '../working/check.ts'
import { enteredBy, GEOMETRY } from '../working/source.ts'
import type { Assumed, Step } from '../working/worked.ts'
import type { Yard, YardForm } from '../yard/yard.ts'
import { hydrostatic } from './hydrostatic.ts'
import { askedAtMould, askedAtSet } from './mould-asked.ts'
import type { MouldPlan } from './mould-plan.ts'
import { planHoldDown } from './plan-hold-down.ts'
import { LONGEST_PROP_SPACING, type PropLine, propsAlong } from './props.ts'
import { strengthChecks } from './rail-strength.ts'
import { PUT_ON_RATES, putOnRate, releaseAgent } from './release-agent.ts'
import { ASSUMED_BOW_LIMIT, BOW_LIMIT_SOURCE, sideForm } from './side-form.ts'

export interface MouldInput {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly family: CodeFamily
  /** The bars as they are placed: chairs go under them. */
  readonly steel: ChairsInput['steel']
}

/** Side pressure, side form and props, chairs, release agent, and what is looked at before the pour, for one panel. */
export function planMould({ panel, yard, family, steel }: MouldInput): MouldPlan {
  const unknown: string[] = []
  const working: Step[] = []
  const assumed: Assumed[] = []
  const note = (found: { working?: readonly Step[]; assumed?: readonly Assumed[] }): void => {
    working.push(...(found.working ?? []))
    assumed.push(
      ...(found.assumed ?? []).filter((line) => !assumed.some(({ field }) => field === line.field)),
    )
  }

  const head = hydrostatic({ height: panel.drawing.thickness })
  note(head)
  const side = planSide(panel, yard)
  note(side)
  unknown.push(...side.unknown)

  const chairs = planChairs({ panel, steel, family })
  note(chairs)
  unknown.push(...chairs.unknown)

  const oiledArea = oiled(panel)
  const agent = planAgent(oiledArea, yard)
  note(agent)
  unknown.push(...agent.unknown)

  const held = planHoldDown(panel, yard)
  note(held)
  unknown.push(...held.unknown)

  const props = side.line?.at ?? []
  return {
    pressure: head.maximum,
    thrust: side.thrust,
    form: side.form?.mark ?? null,
    propSpacing: side.line?.spacing ?? null,
    bow: side.line?.bow ?? null,
    props,
    chairs: chairs.layers.map(({ layer, height, spacing, at }) => ({ layer, height, spacing, at })),
    releaseAgent: agent.litres,
    oiledArea,
    voids: held.voids,
    ducts: held.ducts,
    checks: [...side.checks, ...chairs.checks, ...held.checks],
    toRecord: [
      ...askedAtMould(panel, props, side.form?.mark ?? null),
      ...chairs.toRecord,
      ...askedAtSet(panel, family),
      ...held.toRecord,
    ],
    working,
    assumed,
    unknown,
  }
}

interface Side {
  readonly thrust: number | null
  readonly form: YardForm | null
  readonly line: PropLine | null
  readonly checks: readonly Check[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
}

function planSide(panel: Panel, yard: Yard | null): Side {
  const { thickness } = panel.drawing
  const form = lowestForm(yard?.forms ?? [], thickness)
  const tallest = (yard?.forms ?? []).reduce<number | null>(
    (most, { height }) => (most === null || height > most ? height : most),
    null,
  )
  const fits = compare({
    id: 'side-form-height',
    step: 'mould',
    what: 'Side form as high as the panel is thick',
    demand: thickness,
    limit: form?.height ?? tallest,
    unit: 'mm',
    sense: 'at most',
    source: enteredBy('yard: forms'),
    missing: tallest === null ? ['yard.forms: side forms of the yard'] : [],
  })
  const thrustAlone = sideForm({ thickness, modulus: 1, inertia: 1, spacing: 1, spans: 1 })
  const thrust = thrustAlone.known ? thrustAlone.value.thrust : null
  if (form === null || thrust === null) {
    const gap =
      tallest === null ? 'yard.forms: side forms of the yard' : `yard.forms: none is ${thickness} mm high`
    const bow = compare({ ...BOW, demand: null, limit: ASSUMED_BOW_LIMIT, missing: [gap] })
    return { thrust, form: null, line: null, checks: [fits, bow], working: [], assumed: [], unknown: [gap] }
  }
  const outline = counterClockwise(panel.drawing.outline as unknown as Ring)
  const line = propsAlong({ outline, thrust, rail: form, limit: ASSUMED_BOW_LIMIT })
  const worst = sideForm({
    thickness,
    modulus: form.modulus,
    inertia: form.inertia,
    spacing: line.spacing,
    spans: line.spans,
  })
  const strength = strengthChecks({ ...line.worst, thrust }, form)
  const working = worst.known ? worst.working.filter(({ symbol }) => symbol !== 'δ') : []
  const assumed: Assumed[] = [
    ...(worst.known ? (worst.assumed ?? []) : []),
    {
      field: 'longest prop spacing',
      value: LONGEST_PROP_SPACING,
      unit: 'mm',
      why:
        strength.length > 0
          ? 'common practice'
          : 'common practice; the yard gives no strength of rail and props, so that it is not checked',
    },
  ]
  const step: Step = {
    symbol: 'δ',
    formula: 'largest bow over all sides with props as planned',
    given: { w: thrust, E: form.modulus, I: form.inertia },
    result: line.bow,
    unit: 'mm',
    source: BOW_LIMIT_SOURCE,
    by: 'search',
  }
  const bow = compare({
    ...BOW,
    demand: line.bow,
    limit: ASSUMED_BOW_LIMIT,
    working: [...working, step],
    assumed,
  })
  return {
    thrust,
    form,
    line,
    checks: [fits, bow, ...strength],
    working: [...working, step],
    assumed,
    unknown: [],
  }
}

const BOW = {
  id: 'side-form-bow',
  step: 'mould',
  what: 'Bow of the side forms between props',
  unit: 'mm',
  sense: 'at most',
  source: BOW_LIMIT_SOURCE,
} as const

/** The lowest form that is high enough. */
function lowestForm(forms: readonly YardForm[], thickness: number): YardForm | null {
  let best: YardForm | null = null
  for (const form of forms)
    if (form.height >= thickness && (best === null || form.height < best.height)) best = form
  return best
}

/** Mould face and the faces of all side forms, m². */
function oiled(panel: Panel): number {
  const around = ringsOf(panel.region).reduce(
    (sum, ring) => sum + edges(ring).reduce((length, [a, b]) => length + distance(a, b), 0),
    0,
  )
  return panel.faceArea + (around * panel.drawing.thickness) / 1e6
}

function planAgent(
  area: number,
  yard: Yard | null,
): {
  readonly litres: number | null
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
} {
  // The bed is chosen later: the thirstiest face of the yard must suffice.
  const rates = (yard?.beds ?? []).map((bed) => putOnRate(bed.face ?? ''))
  const known = rates.filter((rate) => rate !== null)
  if (known.length === 0 || known.length < rates.length) {
    return {
      litres: null,
      working: [],
      assumed: [],
      unknown: ['release agent: put-on rate for the mould face'],
    }
  }
  const rate = Math.min(...known)
  const agent = releaseAgent({ area, rate })
  if (!agent.known) return { litres: null, working: [], assumed: [], unknown: agent.gaps }
  const areaStep: Step = {
    symbol: 'A',
    formula: 'mould face and side forms',
    given: {},
    result: area,
    unit: 'm²',
    source: GEOMETRY,
    by: 'search',
  }
  return {
    litres: agent.value,
    working: [areaStep, ...agent.working],
    assumed: [
      {
        field: 'put-on rate',
        value: rate,
        unit: 'm²/L',
        why: `${PUT_ON_RATES.clause}; thirstiest bed of the yard`,
      },
    ],
    unknown: [],
  }
}
