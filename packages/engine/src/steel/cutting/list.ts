import * as z from 'zod'
import { InputError, type InputIssue } from '../../working/issue.ts'
import { parseInput } from '../../working/parse.ts'

const positive = z.number().positive().max(1e6)
const count = z.number().int().positive().max(1_000_000)

const word = z.string().min(1).max(40)

const cutListSchema = z.strictObject({
  stock: z.array(z.strictObject({ length: positive, count: count.optional() })).max(100),
  offcuts: z
    .array(z.strictObject({ length: positive, count }))
    .max(1000)
    .optional(),
  kerf: z.number().min(0).max(1000).optional(),
  /** Smallest offcut worth keeping; judged after the cut that takes it off. */
  keep: positive.optional(),
  /** Equal bars that the shear takes at once. */
  together: z.number().int().positive().max(100).optional(),
  /** Different ways of cutting that the shear wants at most. */
  patterns: z.number().int().positive().max(2000).optional(),
  pieces: z
    .array(
      z.strictObject({
        length: positive,
        count,
        mark: word.optional(),
        /** A panel's mark, or its job and mark. */
        panel: z.string().min(1).max(120).optional(),
        machine: word.optional(),
        /** Lower is wanted earlier; a piece without one comes last. */
        order: z.number().int().min(0).max(1_000_000).optional(),
      }),
    )
    .min(1)
    .max(5000),
})

/** What is to be cut from what: lengths and kerf in one unit, mm unless the yard says otherwise. A stock without `count` is not limited. */
export type CutList = z.output<typeof cutListSchema>

/** Decimals that lengths may have: a tenth of a micrometre when they are mm. */
const MOST_DECIMALS = 4

/**
 * Reads a cutting list.
 *
 * @throws InputError naming the field; also where there is neither stock nor offcut, a length has more than four decimals, or a piece is
 * longer than every bar.
 */
export function parseCutList(value: unknown, from = ''): CutList {
  const list = parseInput(cutListSchema, value, from)
  const bars = [...list.stock, ...(list.offcuts ?? [])].map((bar) => bar.length)
  if (bars.length === 0) {
    throw new InputError(
      [{ path: 'stock', found: 'no stock and no offcuts', expected: 'at least one bar' }],
      from,
    )
  }
  const longest = Math.max(...bars)
  const issues: InputIssue[] = [
    ...decimalIssues(list.stock, 'stock'),
    ...decimalIssues(list.offcuts ?? [], 'offcuts'),
    ...decimalIssues(list.pieces, 'pieces'),
    ...list.pieces.flatMap(({ length, mark }, index) =>
      length > longest
        ? [
            {
              path: `pieces[${index}].length`,
              found: `${length}${mark === undefined ? '' : ` (${mark})`}, ${round(length - longest)} longer than every bar`,
              expected: `at most ${longest}`,
            },
          ]
        : [],
    ),
  ]
  if (list.kerf !== undefined && decimals(list.kerf) > MOST_DECIMALS) {
    issues.push({ path: 'kerf', found: String(list.kerf), expected: `at most ${MOST_DECIMALS} decimals` })
  }
  if (list.keep !== undefined && decimals(list.keep) > MOST_DECIMALS) {
    issues.push({ path: 'keep', found: String(list.keep), expected: `at most ${MOST_DECIMALS} decimals` })
  }
  if (issues.length > 0) throw new InputError(issues, from)
  return list
}

function decimalIssues(items: readonly { readonly length: number }[], path: string): InputIssue[] {
  return items.flatMap(({ length }, index) =>
    decimals(length) > MOST_DECIMALS
      ? [
          {
            path: `${path}[${index}].length`,
            found: String(length),
            expected: `at most ${MOST_DECIMALS} decimals`,
          },
        ]
      : [],
  )
}

/** Decimals that a number has as written: 12.5 has one. Five stands for more than four. */
export function decimals(value: number): number {
  for (let digits = 0; digits <= MOST_DECIMALS; digits += 1) {
    if (Number(value.toFixed(digits)) === value) return digits
  }
  return MOST_DECIMALS + 1
}

function round(value: number): number {
  return Number(value.toFixed(MOST_DECIMALS))
}
