import { notAboveZero } from '../../working/guard.ts'
import { GEOMETRY, type Source } from '../../working/source.ts'
import { known, type Step, type Worked } from '../../working/worked.ts'

const TABLE: Source = { standard: 'BS 8666:2005', clause: 'Table 3', status: 'seen' }

export interface CurvedLength {
  /** Shape code of BS 8666 and of EN ISO 3766. */
  readonly code: '67' | '75' | '77'
  /** Along the centreline, mm. */
  readonly length: number
  /** By the standard's own formula, mm. */
  readonly formulaLength: number
  /** The formula's length less the true one, mm. */
  readonly difference: number
}

/** A bar bent to one arc: its length is its own dimension A, mm. */
export function arcShape({ length }: { readonly length: number }): Worked<CurvedLength> {
  const gaps = notAboveZero({ length })
  if (gaps.length > 0) return { known: false, gaps }
  return known({ code: '67', length, formulaLength: length, difference: 0 }, [
    { symbol: 'L', formula: 'A', given: { A: length }, result: length, unit: 'mm', source: TABLE },
  ])
}

/**
 * A ring whose ends lap, mm: the ends lie side by side, so the lap is measured along the bar.
 *
 * Unknown where the ring is no wider than its bar. Example: 12 mm, 600 outside, lap 300: 2147.3 mm.
 */
export function ringShape({
  diameter,
  outside,
  lap,
}: {
  readonly diameter: number
  /** Outside diameter, mm. */
  readonly outside: number
  /** mm */
  readonly lap: number
}): Worked<CurvedLength> {
  const gaps = [...notAboveZero({ diameter, outside, lap }), ...tooNarrow(diameter, outside)]
  if (gaps.length > 0) return { known: false, gaps }
  const length = Math.PI * (outside - diameter) + lap
  return known({ code: '75', length, formulaLength: length, difference: 0 }, [
    {
      symbol: 'L',
      formula: 'π (A − d) + B',
      given: { A: outside, B: lap, d: diameter },
      result: length,
      unit: 'mm',
      source: TABLE,
    },
  ])
}

/**
 * A helix of full turns, mm. The standard leaves the pitch out up to a fifth of the outside diameter.
 *
 * Unknown where it is no wider than its bar. Example: 12 mm, 600 outside, 10 turns at 150 mm: 18 533.4 mm.
 */
export function helixShape({
  diameter,
  outside,
  turns,
  pitch,
}: {
  readonly diameter: number
  /** Outside diameter, mm. */
  readonly outside: number
  /** Full turns, not necessarily whole. */
  readonly turns: number
  /** Rise of a turn, mm. */
  readonly pitch: number
}): Worked<CurvedLength> {
  const gaps = [...notAboveZero({ diameter, outside, turns, pitch }), ...tooNarrow(diameter, outside)]
  if (gaps.length > 0) return { known: false, gaps }
  const around = Math.PI * (outside - diameter)
  const length = turns * Math.hypot(around, pitch)
  const steep = pitch > outside / 5
  const formulaLength = steep ? length : turns * around
  const given = { A: outside, B: pitch, C: turns, d: diameter }
  const working: Step[] = [
    {
      symbol: 'L_true',
      formula: 'C √((π (A − d))² + B²)',
      given,
      result: length,
      unit: 'mm',
      source: GEOMETRY,
    },
    {
      symbol: 'L',
      formula: steep ? 'C √((π (A − d))² + B²)' : 'C π (A − d)',
      given,
      result: formulaLength,
      unit: 'mm',
      source: TABLE,
      note: steep ? 'pitch over A / 5' : 'pitch up to A / 5',
    },
  ]
  return known({ code: '77', length, formulaLength, difference: formulaLength - length }, working)
}

function tooNarrow(diameter: number, outside: number): string[] {
  return outside > 2 * diameter ? [] : ['outside: wider than two bars']
}
