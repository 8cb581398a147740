import { notAboveZero } from '../../../working/guard.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { BarSize, Tolerance } from '../../steel-rules.ts'
import { BAR_TABLE, usBar } from './bars.ts'

/** Nominal size of a US bar from the table. Example: 16 mm is No. 5 of 15.875 mm, 1.552 kg/m. */
export function barSize({ diameter }: { readonly diameter: number }): Worked<BarSize> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  const bar = usBar(diameter)
  if (bar === null) return unknown(`diameter: no US bar within 0.5 mm of ${diameter} mm`)
  return known(
    {
      diameter: bar.inches * 25.4,
      name: `No. ${bar.number}`,
      area: bar.area,
      massPerMetre: bar.massPerMetre,
    },
    [
      {
        symbol: 'm',
        formula: `row of bar No. ${bar.number}`,
        given: { d: diameter },
        result: bar.massPerMetre,
        unit: 'kg/m',
        source: BAR_TABLE,
        by: 'table',
      },
    ],
  )
}

/** Not less than 94 % of nominal; no upper limit. */
export function massTolerance(): Tolerance {
  return {
    minus: 0.06,
    plus: null,
    source: {
      standard: 'ASTM A615/A615M, edition not noted',
      clause: 'permissible variation of mass',
      status: 'seen',
    },
  }
}
