import * as z from 'zod'
import { MADE_BY } from '../../codes/bar-acts.ts'
import { parseInput } from '../../working/parse.ts'

/** How the strength came into the bar; what may be done with it hangs on it. */
export const PROCESSES = [...MADE_BY, 'unknown'] as const

/** What somebody sees on the bars of a bundle. */
export const SURFACES = [
  'clean',
  'light rust',
  'loose rust',
  'pitted',
  'oil or paint',
  'mud or ice',
  'kinked',
  'ribs damaged',
  'cracked',
] as const

const word = z.string().trim().min(1).max(80)
const grade = z.string().trim().min(1).max(40)
const diameter = z.number().positive().max(60)
const length = z.number().positive().max(100_000)
const count = z.number().int().positive().max(100_000)

export const bundleSchema = z.strictObject({
  /** What the yard ordered, from its own order and not from the docket. */
  ordered: z.strictObject({
    diameter,
    grade,
    /** mm */
    length: length.optional(),
    count: count.optional(),
    reference: word.optional(),
  }),
  /** Null: it came without one. Left out: nobody has said. */
  docket: z
    .strictObject({
      number: word,
      supplier: word.optional(),
      diameter: diameter.optional(),
      grade: grade.optional(),
      length: length.optional(),
      count: count.optional(),
      heat: word.optional(),
    })
    .nullable()
    .optional(),
  /** The tag wired to the bundle. Null: there is none. */
  tag: z.strictObject({ mill: word.optional(), heat: word.optional() }).nullable().optional(),
  /** The mill's certificate. Null: there is none. */
  certificate: z
    .strictObject({
      number: word,
      heat: word.optional(),
      grade: grade.optional(),
      diameter: diameter.optional(),
      process: z.enum(PROCESSES).optional(),
    })
    .nullable()
    .optional(),
  /** Marks read on the bar, in their order; `none` where nothing is rolled on it. */
  seen: z.array(word).max(60).optional(),
  /** Bars on which they were read. */
  barsRead: count.optional(),
  /** Straight pieces that were weighed: mm, kg. */
  weighed: z
    .array(z.strictObject({ length, mass: z.number().positive().max(10_000) }))
    .max(100)
    .optional(),
  /** Lengths measured on bars of the bundle, mm. */
  lengths: z.array(length).max(1000).optional(),
  counted: count.optional(),
  surface: z.array(z.enum(SURFACES)).max(SURFACES.length).optional(),
  galvanised: z.boolean().optional(),
  /** Tensile tests of samples from this bundle, by a laboratory: MPa, percent. */
  tests: z
    .array(
      z.strictObject({
        reference: word,
        yield: z.number().positive().max(3000),
        strength: z.number().positive().max(3000),
        /** Elongation at greatest force, %. */
        uniform: z.number().positive().max(60).optional(),
        /** Elongation after fracture over 200 mm, %. */
        elongation: z.number().positive().max(90).optional(),
      }),
    )
    .max(50)
    .optional(),
})

/** One bundle of bars as it came: ordered, papers, what was seen, weighed and measured. */
export type Bundle = z.output<typeof bundleSchema>
export type Process = (typeof PROCESSES)[number]
export type Surface = (typeof SURFACES)[number]

/** @throws InputError naming each field. */
export function parseBundle(value: unknown, from = ''): Bundle {
  return parseInput(bundleSchema, value, from)
}

/** Heat numbers that papers and tag give, with where each stands. */
export function heatsOf({
  docket,
  tag,
  certificate,
}: Bundle): { readonly on: string; readonly heat: string }[] {
  return [
    { on: 'certificate', heat: certificate?.heat },
    { on: 'tag', heat: tag?.heat },
    { on: 'docket', heat: docket?.heat },
  ].flatMap(({ on, heat }) => (heat === undefined || namesNoHeat(heat) ? [] : [{ on, heat }]))
}

/** A dash or a word in the field of the heat number: nothing that two papers could agree on. */
function namesNoHeat(heat: string): boolean {
  return /^(|\?+|NA|NONE|NIL|NO|NOTSAID|UNKNOWN|TBA|TBC)$/.test(heatKey(heat))
}

/** Heat numbers are compared without spaces, dashes and case: clerks write them in several ways. */
export function sameHeat(a: string, b: string): boolean {
  return heatKey(a) === heatKey(b)
}

export function heatKey(heat: string): string {
  return heat.toUpperCase().replace(/[\s\-–—_./]/g, '')
}
