import type { CodeFamily } from '../codes/family.ts'
import { GRAVITY, type Panel } from '../panel/panel.ts'
import { distance, type Ring } from '../panel/point.ts'
import { edges } from '../panel/polygon.ts'
import { ringsOf } from '../panel/region.ts'
import { type ChairsInput, planChairs } from '../steel/chairs/plan-chairs.ts'
import { type Check, compare } from '../working/check.ts'
import { enteredBy, GEOMETRY } from '../working/source.ts'
import type { Assumed, Step } from '../working/worked.ts'
import type { Yard, YardAgent, YardForm } from '../yard/yard.ts'
import { chooseAgent } from './agent-choice.ts'
import { ASSUMED_WEIGHT, hydrostatic } from './hydrostatic.ts'
import { askedAtMould, askedAtSet } from './mould-asked.ts'
import type { FaceAgent, MouldPlan, MouldPlate } from './mould-plan.ts'
import { planHoldDown } from './plan-hold-down.ts'
import { planPlate } from './plan-plate.ts'
import { LONGEST_PROP_SPACING, type PropLine, propsAlong } from './props.ts'
import { BRACE_SHARE, strengthChecks } from './rail-strength.ts'
import { filmThickness, PUT_ON_RATES, releaseAgent } from './release-agent.ts'
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

  const weight = heavyWeight(panel)
  const head = hydrostatic({ height: panel.drawing.thickness, weight })
  note(head)
  const side = planSide(panel, yard, weight)
  note(side)
  unknown.push(...side.unknown)

  const chairs = planChairs({ panel, steel, family })
  note(chairs)
  unknown.push(...chairs.unknown)

  const oiledArea = oiled(panel)
  const agent = planAgent(oiledArea, yard)
  note(agent)
  unknown.push(...agent.unknown)

  const held = planHoldDown(panel, yard, weight)
  note(held)
  unknown.push(...held.unknown)

  const props = side.line?.at ?? []
  return {
    pressure: head.maximum,
    weight: weight ?? ASSUMED_WEIGHT,
    thrust: side.thrust,
    overturning: side.overturning,
    brace: side.thrust === null ? null : side.thrust * BRACE_SHARE,
    form: side.form?.mark ?? null,
    propSpacing: side.line?.spacing ?? null,
    bow: side.line?.bow ?? null,
    plate: side.plate,
    sides: side.line?.sides ?? [],
    props,
    chairs: chairs.layers.map(({ layer, height, spacing, at }) => ({ layer, height, spacing, at })),
    releaseAgent: agent.litres,
    agents: agent.agents,
    oiledArea,
    voids: held.voids,
    ducts: held.ducts,
    checks: [...side.checks, ...chairs.checks, ...held.checks],
    toRecord: [
      ...askedAtMould(panel, props, side.form?.mark ?? null, agent.agents),
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
  readonly overturning: number | null
  readonly form: YardForm | null
  readonly plate: MouldPlate | null
  readonly line: PropLine | null
  readonly checks: readonly Check[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
}

/** Weight density by the drawing where its concrete is heavier than what is usually taken, kN/m³. */
function heavyWeight({ drawing }: Panel): number | undefined {
  const weight = ((drawing.concrete.density ?? 0) * GRAVITY) / 1000
  return weight > ASSUMED_WEIGHT ? weight : undefined
}

function planSide(panel: Panel, yard: Yard | null, weight: number | undefined): Side {
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
  const thrustAlone = sideForm({ thickness, modulus: 1, inertia: 1, spacing: 1, spans: 1, weight })
  const thrust = thrustAlone.known ? thrustAlone.value.thrust : null
  const overturning = thrustAlone.known ? thrustAlone.value.overturning : null
  if (form === null || thrust === null) {
    const gap =
      tallest === null ? 'yard.forms: side forms of the yard' : `yard.forms: none is ${thickness} mm high`
    const bow = compare({ ...BOW, demand: null, limit: ASSUMED_BOW_LIMIT, missing: [gap] })
    return {
      thrust,
      overturning,
      form: null,
      plate: null,
      line: null,
      checks: [fits, bow],
      working: [],
      assumed: [],
      unknown: [gap],
    }
  }
  // Sides keep the numbers of the drawing, whichever way it runs: props stand on the outline.
  const outline = panel.drawing.outline as unknown as Ring
  const line = propsAlong({ outline, thrust, rail: form, limit: ASSUMED_BOW_LIMIT })
  const worst = sideForm({
    thickness,
    modulus: form.modulus,
    inertia: form.inertia,
    spacing: line.spacing,
    spans: line.spans,
    weight,
  })
  const plate = planPlate(form, thickness, weight)
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
    overturning,
    form,
    line,
    checks: [fits, bow, ...strength, ...plate.checks],
    plate: plate.plate,
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

interface Agents {
  readonly litres: number | null
  readonly agents: readonly FaceAgent[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
}

/** The bed is chosen later: what each kind of face takes, and as a whole what the thirstiest does. */
function planAgent(area: number, yard: Yard | null): Agents {
  const faces = new Map<string, string[]>()
  for (const { mark, face = '' } of yard?.beds ?? [])
    if (face !== '') faces.set(face, [...(faces.get(face) ?? []), mark])
  const agents = [...faces].map(([face, beds]) => faceAgent(area, face, beds, yard?.agents ?? []))
  const bare = (yard?.beds ?? []).filter(({ face = '' }) => face === '')
  const open = agents.filter(({ rate }) => rate === null)
  const gaps = [
    ...(agents.length === 0 ? ['release agent: put-on rate for the mould face'] : []),
    ...bare.map(({ mark }) => `release agent: face of bed ${mark}`),
    ...open.map(({ face }) => `release agent: put-on rate for ${face}`),
  ]
  const thirsty = agents.reduce<FaceAgent | null>(
    (most, next) =>
      next.rate !== null && next.rate < (most?.rate ?? Number.POSITIVE_INFINITY) ? next : most,
    null,
  )
  if (gaps.length > 0 || thirsty?.rate == null)
    return { litres: null, agents, working: [], assumed: [], unknown: gaps }
  const { rate, agent, source } = thirsty
  const found = releaseAgent({ area, rate, source })
  if (!found.known) return { litres: null, agents, working: [], assumed: [], unknown: found.gaps }
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
    litres: found.value,
    agents,
    working: [areaStep, ...found.working],
    assumed:
      agent === null
        ? [
            {
              field: 'put-on rate',
              value: rate,
              unit: 'm²/L',
              why: `${PUT_ON_RATES.clause}; thirstiest bed of the yard`,
            },
          ]
        : [],
    unknown: [],
  }
}

function faceAgent(
  area: number,
  face: string,
  beds: readonly string[],
  agents: readonly YardAgent[],
): FaceAgent {
  const choice = chooseAgent(face, beds, agents)
  const { rate, source } = choice
  const found = rate === null ? null : releaseAgent({ area, rate, source })
  return {
    ...choice,
    litres: found?.known ? found.value : null,
    film: rate === null ? null : filmThickness(rate),
  }
}
