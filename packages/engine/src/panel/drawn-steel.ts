import * as z from 'zod'
import type { InputIssue } from '../working/issue.ts'

/** Farthest coordinate, mm: clipping in whole micrometres stays exact, and nobody casts a panel of a kilometre. */
export const FARTHEST = 1_000_000

const positive = z.number().positive()
const length = positive.max(FARTHEST)
const coordinate = z.number().min(-FARTHEST).max(FARTHEST)
const point = z.tuple([coordinate, coordinate])
const mark = z.string().min(1).max(40)
export const layer = z.enum(['mould', 'top'])
const size = { diameter: positive.max(60), grade: mark }

const mat = z.strictObject({
  layer,
  direction: z.enum(['x', 'y']),
  ...size,
  spacing: length,
  /** Steel provided over steel required where its bars lap, by the designer. */
  spare: positive.max(100).optional(),
})

const bar = z.strictObject({
  bar: mark,
  ...size,
  role: z.enum(['main', 'stirrup']).optional(),
  layer: layer.optional(),
  path: z.array(point).min(2).max(200).optional(),
  legs: z.array(positive).min(1).max(50).optional(),
  turns: z.array(positive.max(180)).max(49).optional(),
  inside: positive.optional(),
  count: z.number().int().positive().max(100_000).optional(),
  /** Tied to bars that it lies against; without it contact is not as drawn. */
  tied: z.boolean().optional(),
})

/** Which edges: all, the outer ones, those of all openings, one side of the outline, or an opening by its mark. */
const edgePlace = mark

const edgeBars = z.strictObject({
  edge: edgePlace,
  /** `u` round both layers, `hook` from one layer across the thickness. */
  form: z.enum(['u', 'hook']),
  /** Layer that the leg of a hook lies in. */
  layer: layer.optional(),
  ...size,
  spacing: length,
  /** Leg along the mats, outside, mm. */
  leg: length,
  inside: positive.optional(),
  mark: mark.optional(),
})

const diagonals = z.strictObject({
  ...size,
  length,
  /** At each corner and layer. */
  count: z.number().int().positive().max(10),
})

const trimmers = z.strictObject({
  /** `all`, or an opening by its mark. */
  trim: mark,
  layer: z.enum(['mould', 'top', 'both']),
  ...size,
  /** Beside each side of the opening, in each layer. */
  count: z.number().int().positive().max(10),
  /** Length past the corner, mm. */
  beyond: length,
  /** Between trimmers, centre to centre, mm. */
  apart: length.optional(),
  mark: mark.optional(),
  diagonals: diagonals.optional(),
})

const starters = z.strictObject({
  /** Edges as of edge bars, or the two ends of a line on the top face. */
  starters: z.union([edgePlace, z.tuple([point, point])]),
  /** Layer that starters out of an edge lie in. */
  layer: layer.optional(),
  ...size,
  spacing: length,
  /** Length in the concrete, mm. */
  embed: length,
  /** Length out of it, mm. */
  project: length,
  /** Leg at the embedded end of starters that stand on a line, outside, to the left of the line, mm. */
  foot: length.optional(),
  inside: positive.optional(),
  mark: mark.optional(),
})

const tieBars = z.strictObject({
  /** With `spacing` the two ends of a line; without it the middle of each tie. */
  ties: z.array(point).min(1).max(2000),
  spacing: length.optional(),
  /** Direction of the width of single ties; ties along a line stand square to it. */
  across: z.enum(['x', 'y']).optional(),
  ...size,
  /** Outside width, mm. The height is what the covers leave. */
  width: length,
  inside: positive.optional(),
  /** Straight of each hook past its bend of 135°, mm. */
  tail: length.optional(),
  mark: mark.optional(),
})

export const steelSchema = z.union([mat, bar, edgeBars, trimmers, starters, tieBars])

export type Layer = z.output<typeof layer>
export type DrawnSteel = z.output<typeof steelSchema>
export type DrawnMat = z.output<typeof mat>
export type DrawnBar = z.output<typeof bar>
/** U-bars or hooks along edges. */
export type DrawnEdgeBars = z.output<typeof edgeBars>
/** Bars beside the sides of openings, with diagonals at their corners. */
export type DrawnTrimmers = z.output<typeof trimmers>
export type DrawnDiagonals = z.output<typeof diagonals>
/** Bars that stand out of an edge or of the top face. */
export type DrawnStarters = z.output<typeof starters>
/** Closed ties across the thickness. */
export type DrawnTieBars = z.output<typeof tieBars>

export function isMat(steel: DrawnSteel): steel is DrawnMat {
  return 'direction' in steel
}

/** A bar listed by name with its own shape. */
export function isListed(steel: DrawnSteel): steel is DrawnBar {
  return 'bar' in steel
}

export function isEdgeBars(steel: DrawnSteel): steel is DrawnEdgeBars {
  return 'edge' in steel
}

export function isTrimmers(steel: DrawnSteel): steel is DrawnTrimmers {
  return 'trim' in steel
}

export function isStarters(steel: DrawnSteel): steel is DrawnStarters {
  return 'starters' in steel
}

export function isTieBars(steel: DrawnSteel): steel is DrawnTieBars {
  return 'ties' in steel
}

/** Words for edges; any other word is the mark of an opening. */
export const EDGE_WORDS = ['all', 'outer', 'openings', 'bottom', 'top', 'left', 'right'] as const
export type EdgeWord = (typeof EDGE_WORDS)[number]

export function isEdgeWord(word: string): word is EdgeWord {
  return (EDGE_WORDS as readonly string[]).includes(word)
}

/** What no schema can say about one line of `steel`; `openings` are the marks of the drawing's openings. */
export function steelIssues(steel: DrawnSteel, path: string, openings: readonly string[]): InputIssue[] {
  if (isListed(steel)) return barIssues(steel, path)
  if (isTrimmers(steel)) {
    return steel.trim === 'all' ? [] : placeIssues(steel.trim, ['all'], `${path}.trim`, openings)
  }
  const issues = spacingIssues(steel, path)
  if (isEdgeBars(steel)) return [...issues, ...edgeIssues(steel, path, openings)]
  if (isStarters(steel)) return [...issues, ...starterIssues(steel, path, openings)]
  if (isTieBars(steel)) return [...issues, ...tieIssues(steel, path)]
  return issues
}

function spacingIssues(
  { diameter, spacing }: { readonly diameter: number; readonly spacing?: number | undefined },
  path: string,
): InputIssue[] {
  if (spacing === undefined || spacing > diameter) return []
  return [
    { path: `${path}.spacing`, found: String(spacing), expected: `more than the diameter, ${diameter}` },
  ]
}

function placeIssues(
  place: string,
  words: readonly string[],
  path: string,
  openings: readonly string[],
): InputIssue[] {
  const [word, opening] = [words.includes(place), openings.includes(place)]
  if (word && opening) {
    const expected = 'a word for edges that is not also the mark of an opening'
    return [{ path, found: JSON.stringify(place), expected }]
  }
  if (word || opening) return []
  const known = [...words, ...openings].map((each) => JSON.stringify(each)).join(', ')
  return [{ path, found: JSON.stringify(place), expected: `one of ${known}` }]
}

function edgeIssues(
  { edge, form, layer }: DrawnEdgeBars,
  path: string,
  openings: readonly string[],
): InputIssue[] {
  const issues = placeIssues(edge, EDGE_WORDS, `${path}.edge`, openings)
  if ((form === 'hook') !== (layer !== undefined)) {
    issues.push({
      path: `${path}.layer`,
      found: layer === undefined ? 'nothing' : JSON.stringify(layer),
      expected: form === 'hook' ? 'the layer of the leg' : 'no layer: a U lies in both',
    })
  }
  return issues
}

function starterIssues(
  { starters: place, layer, foot }: DrawnStarters,
  path: string,
  openings: readonly string[],
): InputIssue[] {
  const onEdge = typeof place === 'string'
  const issues = onEdge ? placeIssues(place, EDGE_WORDS, `${path}.starters`, openings) : []
  if (!onEdge && place[0][0] === place[1][0] && place[0][1] === place[1][1]) {
    issues.push({ path: `${path}.starters`, found: 'a line without length', expected: 'two places apart' })
  }
  if (onEdge !== (layer !== undefined)) {
    issues.push({
      path: `${path}.layer`,
      found: layer === undefined ? 'nothing' : JSON.stringify(layer),
      expected: onEdge ? 'the layer that the starters lie in' : 'no layer: starters on a line stand upright',
    })
  }
  if (onEdge && foot !== undefined) {
    issues.push({ path: `${path}.foot`, found: String(foot), expected: 'no foot on starters out of an edge' })
  }
  return issues
}

function tieIssues({ ties, spacing, across }: DrawnTieBars, path: string): InputIssue[] {
  if (spacing === undefined) {
    return across === undefined
      ? [{ path: `${path}.across`, found: 'nothing', expected: '"x" or "y", or a spacing along a line' }]
      : []
  }
  const issues: InputIssue[] = []
  const [a, b] = ties
  if (ties.length !== 2 || (a?.[0] === b?.[0] && a?.[1] === b?.[1])) {
    const found = `${ties.length} places`
    issues.push({ path: `${path}.ties`, found, expected: 'the two ends of a line, apart' })
  }
  if (across !== undefined) {
    const expected = 'no direction: ties along a line stand square to it'
    issues.push({ path: `${path}.across`, found: JSON.stringify(across), expected })
  }
  return issues
}

function barIssues(drawn: DrawnBar, path: string): InputIssue[] {
  if ((drawn.path === undefined) === (drawn.legs === undefined)) {
    return [
      {
        path,
        found: drawn.path ? 'both path and legs' : 'neither path nor legs',
        expected: 'either path or legs',
      },
    ]
  }
  const bends = (drawn.legs?.length ?? 1) - 1
  const turns = drawn.turns?.length
  if (turns !== undefined && turns !== 1 && turns !== bends) {
    return [
      {
        path: `${path}.turns`,
        found: `${turns} turns`,
        expected: `one turn, or one for each of ${bends} bends`,
      },
    ]
  }
  return []
}
