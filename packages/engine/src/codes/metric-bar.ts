import { notAboveZero } from '../working/guard.ts'
import type { Source } from '../working/source.ts'
import { GEOMETRY } from '../working/source.ts'
import { known, type Worked } from '../working/worked.ts'
import type { BarSize } from './steel-rules.ts'

/** kg/m³ */
export const STEEL_DENSITY = 7850

/** Area, mm², and mass, kg/m, of a round bar of nominal diameter. Example: 16 mm: 201.1 mm², 1.578 kg/m. */
export function metricBar({
  diameter,
  source,
}: {
  readonly diameter: number
  readonly source: Source
}): Worked<BarSize> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  const area = (Math.PI * diameter ** 2) / 4
  const massPerMetre = (area * STEEL_DENSITY) / 1e6
  return known({ diameter, name: `${diameter} mm`, area, massPerMetre }, [
    { symbol: 'A', formula: 'π d² / 4', given: { d: diameter }, result: area, unit: 'mm²', source: GEOMETRY },
    {
      symbol: 'm',
      formula: 'A ρ / 10⁶',
      given: { A: area, ρ: STEEL_DENSITY },
      result: massPerMetre,
      unit: 'kg/m',
      source,
    },
  ])
}
