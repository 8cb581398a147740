import type { AnchorRules } from '../../codes/anchor-rules.ts'
import { distance } from '../../panel/point.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'
import type { LaidGroup, ModeFound } from './anchor-group.ts'
import { coneCase, leastOf } from './breakout-mode.ts'
import { coneAngles, nearestEdge } from './cone-area.ts'
import { partsOf } from './parts.ts'

/** Splitting of the whole group, null where edges and spacing keep it off. Unknown without the product's distances. */
export function splittingMode(rules: AnchorRules, group: LaidGroup): Worked<ModeFound> | null {
  const { splitting: product, head, region, at } = group
  if (product === null) {
    return unknown(
      'splitting.edge, splitting.spacing: what the product asks so that it does not split the concrete',
    )
  }
  const [alone, together] = rules.splittingFar
  const far = nearestEdge(region, at) >= (at.length > 1 ? together : alone) * product.edge
  if (rules.splitting === null) {
    const apart = at.every((a, index) => at.slice(index + 1).every((b) => distance(a, b) >= product.spacing))
    return far && apart
      ? null
      : unknown(
          `${rules.standard} gives distances and no resistance, and the product's distances are not kept`,
        )
  }
  if (far) return null
  if (head === null) return unknown('head: bearing area of the head')
  const { splitting } = rules
  const reach = product.spacing / 2
  const cases = partsOf(at, () => product.spacing).flatMap((part) => {
    const pulling = part.filter((index) => (group.shares[index] ?? 0) > 0)
    if (pulling.length === 0) return []
    const points = pulling.map((index) => at[index] as LaidGroup['at'][number])
    return coneAngles({ region, at: points, reach }).map((angle) =>
      known(coneCase(group, pulling, { angle, reach, depth: group.depth, working: [] }), []),
    )
  })
  return leastOf(cases, (one) => splitting({ ...group, ...one, head, product }), 'splitting')
}
