import type { DrawnTrimmers, Layer } from '../../panel/drawn-steel.ts'
import type { Point } from '../../panel/point.ts'
import type { Corner } from '../steel-plan.ts'
import type { EdgeRun } from './edge-runs.ts'
import { depthsFor, heightAt, type LayContext, ROUNDING } from './lay-context.ts'
import { emptySpace, type Solid, type Space, solidsOf } from './space.ts'
import { behindWeb } from './webs.ts'
import { partsWithin } from './within.ts'

/** A straight bar in plan with what it reaches past the corners at its ends, mm; an end at the edge of the panel has none. */
export interface Trimmer {
  readonly from: Point
  readonly to: Point
  readonly past: readonly number[]
}

export interface PlacedTrimmer extends Trimmer {
  /** Of its centreline above the mould face, mm; null without cover. */
  readonly height: number | null
}

export interface TrimmersInput {
  readonly drawn: DrawnTrimmers
  /** Sides of openings. */
  readonly sides: readonly EdgeRun[]
  readonly layer: Layer
  /** Between trimmers of one side, centre to centre, mm. */
  readonly apart: number
  readonly context: LayContext
}

/** Trimmers move away from their opening by at most this to lie clear of other bars or in contact with them, mm. Common practice, no source. */
const ASIDE = 40

/**
 * Trimmers of one layer beside sides of openings, those with no room left out. The bars of a direction lie at the first depth at which each side
 * has a place where they run into nothing and are clear of the bars beside them or in contact; where no depth has, at the first at which they
 * run into nothing, else each side on its own. They are added to the space.
 */
export function trimmerPlaces(input: TrimmersInput): PlacedTrimmer[] {
  return directionsOf(input.sides).flatMap((sides) => placesOf(sides, input))
}

/** Sides that run the same way, either way round. */
function directionsOf(sides: readonly EdgeRun[]): EdgeRun[][] {
  const directions = new Map<string, EdgeRun[]>()
  for (const side of sides) {
    const flip = side.along[0] < -1e-9 || (Math.abs(side.along[0]) <= 1e-9 && side.along[1] < 0) ? -1 : 1
    const name = side.along.map((part) => (part * flip).toFixed(6)).join(' ')
    directions.set(name, [...(directions.get(name) ?? []), side])
  }
  return [...directions.values()]
}

/** The trimmers of a side at one depth. */
interface Laid {
  readonly bars: readonly Trimmer[]
  readonly height: number
  readonly depth: number
  readonly solids: readonly Solid[]
  /** Runs into nothing. */
  readonly isFree: boolean
  /** And is clear of the bars beside it or in contact. */
  readonly isClear: boolean
}

function placesOf(sides: readonly EdgeRun[], input: TrimmersInput): PlacedTrimmer[] {
  const { drawn, layer, apart, context } = input
  const { space, stacked } = context
  const [first] = sides
  const depths = first === undefined ? null : depthsFor(context, layer, first.along, drawn.diameter)
  if (depths === null)
    return sides.flatMap((side) =>
      besideSide(drawn, side, apart, context).map((bar) => ({ ...bar, height: null })),
    )
  const levels: Laid[][] = []
  let chosen: readonly Laid[] | null = null
  for (const depth of depths) {
    const level = atDepth(sides, depth, input)
    if (level.every(({ isClear }) => isClear)) {
      chosen = level
      break
    }
    levels.push(level)
  }
  chosen ??= levels.find((level) => level.every(({ isFree }) => isFree)) ?? eachAlone(sides, levels)
  for (const { solids, depth, bars } of chosen) {
    space.add(solids)
    if (bars.length > 0 && !stacked[layer].includes(depth + drawn.diameter))
      stacked[layer].push(depth + drawn.diameter)
  }
  return chosen.flatMap(({ bars, height }) => bars.map((bar) => ({ ...bar, height })))
}

/** Where no depth has room for all: each side at the first that has room for it, and where none has over everything. */
function eachAlone(sides: readonly EdgeRun[], levels: readonly (readonly Laid[])[]): Laid[] {
  return sides.map((_, i) => {
    const own = levels.map((level) => level[i] as Laid)
    return own.find(({ isFree }) => isFree) ?? (own.at(-1) as Laid)
  })
}

/** All sides at one depth, one after the other, so that those of two openings near each other keep clear too. */
function atDepth(sides: readonly EdgeRun[], depth: number, input: TrimmersInput): Laid[] {
  const before = emptySpace(input.context.clearBeside)
  return sides.map((side) => {
    const laid = besideAt(side, depth, [input.context.space, before], input)
    before.add(laid.solids)
    return laid
  })
}

/** The trimmers of a side at one depth, moved away from the opening as little as they must; where no move helps they stay. */
function besideAt(side: EdgeRun, depth: number, spaces: readonly Space[], input: TrimmersInput): Laid {
  const { drawn, apart, context } = input
  const at = (move: number): Omit<Laid, 'isClear'> => {
    const bars = besideSide(drawn, side, apart, context, move)
    const height = heightAt(context.panel.drawing.thickness, input.layer, depth, drawn.diameter)
    const solids = bars.flatMap((bar) => solidsOfBar(bar, height, input))
    return { bars, height, depth, solids, isFree: spaces.every((space) => space.clash(solids) === null) }
  }
  const own = at(0)
  const way: Corner = [side.inward[0], side.inward[1], 0]
  const crowding = spaces.map((space) => space.crowding(own.solids, way, ASIDE))
  for (let move = 0; move <= ASIDE; move += 1) {
    if (crowding.some((isCrowded) => isCrowded(move))) continue
    const laid = move === 0 ? own : at(move)
    if (laid.isFree && laid.bars.length === own.bars.length) return { ...laid, isClear: true }
  }
  return { ...own, isClear: false }
}

function solidsOfBar({ from, to }: Trimmer, height: number, { drawn, layer }: TrimmersInput): Solid[] {
  const id = `trimmer ${layer} ${from.join()} ${to.join()} ${drawn.diameter}`
  const centreline: Corner[] = [
    [...from, height],
    [...to, height],
  ]
  return solidsOf({ id, centreline, diameter: drawn.diameter })
}

/** Trimmers of one side of an opening in plan, so far away from where they would lie against it; those with no room are left out. */
export function besideSide(
  drawn: DrawnTrimmers,
  side: EdgeRun,
  apart: number,
  context: LayContext,
  move = 0,
): Trimmer[] {
  const { diameter, beyond, count } = drawn
  const { from, along, inward, length } = side
  const room = context.roomFor(diameter)
  const layers: readonly Layer[] = drawn.layer === 'both' ? ['mould', 'top'] : [drawn.layer]
  // Trimmers may come to lie over what crosses them: they stand where the legs run straight.
  const behind = behindWeb({ web: context.webs.get(side), diameter, over: layers })
  return Array.from({ length: count }, (_, k) => k).flatMap((k): Trimmer[] => {
    const into = context.edgeCover + behind + diameter / 2 + k * apart + move
    const at = (place: number): Point => [
      from[0] + along[0] * place + inward[0] * into,
      from[1] + along[1] * place + inward[1] * into,
    ]
    // At the edge of the panel there is no corner to reach past.
    const [low, high] = [side.inner[0] ? -beyond : 0, side.inner[1] ? length + beyond : length]
    const middle = (length / 2 - low) / (high - low)
    const part = partsWithin(room, at(low), at(high)).find(([a, b]) => a <= middle && b >= middle)
    if (part === undefined) return []
    const start = part[0] > 0 ? low + part[0] * (high - low) + ROUNDING : low
    const end = part[1] < 1 ? low + part[1] * (high - low) - ROUNDING : high
    return [
      {
        from: at(start),
        to: at(end),
        past: [...(side.inner[0] ? [-start] : []), ...(side.inner[1] ? [end - length] : [])],
      },
    ]
  })
}
