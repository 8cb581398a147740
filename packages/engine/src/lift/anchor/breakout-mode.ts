import type { AnchorRules } from '../../codes/anchor-rules.ts'
import { GEOMETRY, STATICS } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import type { LaidGroup, ModeFound } from './anchor-group.ts'
import { coneAngles, coneArea, nearestEdge, nearSides } from './cone-area.ts'
import { dot, frameAt, fromTo, middle } from './frame.ts'
import { type Part, partsOf, widestStep } from './parts.ts'

/** One part of a group in one frame of its squares. */
export interface ConeCase {
  readonly part: Part
  /** Part of the action that the part carries. */
  readonly share: number
  readonly angle: number
  readonly area: number
  readonly edge: number
  readonly eccentricity: readonly [number, number]
  /** Depth that counts, with its working. */
  readonly depth: number
  readonly working: readonly Step[]
}

/**
 * Breakout of the whole group: of each part of it (inserts within three depths of each other) and each way that its squares may lie, the
 * least for what the part carries. In parts, the nominal is the whole load at which the first of them fails.
 */
export function breakoutMode(rules: AnchorRules, group: LaidGroup): Worked<ModeFound> {
  const cases = partsOf(group.at, () => 3 * group.depth).flatMap((part) => {
    const pulling = part.filter((index) => (group.shares[index] ?? 0) > 0)
    return pulling.length === 0 ? [] : narrowCases(rules, group, pulling)
  })
  return leastOf(cases, (one) => rules.breakout({ ...group, ...one }), 'breakout')
}

function narrowCases(rules: AnchorRules, group: LaidGroup, part: Part): Worked<ConeCase>[] {
  const at = part.map((index) => group.at[index] as LaidGroup['at'][number])
  const reach = 1.5 * group.depth
  return coneAngles({ region: group.region, at, reach }).map((angle) => {
    const near = nearSides({ region: group.region, at, reach, angle })
    const narrow = rules.narrowDepth({ size: group.depth, near, spacing: widestStep(at) })
    if (!narrow.known) return narrow
    const depth = narrow.value
    return known(coneCase(group, part, { angle, reach: 1.5 * depth, depth, working: narrow.working }), [])
  })
}

/** The figures of a part's cones with squares of `reach` either way. */
export function coneCase(
  group: LaidGroup,
  part: Part,
  frame: {
    readonly angle: number
    readonly reach: number
    readonly depth: number
    readonly working: readonly Step[]
  },
): ConeCase {
  const { angle, reach, depth, working } = frame
  const at = part.map((index) => group.at[index] as LaidGroup['at'][number])
  const shares = part.map((index) => group.shares[index] ?? 0)
  const area = coneArea({ region: group.region, at, reach, angle })
  const { along, across } = frameAt(angle)
  const off = fromTo(
    middle(
      at,
      at.map(() => 1),
    ),
    middle(at, shares),
  )
  return {
    part,
    share: shares.reduce((sum, share) => sum + share, 0),
    angle,
    area,
    edge: nearestEdge(group.region, at),
    eccentricity: [Math.abs(dot(off, along)), Math.abs(dot(off, across))],
    depth,
    working: [
      ...working,
      {
        symbol: 'A',
        formula: 'squares of all inserts of the part, joined, as far as there is concrete',
        given: {
          inserts: part.map((index) => index + 1).join(', '),
          'half a square': reach,
          'turned, degrees': (angle * 180) / Math.PI,
        },
        result: area,
        unit: 'mm²',
        source: GEOMETRY,
        by: 'search',
      },
    ],
  }
}

/** Of all cases the one that fails first, as a resistance of the whole group. */
export function leastOf(
  cases: readonly Worked<ConeCase>[],
  resistance: (one: ConeCase) => Worked<number>,
  mode: string,
): Worked<ModeFound> {
  let least: { readonly nominal: number; readonly working: readonly Step[] } | null = null
  for (const one of cases) {
    if (!one.known) return one
    const found = resistance(one.value)
    if (!found.known) return found
    const nominal = found.value / one.value.share
    if (least === null || nominal < least.nominal) {
      least = {
        nominal,
        working: [...one.value.working, ...found.working, ...wholeStep(found.value, one.value)],
      }
    }
  }
  return least === null
    ? unknown(`${mode}: no insert carries load`)
    : known({ nominal: least.nominal, share: 1 }, least.working)
}

function wholeStep(value: number, { share, part }: ConeCase): Step[] {
  if (share >= 1 - 1e-12) return []
  return [
    {
      symbol: 'N of all',
      formula: 'Np / p',
      given: { Np: value, p: share },
      result: value / share,
      unit: 'kN',
      source: STATICS,
      note: `the part of inserts ${part.map((index) => index + 1).join(', ')} carries p of the load and fails first`,
    },
  ]
}
