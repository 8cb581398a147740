import type { FaceAgent, PropRule, PropSide } from '@castwright/engine/mould'
import { ceilTo, shown } from '@castwright/engine/working'

/** What sets the spacing of a side, as screen and sheet say it. */
export const PROP_RULE_WORDS: Readonly<Record<PropRule, string>> = {
  ends: 'its two ends are enough',
  bow: 'set by the bow of the rail',
  bending: 'set by bending of the rail',
  prop: 'set by the push on a prop',
  brace: 'set by the force in a brace',
  longest: 'set by the longest spacing',
}

export interface AlikeSides {
  readonly numbers: readonly number[]
  /** The first of them. */
  readonly side: PropSide
}

/** Sides of the same length have the same props: one row for all of them. */
export function alikeSides(sides: readonly PropSide[]): AlikeSides[] {
  const found = new Map<string, { numbers: number[]; side: PropSide }>()
  for (const side of sides) {
    const key = `${side.spans} ${side.spacing.toFixed(1)}`
    const alike = found.get(key)
    if (alike === undefined) found.set(key, { numbers: [side.side], side })
    else alike.numbers.push(side.side)
  }
  return [...found.values()]
}

/** Example: `Steel (beds 1, 2): thin film R, 0.64 L, a film of 25 µm, by its sheet. Let it dry 15 minutes.` */
export function agentText({
  face,
  beds,
  agent,
  rate,
  litres,
  film,
  dryingMinutes,
  caution,
}: FaceAgent): string {
  const where = `${face.charAt(0).toUpperCase()}${face.slice(1)} (bed${beds.length === 1 ? '' : 's'} ${beds.join(', ')})`
  if (rate === null || litres === null || film === null)
    return `${where}: not known; no product of the yard has a rate that suits it.`
  const amount = `${ceilTo(litres, 0.01).toFixed(2)} L at ${shown(rate, 'm²/L')}, a film of ${shown(film, 'µm')}`
  const from = agent === null ? 'assumed, common practice; the product’s sheet outranks it' : 'by its sheet'
  return [
    `${where}: ${agent ?? 'reactive agent'}, ${amount}, ${from}.`,
    dryingMinutes === null || dryingMinutes === 0 ? '' : `Let it dry ${shown(dryingMinutes)} minutes.`,
    caution ?? '',
  ]
    .filter((part) => part !== '')
    .join(' ')
}
