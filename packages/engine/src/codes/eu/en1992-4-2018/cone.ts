import { belowZero, notAboveZero } from '../../../working/guard.ts'
import { known, type Step, unknown, type Worked } from '../../../working/worked.ts'
import type { BreakoutInput, NarrowInput } from '../../anchor-rules.ts'
import { clause, strengthGaps } from './fck.ts'

const CONE = '7.2.1.4'

/** k1 of cast-in headed fasteners. */
export function coneFactor(cracked: boolean): number {
  return cracked ? 8.9 : 12.7
}

/** The bare arithmetic of one fastener with no edge near: kN. */
export function basicCone(strength: number, depth: number, cracked: boolean): number {
  return (coneFactor(cracked) * Math.sqrt(strength) * depth ** 1.5) / 1000
}

/**
 * Depth that counts where three or more edges are nearer than 1.5 depths: mm, never above the depth.
 *
 * Source: EN 1992-4:2018, 7.2.1.4(8) (from memory). Example: 300 mm deep, edges at 75, 75 and 400 mm: 266.7 mm.
 */
export function narrowDepth({ size, near, spacing }: NarrowInput): Worked<number> {
  const gaps = [
    ...notAboveZero({ size, ...Object.fromEntries(near.map((c, k) => [`near[${k}]`, c])) }),
    ...belowZero({ spacing }),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const counted = near.filter((c) => c <= 1.5 * size)
  if (counted.length < 3) return known(size, [])
  const far = Math.max(...counted)
  const depth = Math.min(size, Math.max(far / 1.5, spacing / 3))
  return known(depth, [
    {
      symbol: "h'ef",
      formula: 'min(hef, max(c / 1.5, s / 3))',
      given: { hef: size, c: far, s: spacing },
      result: depth,
      unit: 'mm',
      source: clause(`${CONE}(8)`),
      note: `${counted.length} edges not farther than 1.5 hef; c is the farthest of them`,
    },
  ])
}

/**
 * Concrete cone failure of one fastener or a group in tension: characteristic, kN.
 *
 * Dense reinforcement is taken (ψre below 1 under 100 mm depth), the push of a fixture left out (ψM 1). Unknown below 12 and above 90 MPa.
 *
 * Source: EN 1992-4:2018, 7.2.1.4 (from memory). Example: 15 MPa, 100 mm, uncracked, no edges: 49.19 kN; cracked 34.47 kN.
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
  const gaps = [...strengthGaps(strength), ...notAboveZero({ depth, area, edge }), ...belowZero({ ex, ey })]
  if (gaps.length > 0) return unknown(...gaps)
  const k1 = coneFactor(cracked)
  const basic = basicCone(strength, depth, cracked)
  const whole = 9 * depth ** 2
  const ψs = Math.min(1, 0.7 + (0.3 * edge) / (1.5 * depth))
  const ψre = Math.min(1, 0.5 + depth / 200)
  const ψec = 1 / ((1 + (2 * ex) / (3 * depth)) * (1 + (2 * ey) / (3 * depth)))
  const result = (area / whole) * ψs * ψre * ψec * basic
  const working: Step[] = [
    {
      symbol: 'N⁰Rk,c',
      formula: 'k1 √fck h^1.5 / 1000',
      given: { k1, fck: strength, h: depth },
      result: basic,
      unit: 'kN',
      source: clause(`${CONE}(2)`),
      note: cracked ? 'cracked' : 'uncracked',
    },
    {
      symbol: 'A⁰c,N',
      formula: '9 h²',
      given: { h: depth },
      result: whole,
      unit: 'mm²',
      source: clause(`${CONE}(3)`),
    },
    {
      symbol: 'ψs,N',
      formula: 'min(1, 0.7 + 0.3 c / (1.5 h))',
      given: { c: edge, h: depth },
      result: ψs,
      unit: '',
      source: clause(`${CONE}(4)`),
    },
    {
      symbol: 'ψre,N',
      formula: 'min(1, 0.5 + h / 200)',
      given: { h: depth },
      result: ψre,
      unit: '',
      source: clause(`${CONE}(5)`),
      note: 'dense reinforcement taken',
    },
    {
      symbol: 'ψec,N',
      formula: '1 / ((1 + 2 ex / (3 h)) (1 + 2 ey / (3 h)))',
      given: { ex, ey, h: depth },
      result: ψec,
      unit: '',
      source: clause(`${CONE}(6)`),
    },
    {
      symbol: 'NRk,c',
      formula: 'A / A0 ψs ψre ψec N0',
      given: { A: area, A0: whole, ψs, ψre, ψec, N0: basic },
      result,
      unit: 'kN',
      source: clause(`${CONE}(1)`),
    },
  ]
  return known(result, working)
}
