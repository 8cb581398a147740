import * as z from 'zod'
import type { InputIssue } from '../working/issue.ts'

// What lies over and under a panel while it cures, as the yard gives it.

const positive = z.number().positive()
const mark = z.string().min(1).max(40)
const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time of day such as 05:30')

/** What lies under the concrete on a bed, outward from it. Films and resistances: W/m²K, m²K/W. */
export const underBed = z.strictObject({
  /** Face plate and what is fixed to it: mm, W/mK, kJ/m³K. */
  layers: z
    .array(
      z.strictObject({
        thickness: positive.max(5000),
        conductivity: positive.max(1000),
        heatCapacity: positive.max(20_000),
      }),
    )
    .max(6)
    .optional(),
  /** Insulation below the plate and its heating, m²K/W. */
  insulation: z.number().min(0).max(100).optional(),
  /** Film of the air under it, W/m²K. */
  film: positive.max(1000).optional(),
  /** A bed that is held at a temperature, °C, all the time or in hours from mixing. */
  temperature: z
    .union([
      z.number().min(-20).max(100),
      z
        .array(z.tuple([z.number().min(0).max(1000), z.number().min(-20).max(100)]))
        .min(1)
        .max(200),
    ])
    .optional(),
  /** A bed that is heated by so many W/m² between two hours from mixing. */
  power: z.strictObject({ watts: positive.max(5000), from: z.number().min(0), until: positive }).optional(),
})

export const cover = z.strictObject({
  mark,
  /** m²K/W; or thickness, mm, and conductivity, W/mK. */
  resistance: z.number().min(0).max(100).optional(),
  thickness: positive.max(2000).optional(),
  conductivity: positive.max(100).optional(),
})

export const covering = z.strictObject({ cover: mark, off: clock.optional() })

interface Covers {
  readonly covers?: readonly z.output<typeof cover>[] | undefined
  readonly covering?: z.output<typeof covering> | undefined
}

/** A cover that says nothing of its heat, or two things; a covering that the yard does not list. */
export function coverIssues({ covers = [], covering: its }: Covers): InputIssue[] {
  const issues = covers.flatMap(({ resistance, thickness, conductivity }, index): InputIssue[] => {
    const layer = thickness !== undefined && conductivity !== undefined
    const part = thickness !== undefined || conductivity !== undefined
    if (resistance === undefined ? layer : !part) return []
    const found = resistance === undefined ? 'neither' : 'both'
    const expected = 'resistance, or thickness and conductivity'
    return [{ path: `covers[${index}]`, found, expected }]
  })
  if (its !== undefined && !covers.some(({ mark: listed }) => listed === its.cover))
    issues.push({
      path: 'covering.cover',
      found: JSON.stringify(its.cover),
      expected: 'a mark of covers',
    })
  return issues
}

/** A bed that is both held and heated, or that is held in hours that do not rise, or heated backwards. */
export function underIssues(
  { under }: { readonly under?: z.output<typeof underBed> | undefined },
  index: number,
): InputIssue[] {
  const path = `beds[${index}].under`
  const issues: InputIssue[] = []
  if (under?.temperature !== undefined && under.power !== undefined)
    issues.push({ path, found: 'temperature and power', expected: 'one of the two' })
  if (under?.power !== undefined && !(under.power.until > under.power.from))
    issues.push({
      path: `${path}.power.until`,
      found: `${under.power.until} h`,
      expected: `after ${under.power.from} h`,
    })
  if (Array.isArray(under?.temperature))
    for (const [at, [hours]] of under.temperature.entries()) {
      const before = under.temperature[at - 1]?.[0]
      if (before !== undefined && !(hours > before))
        issues.push({
          path: `${path}.temperature[${at}]`,
          found: `${hours} h after ${before} h`,
          expected: 'hours that rise',
        })
    }
  return issues
}
