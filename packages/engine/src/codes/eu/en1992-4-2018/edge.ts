import { belowZero, notAboveZero, notFinite } from '../../../working/guard.ts'
import { known, type Step, unknown, type Worked } from '../../../working/worked.ts'
import type { EdgeInput, NarrowEdgeInput } from '../../anchor-rules.ts'
import { clause, strengthGaps } from './fck.ts'

const EDGE = '7.2.2.5'

/** Largest diameter that the clause covers, mm. */
const MOST_SHAFT = 60

/**
 * Edge distance that counts where the member is narrow and thin: both sides and the thickness not above 1.5 edge distances; mm.
 *
 * Source: EN 1992-4:2018, 7.2.2.5 (from memory). Example: 200 mm, both sides 150, 150 thick: 100 mm.
 */
export function narrowEdge({ edge, sides, thickness, spacing }: NarrowEdgeInput): Worked<number> {
  const [left, right] = sides
  const gaps = [
    ...notAboveZero({
      edge,
      thickness,
      ...(left === null ? {} : { left }),
      ...(right === null ? {} : { right }),
    }),
    ...belowZero({ spacing }),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const near = (c: number | null): c is number => c !== null && c <= 1.5 * edge
  if (!near(left) || !near(right) || thickness > 1.5 * edge) return known(edge, [])
  const side = Math.max(left, right)
  const counted = Math.min(edge, Math.max(side / 1.5, thickness / 1.5, spacing / 3))
  return known(counted, [
    {
      symbol: "c'1",
      formula: 'min(c1, max(c2 / 1.5, h / 1.5, s2 / 3))',
      given: { c1: edge, c2: side, h: thickness, s2: spacing },
      result: counted,
      unit: 'mm',
      source: clause(EDGE),
      note: 'narrow and thin',
    },
  ])
}

/**
 * Concrete edge failure of a row of fasteners in shear: characteristic shear in its own direction, kN.
 *
 * `edge` is the distance that counts (`narrowEdge`). A part that pulls away from the edge is left out; then the part along it counts
 * alone. No edge reinforcement is counted (ψre 1). Unknown for shafts above 60 mm and outside 12 to 90 MPa.
 *
 * Source: EN 1992-4:2018, 7.2.2.5 (from memory). Example: 16 mm, 100 deep, 150 from the edge, 150 thick, 20 MPa, uncracked: 27.10 kN.
 */
export function edge(input: EdgeInput): Worked<number> {
  const { strength, cracked, depth, shaft, thickness, area, side, eccentricity, angle } = input
  const gaps = [
    ...strengthGaps(strength),
    ...notAboveZero({
      edge: input.edge,
      depth,
      shaft,
      thickness,
      area,
      ...(side === null ? {} : { side }),
    }),
    ...belowZero({ eccentricity }),
    ...notFinite({ angle }),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  if (shaft > MOST_SHAFT) return unknown(`shaft: at most ${MOST_SHAFT} mm for this clause, found ${shaft}`)
  if (!(angle >= 0 && angle < 180)) return unknown(`angle: from 0 to below 180°, found ${angle}`)
  const c = input.edge
  const k9 = cracked ? 1.7 : 2.4
  const thin = shaft <= 24
  const length = Math.min(depth, thin ? 12 * shaft : Math.max(8 * shaft, 300))
  const α = 0.1 * Math.sqrt(length / c)
  const β = 0.1 * (shaft / c) ** 0.2
  const basic = (k9 * shaft ** α * length ** β * Math.sqrt(strength) * c ** 1.5) / 1000
  const whole = 4.5 * c ** 2
  const ψs = side === null ? 1 : Math.min(1, 0.7 + (0.3 * side) / (1.5 * c))
  const ψh = Math.max(1, Math.sqrt((1.5 * c) / thickness))
  const ψec = 1 / (1 + (2 * eccentricity) / (3 * c))
  const turn = (angle * Math.PI) / 180
  const ψα =
    angle > 90 ? 2 / Math.sin(turn) : Math.sqrt(1 / (Math.cos(turn) ** 2 + (0.5 * Math.sin(turn)) ** 2))
  const result = (area / whole) * ψs * ψh * ψec * ψα * basic
  const working: Step[] = [
    {
      symbol: 'lf',
      formula: thin ? 'min(hef, 12 d)' : 'min(hef, max(8 d, 300))',
      given: { hef: depth, d: shaft },
      result: length,
      unit: 'mm',
      source: clause(EDGE),
    },
    {
      symbol: 'α',
      formula: '0.1 √(lf / c1)',
      given: { lf: length, c1: c },
      result: α,
      unit: '',
      source: clause(EDGE),
    },
    {
      symbol: 'β',
      formula: '0.1 (d / c1)^0.2',
      given: { d: shaft, c1: c },
      result: β,
      unit: '',
      source: clause(EDGE),
    },
    {
      symbol: 'V⁰Rk,c',
      formula: 'k9 d^α lf^β √fck c1^1.5 / 1000',
      given: { k9, d: shaft, α, lf: length, β, fck: strength, c1: c },
      result: basic,
      unit: 'kN',
      source: clause(EDGE),
      note: cracked ? 'cracked' : 'uncracked',
    },
    {
      symbol: 'A⁰c,V',
      formula: '4.5 c1²',
      given: { c1: c },
      result: whole,
      unit: 'mm²',
      source: clause(EDGE),
    },
    {
      symbol: 'ψs,V',
      formula: side === null ? '1' : 'min(1, 0.7 + 0.3 c2 / (1.5 c1))',
      given: side === null ? {} : { c2: side, c1: c },
      result: ψs,
      unit: '',
      source: clause(EDGE),
    },
    {
      symbol: 'ψh,V',
      formula: 'max(1, √(1.5 c1 / h))',
      given: { c1: c, h: thickness },
      result: ψh,
      unit: '',
      source: clause(EDGE),
    },
    {
      symbol: 'ψec,V',
      formula: '1 / (1 + 2 e / (3 c1))',
      given: { e: eccentricity, c1: c },
      result: ψec,
      unit: '',
      source: clause(EDGE),
    },
    {
      symbol: 'ψα,V',
      formula: angle > 90 ? '2 / sin(α°)' : '√(1 / (cos(α°)² + (0.5 sin(α°))²))',
      given: { α: angle },
      result: ψα,
      unit: '',
      source: clause(EDGE),
      note: angle > 90 ? 'pulls away from the edge: only the part along it counts' : '',
    },
    {
      symbol: 'VRk,c',
      formula: 'A / A0 ψs ψh ψec ψα V0',
      given: { A: area, A0: whole, ψs, ψh, ψec, ψα, V0: basic },
      result,
      unit: 'kN',
      source: clause(EDGE),
      note: 'no edge reinforcement',
    },
  ]
  return known(result, working)
}
