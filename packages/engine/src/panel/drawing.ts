import * as z from 'zod'
import { InputError, type InputIssue } from '../working/issue.ts'
import { parseInput, readJson } from '../working/parse.ts'
import { FARTHEST, steelIssues, steelSchema } from './drawn-steel.ts'
import { ductSchema, voidIssues, voidSchema } from './drawn-voids.ts'
import { FAMILY_IDS } from './family-ids.ts'
import type { Point, Ring } from './point.ts'
import { ringFault } from './polygon.ts'

export {
  type DrawnBar,
  type DrawnEdgeBars,
  type DrawnMat,
  type DrawnStarters,
  type DrawnSteel,
  type DrawnTieBars,
  type DrawnTrimmers,
  isEdgeBars,
  isListed,
  isMat,
  isStarters,
  isTieBars,
  isTrimmers,
  type Layer,
} from './drawn-steel.ts'
export type { DrawnDuct, DrawnVoid } from './drawn-voids.ts'
export { FAMILY_IDS }

export const DRAWING_FORMAT = 'castwright.drawing/1'

/** Corners of all outlines together. */
const MOST_CORNERS = 20_000

const positive = z.number().positive()
const coordinate = z.number().min(-FARTHEST).max(FARTHEST)
const point = z.tuple([coordinate, coordinate])
const ring = z.array(point).min(3).max(2000)
const mark = z.string().min(1).max(40)

const opening = z.strictObject({ mark, outline: ring })

const congested = z.strictObject({
  mark,
  outline: ring,
  /** Share of a vibrator's reach that is left there; two thirds where it is not given. */
  share: z.number().positive().max(1).optional(),
})

const insert = z.strictObject({
  mark,
  at: point,
  kind: z.enum(['face', 'edge']),
  type: mark.optional(),
})

const lifting = z.strictObject({
  strength: positive,
  load: positive,
  reference: z.string().min(1).max(200),
  by: z.string().min(1).max(200),
})

const lying = z.strictObject({
  as: z.enum(['flat', 'upright']),
  /** Which way the two timbers lie; of a panel that stands: which sides are up. */
  across: z.enum(['x', 'y']).optional(),
  /** The two timbers, as distances along the other axis, mm. */
  lines: z.tuple([coordinate, coordinate]).optional(),
  /** From plumb, degrees. */
  lean: z.number().min(0).max(30).optional(),
})

const handling = z.strictObject({
  turn: z
    .strictObject({
      about: z.enum(['bottom', 'top', 'left', 'right']),
      inserts: z.array(mark).min(1).max(16).optional(),
      /** Rigging that turns it, where it is not the drawing's. */
      rigging: mark.optional(),
    })
    .optional(),
  store: lying.optional(),
  travel: lying.optional(),
  /** Load factors that the drawing asks for, by stage; never below the family's. */
  factors: z
    .strictObject({
      release: positive.optional(),
      turn: positive.optional(),
      hang: positive.optional(),
      store: positive.optional(),
      travel: positive.optional(),
      erect: positive.optional(),
    })
    .optional(),
})

/** Shape of a drawing file. What a schema cannot say (crossing edges, inserts outside) is in `parseDrawing`. */
export const drawingSchema = z.strictObject({
  format: z.literal(DRAWING_FORMAT),
  mark,
  job: mark.optional(),
  revision: z.string().min(1).max(40).optional(),
  code: z.enum(FAMILY_IDS).optional(),
  edition: z.string().min(1).max(80).optional(),
  outline: ring,
  thickness: positive.max(10_000),
  openings: z.array(opening).max(1000).optional(),
  voids: z.array(voidSchema).max(200).optional(),
  ducts: z.array(ductSchema).max(200).optional(),
  concrete: z.strictObject({
    strength: positive.max(500),
    density: positive.max(20_000).optional(),
    aggregate: positive.max(500).optional(),
  }),
  cover: z
    .strictObject({ mould: positive.optional(), top: positive.optional(), edge: positive.optional() })
    .optional(),
  steel: z.array(steelSchema).max(2000).optional(),
  lap: z.strictObject({ length: positive }).optional(),
  inserts: z.array(insert).max(200).optional(),
  /** Where the designer says that steel or inserts stand close: a vibrator reaches less far. */
  congested: z.array(congested).max(100).optional(),
  rigging: mark.optional(),
  lifting: lifting.optional(),
  handling: handling.optional(),
})

/** A drawing as it comes in: mm, MPa, kg/m³; see the field notes in docs/formats.md. */
export type Drawing = z.output<typeof drawingSchema>
export type DrawnOpening = z.output<typeof opening>
export type DrawnInsert = z.output<typeof insert>
export type LiftingDesign = z.output<typeof lifting>
/** How the panel is turned, stored and carried, where the drawing says it. */
export type DrawnHandling = z.output<typeof handling>
export type Lying = z.output<typeof lying>

/**
 * Reads a drawing and refuses what cannot be built: wrong fields, crossing outlines, repeated marks, bars of no shape.
 *
 * @throws InputError naming each field. Whether the concrete falls into pieces is found by `panelOf`.
 */
export function parseDrawing(value: unknown, from = ''): Drawing {
  const drawing = parseInput(drawingSchema, value, from)
  const corners = [drawing, ...(drawing.openings ?? []), ...(drawing.voids ?? [])].reduce(
    (sum, { outline }) => sum + outline.length,
    0,
  )
  if (corners > MOST_CORNERS) {
    const found = `${corners} corners in all`
    throw new InputError([{ path: 'openings', found, expected: `at most ${MOST_CORNERS} corners` }], from)
  }
  const openings = (drawing.openings ?? []).map((opening) => opening.mark)
  const issues = [
    ...ringIssues(drawing.outline as unknown as Ring, 'outline'),
    ...(drawing.openings ?? []).flatMap((hole, index) =>
      ringIssues(hole.outline as unknown as Ring, `openings[${index}].outline`),
    ),
    ...(drawing.voids ?? []).flatMap((one, index) =>
      ringIssues(one.outline as unknown as Ring, `voids[${index}].outline`),
    ),
    ...voidIssues(drawing),
    ...(drawing.congested ?? []).flatMap((zone, index) =>
      ringIssues(zone.outline as unknown as Ring, `congested[${index}].outline`),
    ),
    ...repeatedMarks(drawing.openings ?? [], 'openings'),
    ...repeatedMarks(drawing.congested ?? [], 'congested'),
    ...repeatedMarks(drawing.inserts ?? [], 'inserts'),
    ...handlingIssues(drawing),
    ...(drawing.steel ?? []).flatMap((steel, index) => steelIssues(steel, `steel[${index}]`, openings)),
  ]
  if (issues.length > 0) throw new InputError(issues, from)
  return drawing
}

/** @throws InputError, also where the text is not JSON. */
export function readDrawing(text: string, from = ''): Drawing {
  return parseDrawing(readJson(text, from), from)
}

function ringIssues(ring: Ring, path: string): InputIssue[] {
  const fault = ringFault(ring)
  if (fault === null) return []
  const corner = ring[fault.corner] as Point
  return [
    {
      path: `${path}[${fault.corner}]`,
      found: `[${corner[0]}, ${corner[1]}]: ${fault.fault}`,
      expected: 'a simple polygon',
    },
  ]
}

function repeatedMarks(items: readonly { readonly mark: string }[], path: string): InputIssue[] {
  const seen = new Set<string>()
  return items.flatMap(({ mark }, index) => {
    const repeated = seen.has(mark)
    seen.add(mark)
    return repeated
      ? [{ path: `${path}[${index}].mark`, found: JSON.stringify(mark), expected: 'a mark used once' }]
      : []
  })
}

/** The inserts named for the turn are drawn ones; timbers stand apart. */
function handlingIssues({ handling, inserts = [] }: Drawing): InputIssue[] {
  const issues = (handling?.turn?.inserts ?? []).flatMap((named, index) =>
    inserts.some((insert) => insert.mark === named)
      ? []
      : [
          {
            path: `handling.turn.inserts[${index}]`,
            found: JSON.stringify(named),
            expected: 'the mark of a drawn insert',
          },
        ],
  )
  for (const key of ['store', 'travel'] as const) {
    const lines = handling?.[key]?.lines
    if (lines !== undefined && !(Math.abs(lines[1] - lines[0]) > 1)) {
      const found = `${lines[0]}, ${lines[1]}`
      issues.push({ path: `handling.${key}.lines`, found, expected: 'two places apart' })
    }
  }
  return issues
}
