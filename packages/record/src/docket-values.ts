import * as z from 'zod'

const word = z.string().min(1).max(200)
const mark = z.string().min(1).max(40)
const instant = z.iso.datetime({ offset: false, precision: 3 })
const volume = z.number().positive().max(100)
const litres = z.number().min(0).max(10_000)
const slump = z.number().min(0).max(400)

/**
 * A delivery docket and what was measured at the truck. Only the number must be there: entries of one number on one panel add up to one load, so that the ticket can
 * be brought in at the office and the rest said at the truck.
 */
export const docketSchema = z
  .strictObject({
    number: word,
    supplier: word.optional(),
    truck: word.optional(),
    mix: mark.optional(),
    /** m³: ordered for this load by the ticket, delivered, and of it into this panel. */
    ordered: volume.optional(),
    volume: z.number().positive().optional(),
    used: volume.optional(),
    batched: instant.optional(),
    arrived: instant.optional(),
    /** Discharge, begin and end. */
    began: instant.optional(),
    discharged: instant.optional(),
    /** mm: as the ticket orders, and as measured. */
    slumpTarget: slump.optional(),
    slump: z.number().min(0).optional(),
    slumpSample: z.enum(['spot', 'composite']).optional(),
    /** °C */
    temperature: z.number().optional(),
    /** L: as the ticket allows, and as added. */
    waterAllowed: litres.optional(),
    waterAdded: z.number().min(0).optional(),
    /** Discharge had begun when water was added. */
    waterAfterDischarge: z.boolean().optional(),
    /** L */
    admixtureAdded: litres.optional(),
    /** At mixing speed after the last addition. */
    remixTurns: z.number().min(0).max(10_000).optional(),
    remixMinutes: z.number().min(0).max(600).optional(),
    /** Marks of the cylinders or cubes made from this load. */
    specimens: z.array(mark).max(100).optional(),
  })
  .refine(({ used, volume: whole }) => used === undefined || whole === undefined || used <= whole, {
    path: ['used'],
    error: 'not more than the volume of the load',
  })

/** What was decided about a load; `about` is the docket's entry. */
export const docketDecisionSchema = z.strictObject({ decision: z.enum(['accept', 'send-back']) })
