import type { Drawing } from '../../panel/drawing.ts'
import type { Layer } from '../../panel/drawn-steel.ts'
import { type Check, compare } from '../../working/check.ts'
import { enteredBy, GEOMETRY } from '../../working/source.ts'
import type { Corner, PlacedBar } from '../steel-plan.ts'

/** Bars that a check names. */
const NAMED = 4

/**
 * How near bars come to a face of the panel against its cover; where the drawing gives that face none, only that they lie in the
 * concrete. Starters that stand in the top face are left out: they pass it, and the mould face has a check of theirs. `notLaid`: what keeps bars from being
 * laid out, by field. Null where no bar has a height.
 */
export function faceCover(
  drawing: Drawing,
  placed: readonly PlacedBar[],
  face: Layer,
  notLaid: readonly string[],
): Check | null {
  const cover = drawing.cover?.[face]
  let least = Number.POSITIVE_INFINITY
  const near = new Set<string>()
  for (const bar of placed) {
    if (bar.centreline === null || (bar.use === 'starter' && bar.layer === 'both')) continue
    const [low, high] = extent(bar.centreline, bar.diameter / 2)
    // Rounding of places is no less cover.
    const clear = Math.round((face === 'mould' ? low : drawing.thickness - high) * 1e6) / 1e6
    least = Math.min(least, clear)
    if (clear < (cover ?? 0)) near.add(bar.mark)
  }
  if (!Number.isFinite(least)) return null
  const marks = [...near]
  const unsaid = cover === undefined ? [`cover.${face}: cover to this face, mm`] : []
  return compare({
    id: `face-cover:${face}`,
    step: 'cage',
    what: `Concrete between bars and the ${face} face`,
    demand: least,
    // Without a cover only what sticks out of the face is known to be wrong.
    limit: cover ?? (marks.length > 0 ? 0 : null),
    unit: 'mm',
    sense: 'at least',
    source: cover === undefined ? GEOMETRY : enteredBy('the drawing'),
    // A bar that is too near is told though others are not laid out.
    missing: marks.length > 0 ? [] : [...new Set([...notLaid, ...unsaid])],
    ...(marks.length > 0
      ? { note: `${marks.slice(0, NAMED).join(', ')}${marks.length > NAMED ? ' and more' : ''} too near` }
      : {}),
  })
}

/** Lowest and highest point of a bar, mm: half a bar more where it lies flat, none where it ends upright. */
function extent(centreline: readonly Corner[], radius: number): readonly [low: number, high: number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const [i, to] of centreline.slice(1).entries()) {
    const from = centreline[i] as Corner
    const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2])
    const rise = length > 0 ? (to[2] - from[2]) / length : 0
    const half = radius * Math.sqrt(Math.max(0, 1 - rise * rise))
    low = Math.min(low, from[2] - half, to[2] - half)
    high = Math.max(high, from[2] + half, to[2] + half)
  }
  return [low, high]
}
