import { z } from 'zod'
import { parseInput } from '../../working/parse.ts'
import { proportionsSchema } from '../../yard/yard.ts'
import { COLDEST_READING, HOTTEST_READING } from '../readings.ts'

const positive = z.number().positive()
/** No concrete is stronger, MPa: a number above it is in another unit. */
const STRONGEST = 250

const gainSchema = z.strictObject({
  /** Age, h; strength, MPa; temperature while it cured, °C. */
  tests: z
    .array(
      z.strictObject({
        age: positive,
        strength: positive.max(STRONGEST),
        temperature: z.number().min(COLDEST_READING).max(HOTTEST_READING).optional(),
      }),
    )
    .min(1)
    .max(500),
  /** kg/m³ */
  mix: proportionsSchema.optional(),
  /** Reference temperature, °C, and activation energy, J/mol, of the age method. */
  reference: z.number().min(COLDEST_READING).max(HOTTEST_READING).optional(),
  activation: positive.optional(),
})

/** Early tests of one mix, with its proportions where they are known. */
export type GainTests = z.output<typeof gainSchema>

/** @throws InputError naming each field: nothing tested, an age or strength not above 0, a strength above 250 MPa, proportions in part. */
export function readGainTests(value: unknown, from = ''): GainTests {
  return parseInput(gainSchema, value, from)
}
