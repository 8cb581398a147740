import { bondCondition } from '../codes/eu/en1992-1-1-2004/lap.ts'
import type { LapLength, SteelRules } from '../codes/steel-rules.ts'
import type { Drawing } from '../panel/drawing.ts'
import type { Point, Ring } from '../panel/point.ts'
import { distanceToSegment, edges, placeInRing, segmentsMeet } from '../panel/polygon.ts'
import { type Check, compare } from '../working/check.ts'
import { enteredBy } from '../working/source.ts'
import { unknown, type Worked } from '../working/worked.ts'
import { NO_RULE } from './laid-out/bend-of.ts'
import type { ListedBar } from './listed-bars.ts'
import { gradeOf } from './mats.ts'

/** What the drawing and the code say about where listed bars lie and how they are lapped. */
export function listedChecks(listed: readonly ListedBar[], drawing: Drawing, rules: SteelRules): Check[] {
  return listed.flatMap((bar) => [...edgeCheck(bar, drawing), ...lapCheck(bar, drawing, rules)])
}

/** Told where a bar that is drawn in its place comes nearer an edge or an opening than its cover. */
function edgeCheck({ mark, paths, drawn }: ListedBar, drawing: Drawing): Check[] {
  const cover = drawing.cover?.edge
  if (paths.length === 0) return []
  const rings = [
    { ring: drawing.outline as unknown as Ring, wanted: 'inside' as const },
    ...(drawing.openings ?? []).map(({ outline }) => ({
      ring: outline as unknown as Ring,
      wanted: 'outside' as const,
    })),
  ]
  let least = Number.POSITIVE_INFINITY
  for (const path of paths) {
    for (const body of bodies(path, drawn.diameter)) {
      for (const { ring, wanted } of rings) least = Math.min(least, clearOf(body, ring, wanted))
    }
  }
  return [
    compare({
      id: `edge-cover:${mark}`,
      step: 'cage',
      what: `Concrete between ${mark} and edges and openings`,
      demand: Math.round(least * 1e6) / 1e6,
      limit: cover ?? null,
      unit: 'mm',
      sense: 'at least',
      source: enteredBy('the drawing'),
      missing: cover === undefined ? ['cover.edge: cover at edges and openings, mm'] : [],
      ...(least <= 0 ? { note: 'it leaves the concrete' } : {}),
    }),
  ]
}

/** Straight parts of a bar seen from above: four corners each. */
function bodies(path: readonly Point[], diameter: number): Point[][] {
  const half = diameter / 2
  return path.slice(1).map((b, i): Point[] => {
    const a = path[i] as Point
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    const [nx, ny] = [(-(b[1] - a[1]) / length) * half, ((b[0] - a[0]) / length) * half]
    return [
      [a[0] + nx, a[1] + ny],
      [b[0] + nx, b[1] + ny],
      [b[0] - nx, b[1] - ny],
      [a[0] - nx, a[1] - ny],
    ]
  })
}

/** Least distance to a ring, mm; 0 where the body crosses it or lies on the wrong side. */
function clearOf(body: readonly Point[], ring: Ring, wanted: 'inside' | 'outside'): number {
  if (placeInRing(body[0] as Point, ring) !== wanted) return 0
  let least = Number.POSITIVE_INFINITY
  for (const side of edges(ring)) {
    for (const own of edges(body)) {
      if (segmentsMeet(own, side)) return 0
      least = Math.min(least, distanceToSegment(own[0], side), distanceToSegment(side[0], own))
    }
  }
  return least
}

/** The drawing's lap of a bar longer than the stock against the code, all bars of the line lapped at one section. */
function lapCheck(bar: ListedBar, drawing: Drawing, rules: SteelRules): Check[] {
  const lap = drawing.lap?.length
  if (bar.pieces.length < 2 || lap === undefined) return []
  const code = codeLap(bar, drawing, rules)
  const length = code.known ? code.value.length : null
  return [
    compare({
      id: `lap:${bar.mark}`,
      step: 'cage',
      what: `Lap of ${bar.mark}`,
      demand: lap,
      limit: length,
      unit: 'mm',
      sense: 'at least',
      source: code.known ? code.value.source : NO_RULE,
      working: code.known ? code.working : [],
      missing: code.known ? code.value.gaps : code.gaps,
      note: 'as drawn; all its bars lapped at one section',
    }),
  ]
}

function codeLap({ drawn, paths, count }: ListedBar, drawing: Drawing, rules: SteelRules): Worked<LapLength> {
  const { diameter, grade, layer } = drawn
  const edge = drawing.cover?.edge
  const face = layer === undefined ? undefined : drawing.cover?.[layer]
  if (layer === undefined) return unknown('layer: where the bar lies')
  if (face === undefined) return unknown(`cover.${layer}: cover to the bars, mm`)
  if (edge === undefined) return unknown('cover.edge: cover at edges and openings, mm')
  const steel = gradeOf(rules, grade)
  if (steel === null) return unknown(`grade: ${grade} is no grade of this code family`)
  const cover = Math.min(face, edge)
  const gap = leastGap(paths, count, diameter, cover)
  if (gap === null) return unknown('path: where each of its bars lies')
  const below = layer === 'top' ? drawing.thickness - face - diameter : face
  const bond = bondCondition({ below, depth: drawing.thickness })
  const { strength } = drawing.concrete
  return rules.lap({
    diameter,
    yield: steel.yield,
    concrete: strength,
    cover,
    gap,
    below,
    bond,
    share: 100,
    apart: 0,
  })
}

/** Clear between pairs of lapped bars, mm: twice the cover for one alone, which then governs; null where bars are not drawn in place. */
function leastGap(
  paths: readonly (readonly Point[])[],
  count: number,
  diameter: number,
  cover: number,
): number | null {
  if (paths.length < count) return null
  let least = 2 * cover
  for (const [i, one] of paths.entries()) {
    for (const other of paths.slice(i + 1)) {
      const [a, b] = [one[0] as Point, one.at(-1) as Point]
      const [c, d] = [other[0] as Point, other.at(-1) as Point]
      const apart = Math.min(
        distanceToSegment(a, [c, d]),
        distanceToSegment(b, [c, d]),
        distanceToSegment(c, [a, b]),
        distanceToSegment(d, [a, b]),
      )
      least = Math.min(least, apart - 2 * diameter)
    }
  }
  return least
}
