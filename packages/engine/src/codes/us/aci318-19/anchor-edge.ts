import { belowZero, notAboveZero, notFinite } from '../../../working/guard.ts'
import { known, type Step, unknown, type Worked } from '../../../working/worked.ts'
import type { EdgeInput, NarrowEdgeInput } from '../../anchor-rules.ts'
import { anchorStrength, clause } from './anchor-strength.ts'

/** Largest diameter that the clauses cover, mm: 4 in. */
const MOST_SHAFT = 100

/**
 * Edge distance that counts where the member is narrow and thin: both sides and the thickness below 1.5 edge distances; mm.
 *
 * Source: ACI 318-19, 17.7.2.1.2 (from memory). Example: 200 mm, both sides 150, 150 thick: 100 mm.
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
  const near = (c: number | null): c is number => c !== null && c < 1.5 * edge
  if (!near(left) || !near(right) || thickness >= 1.5 * edge) return known(edge, [])
  const side = Math.max(left, right)
  const counted = Math.min(edge, Math.max(side / 1.5, thickness / 1.5, spacing / 3))
  return known(counted, [
    {
      symbol: "c'a1",
      formula: 'min(ca1, max(ca2 / 1.5, ha / 1.5, s / 3))',
      given: { ca1: edge, ca2: side, ha: thickness, s: spacing },
      result: counted,
      unit: 'mm',
      source: clause('17.7.2.1.2'),
      note: 'narrow and thin',
    },
  ])
}

/** The bare arithmetic of one anchor in a thick member with no side near, cracked concrete: kN. */
export function basicEdge(
  strength: number,
  { shaft, depth, edge }: { readonly shaft: number; readonly depth: number; readonly edge: number },
): number {
  const bearing = Math.min(depth, 8 * shaft)
  const coefficient = Math.min(0.6 * (bearing / shaft) ** 0.2 * Math.sqrt(shaft), 3.7)
  return (coefficient * Math.sqrt(strength) * edge ** 1.5) / 1000
}

/**
 * Concrete breakout of a row of anchors in shear toward an edge: nominal shear in its own direction, kN.
 *
 * `edge` is the distance that counts (`narrowEdge`). Parallel to the edge it is twice as much, with no reduction for a side. Between
 * the two the code is silent: the parts are joined as 1/V² = (cos α/V⊥)² + (sin α/V∥)²; a part that pulls away from the edge is left
 * out. No edge reinforcement is counted. Unknown for shafts above 100 mm.
 *
 * Source: ACI 318-19, 17.7.2 (from memory). Example: 16 mm, 100 deep, 150 from the edge, 150 thick, 20 MPa, uncracked: 32.52 kN.
 */
export function edge(input: EdgeInput): Worked<number> {
  const { strength, cracked, depth, shaft, thickness, area, side, eccentricity, angle } = input
  const gaps = [
    ...notAboveZero({
      strength,
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
  const { f, step } = anchorStrength(strength)
  const c = input.edge
  const bearing = Math.min(depth, 8 * shaft)
  const basic = basicEdge(f, { shaft, depth, edge: c })
  const whole = 4.5 * c ** 2
  const ψec = 1 / (1 + eccentricity / (1.5 * c))
  const ψed = side === null ? 1 : Math.min(1, 0.7 + (0.3 * side) / (1.5 * c))
  const ψc = cracked ? 1 : 1.4
  const ψh = Math.max(1, Math.sqrt((1.5 * c) / thickness))
  const free = (area / whole) * ψec * ψc * ψh * basic
  const across = ψed * free
  const working: Step[] = [
    step,
    {
      symbol: 'le',
      formula: 'min(hef, 8 da)',
      given: { hef: depth, da: shaft },
      result: bearing,
      unit: 'mm',
      source: clause('17.7.2.2.1'),
    },
    {
      symbol: 'Vb',
      formula: 'min(0.6 (le / da)^0.2 √da, 3.7) √f ca1^1.5 / 1000',
      given: { le: bearing, da: shaft, f, ca1: c },
      result: basic,
      unit: 'kN',
      source: clause('17.7.2.2.1'),
    },
    {
      symbol: 'AVco',
      formula: '4.5 ca1²',
      given: { ca1: c },
      result: whole,
      unit: 'mm²',
      source: clause('17.7.2.1.3'),
    },
    {
      symbol: 'ψec,V',
      formula: '1 / (1 + e / (1.5 ca1))',
      given: { e: eccentricity, ca1: c },
      result: ψec,
      unit: '',
      source: clause('17.7.2.3'),
    },
    {
      symbol: 'ψh,V',
      formula: 'max(1, √(1.5 ca1 / ha))',
      given: { ca1: c, ha: thickness },
      result: ψh,
      unit: '',
      source: clause('17.7.2.6'),
    },
    {
      symbol: 'V1',
      formula: 'A / A0 ψec ψc ψh Vb',
      given: { A: area, A0: whole, ψec, ψc, ψh, Vb: basic },
      result: free,
      unit: 'kN',
      source: clause('17.7.2.1'),
      note: `${cracked ? 'cracked, no edge reinforcement' : 'uncracked'} (17.7.2.5)`,
    },
    {
      symbol: 'Vcb',
      formula: side === null ? 'V1' : 'min(1, 0.7 + 0.3 ca2 / (1.5 ca1)) V1',
      given: side === null ? { V1: free } : { ca2: side, ca1: c, V1: free },
      result: across,
      unit: 'kN',
      source: clause('17.7.2.4'),
      note: 'straight to the edge',
    },
  ]
  if (angle === 0) return known(across, working)
  const turned = turnedResistance({ across, along: 2 * free, angle })
  if (turned === null) return unknown(`angle: above -180 and below 180°, found ${angle}`)
  working.push({
    symbol: 'Vcb α',
    formula: angle < 90 ? '1 / √((cos(α°) / V)² + (sin(α°) / (2 V1))²)' : '2 V1 / sin(α°)',
    given: angle < 90 ? { α: angle, V: across, V1: free } : { α: angle, V1: free },
    result: turned,
    unit: 'kN',
    source: clause('17.7.2.1(c)'),
    note:
      angle === 90
        ? 'parallel to the edge'
        : 'at an angle: the two directions joined by their squares, which the code does not say',
  })
  return known(turned, working)
}

/** Resistance in the direction of the force; null where it pulls straight away from the edge. */
function turnedResistance({
  across,
  along,
  angle,
}: {
  readonly across: number
  readonly along: number
  readonly angle: number
}): number | null {
  const turn = (angle * Math.PI) / 180
  const sine = Math.sin(turn)
  if (angle >= 90) return angle < 180 && sine > 0 ? along / sine : null
  return angle > 0 ? 1 / Math.sqrt((Math.cos(turn) / across) ** 2 + (sine / along) ** 2) : null
}
