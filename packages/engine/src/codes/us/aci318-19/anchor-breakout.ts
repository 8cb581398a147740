import { belowZero, notAboveZero } from '../../../working/guard.ts'
import { known, type Step, unknown, type Worked } from '../../../working/worked.ts'
import type { BreakoutInput, NarrowInput } from '../../anchor-rules.ts'
import { anchorStrength, clause } from './anchor-strength.ts'

const BASIC = clause('17.6.2.2.1')
const DEEP = clause('17.6.2.2.3')
const NARROW = clause('17.6.2.1.2')

/** Depths for which the code has the form with the power 5/3, mm: 11 and 25 in. */
const DEEP_FROM = 280
const DEEP_TO = 635

/** The bare arithmetic of one anchor with no edge near, cracked concrete: kN. */
export function basicBreakout(strength: number, depth: number): number {
  return depth >= DEEP_FROM && depth <= DEEP_TO
    ? (3.9 * Math.sqrt(strength) * depth ** (5 / 3)) / 1000
    : (10 * Math.sqrt(strength) * depth ** 1.5) / 1000
}

/**
 * Depth that counts where three or more edges are nearer than 1.5 depths: mm, never above the depth.
 *
 * Source: ACI 318-19, 17.6.2.1.2 (from memory). Example: 300 mm deep, edges at 75, 75 and 400 mm: 266.7 mm.
 */
export function narrowDepth({ size, near, spacing }: NarrowInput): Worked<number> {
  const gaps = [
    ...notAboveZero({ size, ...Object.fromEntries(near.map((c, k) => [`near[${k}]`, c])) }),
    ...belowZero({ spacing }),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const counted = near.filter((c) => c < 1.5 * size)
  if (counted.length < 3) return known(size, [])
  const far = Math.max(...counted)
  const depth = Math.min(size, Math.max(far / 1.5, spacing / 3))
  return known(depth, [
    {
      symbol: "h'ef",
      formula: 'min(hef, max(ca / 1.5, s / 3))',
      given: { hef: size, ca: far, s: spacing },
      result: depth,
      unit: 'mm',
      source: NARROW,
      note: `${counted.length} edges nearer than 1.5 hef; ca is the farthest of them`,
    },
  ])
}

/**
 * Concrete breakout of one anchor or a group in tension: nominal, kN.
 *
 * Cast-in, ψcp 1; `depth` is the effective one (`narrowDepth`). Leaves out lightweight concrete and anchor reinforcement.
 *
 * Source: ACI 318-19, 17.6.2 (from memory). Example: 15 MPa, 100 mm, uncracked, no edges: 38.73 · 1.25 = 48.41 kN.
 */
export function breakout({
  strength,
  cracked,
  depth,
  area,
  edge,
  eccentricity,
}: BreakoutInput): Worked<number> {
  const [ex, ey] = eccentricity
  const gaps = [...notAboveZero({ strength, depth, area, edge }), ...belowZero({ ex, ey })]
  if (gaps.length > 0) return unknown(...gaps)
  const { f, step } = anchorStrength(strength)
  const deep = depth >= DEEP_FROM && depth <= DEEP_TO
  const basic = basicBreakout(f, depth)
  const whole = 9 * depth ** 2
  const ψec = 1 / ((1 + ex / (1.5 * depth)) * (1 + ey / (1.5 * depth)))
  const ψed = Math.min(1, 0.7 + (0.3 * edge) / (1.5 * depth))
  const ψc = cracked ? 1 : 1.25
  const result = (area / whole) * ψec * ψed * ψc * basic
  const working: Step[] = [
    step,
    {
      symbol: 'Nb',
      formula: deep ? '3.9 √f h^(5 / 3) / 1000' : '10 √f h^1.5 / 1000',
      given: { f, h: depth },
      result: basic,
      unit: 'kN',
      source: deep ? DEEP : BASIC,
    },
    {
      symbol: 'ANco',
      formula: '9 h²',
      given: { h: depth },
      result: whole,
      unit: 'mm²',
      source: clause('17.6.2.1.4'),
    },
    {
      symbol: 'ψec,N',
      formula: '1 / ((1 + ex / (1.5 h)) (1 + ey / (1.5 h)))',
      given: { ex, ey, h: depth },
      result: ψec,
      unit: '',
      source: clause('17.6.2.3'),
    },
    {
      symbol: 'ψed,N',
      formula: 'min(1, 0.7 + 0.3 ca / (1.5 h))',
      given: { ca: edge, h: depth },
      result: ψed,
      unit: '',
      source: clause('17.6.2.4'),
    },
    {
      symbol: 'Ncb',
      formula: 'A / A0 ψec ψed ψc Nb',
      given: { A: area, A0: whole, ψec, ψed, ψc, Nb: basic },
      result,
      unit: 'kN',
      source: clause('17.6.2.1'),
      note: `${cracked ? 'cracked' : 'uncracked'} concrete (17.6.2.5), cast in (17.6.2.6)`,
    },
  ]
  return known(result, working)
}
