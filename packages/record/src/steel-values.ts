import * as z from 'zod'

const word = z.string().min(1).max(200)
const mark = z.string().min(1).max(120)
/** `<job>/<mark>` */
const panel = word.regex(/^[^/]+\/./s, 'job/mark')
const ulid = z.string().regex(/^[0-7][0-9A-HJKMNP-TV-Z]{25}$/, 'a ULID')
const diameter = z.number().positive().max(60)
const grade = z.string().min(1).max(40)
const length = z.number().positive().max(1e6)
const count = z.number().int().positive().max(1_000_000)

/** Equal pieces of one bar; `panel` is `<job>/<mark>`. */
const pieces = z
  .array(
    z.strictObject({
      length,
      count,
      mark: mark.optional(),
      panel: panel.optional(),
      machine: mark.optional(),
      order: z.number().int().min(0).max(1_000_000).optional(),
    }),
  )
  .max(500)

/** What somebody decided about a bundle. */
export const releaseSchema = z.strictObject({ decision: z.enum(['accept', 'quarantine', 'return']) })

/** Offcuts counted into the rack by hand, mm; the bundle where it is known. */
export const rackSchema = z.strictObject({
  diameter,
  grade,
  length,
  count,
  bundle: word.nullable().optional(),
})

/** Steel of a bundle that went into a panel without a cutting plan. */
export const usedSchema = z.strictObject({ panel, mark: mark.optional() })

/** A cutting plan as it was handed to the shear: one diameter and grade. Lines count from 1. */
export const cutPlanSchema = z.strictObject({
  diameter,
  grade,
  kerf: z.number().min(0).max(1000),
  /** Smallest offcut worth keeping, mm; null: none is kept. */
  keep: length.nullable(),
  lines: z
    .array(
      z
        .strictObject({
          stock: length,
          count,
          /** Taken from the rack. */
          rack: z.boolean(),
          pieces: pieces.min(1),
          offcut: z.number().min(0).max(1e6),
        })
        .refine(
          ({ stock, pieces: planned, offcut }) => sumOf(planned) + offcut <= stock * (1 + 1e-9),
          'pieces and offcut within the length of the bar',
        ),
    )
    .min(1)
    .max(2000),
})

/** Bars that were cut in one way. */
export const cutSchema = z
  .strictObject({
    /** Entry of the cutting plan and its line, from 1; null where it was cut without a plan. */
    plan: ulid.nullable(),
    line: z.number().int().positive().max(2000).nullable(),
    diameter,
    grade,
    /** The bundle that the bars came from, or the entry that put the offcut into the rack. */
    from: z.union([z.strictObject({ bundle: word }), z.strictObject({ rack: ulid })]),
    /** Length of each bar before, mm. */
    stock: length,
    bars: count,
    /** Good pieces of each bar. */
    pieces,
    /** Pieces of each bar that came out wrong. */
    lost: pieces.optional(),
    /** Left of each bar after the cut that took it off, mm. */
    offcut: z.number().min(0).max(1e6),
    /** The offcuts lie in the rack. */
    kept: z.boolean(),
  })
  .refine(
    ({ stock, pieces: good, lost = [], offcut, kept }) =>
      sumOf(good) + sumOf(lost) + (kept ? offcut : 0) <= stock * (1 + 1e-9),
    'pieces and offcut within the length of the bar',
  )

function sumOf(of: readonly { readonly length: number; readonly count: number }[]): number {
  return of.reduce((sum, piece) => sum + piece.length * piece.count, 0)
}
