import * as z from 'zod'
import { FAMILY_IDS } from '../panel/family-ids.ts'
import { InputError, type InputIssue } from '../working/issue.ts'
import { parseInput } from '../working/parse.ts'
import { cover, coverIssues, covering, underBed, underIssues } from './over-and-under.ts'

export const YARD_FORMAT = 'castwright.yard/1'
export const JOB_FORMAT = 'castwright.job/1'

const positive = z.number().positive()
const mark = z.string().min(1).max(40)
const day = z.iso.date()
const leg = z.number().int().positive().max(16)

/** MPa; far above any concrete, so that no formula overflows. */
const strength = positive.max(10_000)

const curve = z.discriminatedUnion('form', [
  z.strictObject({
    form: z.literal('hyperbolic'),
    ultimate: strength,
    rate: positive.max(1000),
    offset: z.number().min(0),
  }),
  z.strictObject({ form: z.literal('exponential'), ultimate: strength, tau: positive, shape: positive }),
  z.strictObject({ form: z.literal('ec2'), mean28: strength, s: positive }),
])

const strengthTest = z.strictObject({ age: positive, strength: positive, temperature: z.number().optional() })

/** How a mix gives off and carries heat: kg/m³, J/g, share, h and °C, J/mol, W/mK, kJ/m³K. */
const mixHeat = z.strictObject({
  binder: z.number().min(0).max(1500),
  heat: z.number().min(0).max(1000),
  ultimate: positive.max(1),
  tau: positive.max(10_000),
  beta: z.number().min(0.2).max(10),
  activation: z.number().min(0).max(100_000),
  reference: z.number().min(-10).max(60),
  conductivity: positive.max(20),
  heatCapacity: z.number().min(100).max(10_000),
})

const amount = z.number().min(0)

/** What a cubic metre of a mix is made of, kg/m³. */
export const proportionsSchema = z.strictObject({
  cement: positive,
  slag: amount,
  flyAsh: amount,
  water: positive,
  superplasticizer: amount,
  coarse: amount,
  fine: amount,
})

const mix = z.strictObject({
  mark,
  strength: positive,
  density: positive.optional(),
  aggregate: positive.optional(),
  slump: z.tuple([z.number().min(0), z.number().min(0)]).optional(),
  curve: curve.optional(),
  tests: z.array(strengthTest).max(10_000).optional(),
  scatter: z.number().positive().max(1).optional(),
  reference: z.number().optional(),
  activation: positive.optional(),
  /** Initial set, h, at the reference temperature; without it the finishing window is not known. */
  initialSet: positive.optional(),
  /** How it bleeds: `little` with slag, fume or low water; `hardly` with much fume, w/b under 0.35, self-compacting. */
  bleeds: z.enum(['plain', 'little', 'hardly']).optional(),
  /** Greatest age from batching to the end of discharge, minutes: what order or supplier states; outranks the family. */
  dischargeMinutes: positive.max(10_000).optional(),
  /** Without it the temperatures of a night are not computed. */
  heat: mixHeat.optional(),
  /** Lets open tests of like mixes stand in for a mix that has neither curve nor tests, until results of its own are there. */
  proportions: proportionsSchema.optional(),
})

/** Kinds of release agent. */
export const AGENT_KINDS = [
  'reactive',
  'oil with surfactant',
  'neat oil',
  'water-in-oil cream',
  'oil-in-water emulsion',
  'wax',
] as const

/** What a yard has. All but format, name, code and time zone may be missing; what needs it is then not known. */
export const yardSchema = z.strictObject({
  format: z.literal(YARD_FORMAT),
  name: z.string().min(1).max(120),
  code: z.enum(FAMILY_IDS),
  timezone: z.string().refine(isTimeZone, 'an IANA time zone such as Europe/Dublin'),
  beds: z
    .array(
      z.strictObject({
        mark,
        length: positive,
        width: positive,
        face: z.string().max(80).optional(),
        heated: z.boolean().optional(),
        /** Under a roof: neither sky nor sun nor wind reach the top face. */
        roofed: z.boolean().optional(),
        under: underBed.optional(),
      }),
    )
    .max(500)
    .optional(),
  forms: z
    .array(
      z.strictObject({
        mark,
        height: positive,
        modulus: positive,
        inertia: positive,
        /** Section modulus bending sideways, mm³. */
        section: positive.optional(),
        /** Bending stress allowed at work, MPa. */
        bending: positive.optional(),
        /** Push that one prop or magnet takes at work, kN. */
        propRating: positive.optional(),
        /** Push at the top edge that one brace takes at work, kN. */
        braceRating: positive.optional(),
        /** Its upright plate: thickness mm, modulus MPa, stress allowed at work MPa; `foot` stands free above, `both` is held at its top edge too. */
        plate: z
          .strictObject({
            thickness: positive.max(500),
            modulus: positive,
            bending: positive.optional(),
            held: z.enum(['foot', 'both']).optional(),
          })
          .optional(),
      }),
    )
    .max(500)
    .optional(),
  /** Straps and tie-downs of void formers and ducts. */
  strap: z
    .strictObject({
      /** Working load of one, kN. */
      rated: positive,
      /** Farthest from one to the next, mm. */
      longest: positive.optional(),
    })
    .optional(),
  /** Release agents: m² a litre covers by words of the face, as its sheet says, and how long it dries, minutes. */
  agents: z
    .array(
      z.strictObject({
        mark,
        kind: z.enum(AGENT_KINDS),
        rates: z
          .array(z.strictObject({ face: z.string().min(1).max(80), rate: positive.max(1000) }))
          .min(1)
          .max(20),
        dryingMinutes: z.number().min(0).max(10_000).optional(),
      }),
    )
    .max(100)
    .optional(),
  stock: z
    .array(z.strictObject({ diameter: positive, grade: mark, lengths: z.array(positive).min(1).max(50) }))
    .max(500)
    .optional(),
  mixes: z.array(mix).max(500).optional(),
  covers: z.array(cover).max(100).optional(),
  /** What is laid on a panel after its finish, and when it comes off in the yard's time. */
  covering: covering.optional(),
  vibrators: z
    .array(z.strictObject({ mark, head: positive, radius: positive.optional() }))
    .max(500)
    .optional(),
  cranes: z
    .array(
      z.strictObject({
        mark,
        chart: z
          .array(z.tuple([positive, positive]))
          .min(1)
          .max(200),
        due: day.optional(),
      }),
    )
    .max(500)
    .optional(),
  insertKinds: z
    .array(
      z.strictObject({
        mark,
        kind: z.enum(['face', 'edge']),
        rated: positive,
        ratedStrength: positive,
        leastStrength: positive,
        leastEdge: positive.optional(),
        leastSpacing: positive.optional(),
        /** Reinforcing bars keep this far from its axis, mm: recess former, shank and room to work. */
        clear: positive.max(2000).optional(),
        /** Embedment from the face to the bearing side of the head, mm. */
        depth: positive.max(10_000).optional(),
        /** Bearing area of the head, its shank taken off, mm². */
        head: positive.optional(),
        /** Diameter of the shank, mm. */
        shaft: positive.max(1000).optional(),
        /** Steel of one insert in tension at failure (nominal, characteristic), kN. */
        steel: positive.optional(),
        /** Bars tied to it that are developed beyond the cone, in tension at failure, kN: they carry instead of the cone. */
        tail: positive.optional(),
        /** Tie round it that holds a pull across towards an edge, at failure, kN: it carries instead of that edge. */
        tie: positive.optional(),
      }),
    )
    .max(500)
    .optional(),
  rigging: z
    .array(
      z.strictObject({
        mark,
        legs: z.number().int().positive().max(16),
        length: positive,
        spreader: z.union([positive, z.boolean()]).optional(),
        equalised: z.boolean().optional(),
        counted: z.number().int().positive().max(16).optional(),
        /** Stiffness of one leg, kN/mm. */
        stiffness: positive.optional(),
        /** Greatest difference of length between two legs, mm. */
        error: z.number().min(0).max(1000).optional(),
        /** Legs that are two ends of one sling running over a block: numbers from 1, in the order of the drawing's inserts. */
        pairs: z
          .array(z.tuple([leg, leg]))
          .min(1)
          .max(8)
          .optional(),
        /** Each of the two slings from the hook to the ends of the spreader, mm; `middle`: the beam hangs at its middle. */
        top: z.union([positive, z.literal('middle')]).optional(),
        rated: positive,
        due: day.optional(),
      }),
    )
    .max(500)
    .optional(),
  racks: z
    .array(
      z.strictObject({
        mark,
        kind: z.enum(['upright', 'flat']).optional(),
        places: z.number().int().positive().optional(),
        rated: positive.optional(),
      }),
    )
    .max(500)
    .optional(),
  trailers: z
    .array(
      z.strictObject({
        mark,
        length: positive.optional(),
        width: positive.optional(),
        rated: positive.optional(),
      }),
    )
    .max(500)
    .optional(),
})

export type Yard = z.output<typeof yardSchema>
export type Mix = z.output<typeof mix>
export type StrengthCurve = z.output<typeof curve>
export type StrengthTest = z.output<typeof strengthTest>
export type YardBed = NonNullable<Yard['beds']>[number]
export type YardCover = NonNullable<Yard['covers']>[number]
export type YardForm = NonNullable<Yard['forms']>[number]
export type YardAgent = NonNullable<Yard['agents']>[number]
export type YardStock = NonNullable<Yard['stock']>[number]
export type YardCrane = NonNullable<Yard['cranes']>[number]
export type YardRigging = NonNullable<Yard['rigging']>[number]
export type YardStrap = NonNullable<Yard['strap']>
export type InsertKind = NonNullable<Yard['insertKinds']>[number]
export const mixSchema = mix
export const curveSchema = curve

/**
 * @throws InputError naming each field, also where a mark is used twice in one list. Cranes and rigging share their marks:
 * inspections on record name gear by mark alone.
 */
export function parseYard(value: unknown, from = ''): Yard {
  const yard = parseInput(yardSchema, value, from)
  const gear = [yard.cranes ?? [], yard.rigging ?? []]
  const issues = [
    ...repeated([yard.beds ?? []], ['beds']),
    ...repeated([yard.forms ?? []], ['forms']),
    ...repeated([yard.agents ?? []], ['agents']),
    ...repeated([yard.mixes ?? []], ['mixes']),
    ...repeated([yard.covers ?? []], ['covers']),
    ...coverIssues(yard),
    ...(yard.beds ?? []).flatMap(underIssues),
    ...repeated([yard.vibrators ?? []], ['vibrators']),
    ...repeated([yard.insertKinds ?? []], ['insertKinds']),
    ...repeated(gear, ['cranes', 'rigging']),
    ...(yard.rigging ?? []).flatMap(pairIssues),
  ]
  if (issues.length > 0) throw new InputError(issues, from)
  return yard
}

/** A leg that the set does not have, or that is an end of two slings. */
function pairIssues({ legs, pairs = [] }: YardRigging, index: number): InputIssue[] {
  const ends = pairs.flat()
  return ends.flatMap((end, at) => {
    const path = `rigging[${index}].pairs[${at >> 1}]`
    if (end > legs) return [{ path, found: `leg ${end}`, expected: `a leg from 1 to ${legs}` }]
    if (ends.indexOf(end) < at) return [{ path, found: `leg ${end} again`, expected: 'a leg named once' }]
    return []
  })
}

function repeated(
  lists: readonly (readonly { readonly mark: string }[])[],
  paths: readonly string[],
): InputIssue[] {
  const seen = new Set<string>()
  return lists.flatMap((list, which) =>
    list.flatMap(({ mark: name }, index) => {
      const twice = seen.has(name)
      seen.add(name)
      const path = `${paths[which]}[${index}].mark`
      return twice ? [{ path, found: JSON.stringify(name), expected: 'a mark used once' }] : []
    }),
  )
}

/** JSON Schema 2020-12 of a yard file. */
export function yardJsonSchema(): Record<string, unknown> {
  return { title: 'Castwright yard, version 1', ...z.toJSONSchema(yardSchema, { io: 'input' }) }
}

/** JSON Schema 2020-12 of a job file. */
export function jobJsonSchema(): Record<string, unknown> {
  return { title: 'Castwright job, version 1', ...z.toJSONSchema(jobSchema, { io: 'input' }) }
}

export const jobSchema = z.strictObject({
  format: z.literal(JOB_FORMAT),
  mark,
  yard: z.string().min(1).max(120),
  drawings: z.array(z.unknown()).max(20_000),
  due: z.record(mark, day).optional(),
})

export type Job = z.output<typeof jobSchema>

/** @throws InputError naming each field; the drawings in it are read one by one with `parseDrawing`. */
export function parseJob(value: unknown, from = ''): Job {
  return parseInput(jobSchema, value, from)
}

function isTimeZone(value: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: value })
    return true
  } catch {
    return false
  }
}
