import { belowZero, notAboveZero } from '../../working/guard.ts'
import type { Source } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import { HYDRATION_SOURCE, type Hydration } from './hydration.ts'

/** A binder by what is in it: mass shares of the cement, Blaine fineness, and shares of the binder. */
export interface BinderInput {
  readonly c3s: number
  readonly c2s: number
  readonly c3a: number
  readonly c4af: number
  readonly so3: number
  readonly freeLime: number
  readonly magnesia: number
  /** m²/kg */
  readonly blaine: number
  readonly waterBinder: number
  /** Shares of the binder, 0 to 1; the rest is cement. */
  readonly slag: number
  readonly flyAsh: number
  /** Lime (CaO) in the fly ash, share; read only where there is fly ash. */
  readonly flyAshLime: number
}

/** °C that the regressions' equivalent age belongs to; papers differ from 21.1 to 23. */
const REGRESSION_REFERENCE = 23

/**
 * Heat (J/g), end of hydration, τ (h at 23 °C), β and activation energy (J/mol) of a binder, by regression.
 *
 * A first guess where no calorimetry is there: single binders lie ten or twenty percent off, and admixtures that delay are not in it.
 * Unknown where a share is missing. Source: Schindler and Folliard 2005 (from memory).
 */
export function binderHydration(input: BinderInput): Worked<Omit<Hydration, 'binder'>> {
  const { slag, flyAsh, flyAshLime, c2s, so3, freeLime, magnesia, ...positive } = input
  const gaps = [
    ...notAboveZero({ ...positive, so3 }),
    ...belowZero({ slag, flyAsh, flyAshLime, c2s, freeLime, magnesia }),
  ]
  if (gaps.length === 0 && slag + flyAsh > 1) gaps.push('slag and flyAsh: together at most 1')
  if (gaps.length > 0) return unknown(...gaps)
  const { c3s, c3a, c4af, blaine, waterBinder } = positive
  const Hcem = 500 * c3s + 260 * c2s + 866 * c3a + 420 * c4af + 624 * so3 + 1186 * freeLime + 850 * magnesia
  const cement = 1 - slag - flyAsh
  const lime = flyAsh * flyAshLime
  const heat = Hcem * cement + 461 * slag + 1800 * lime
  const ultimate = Math.min((1.031 * waterBinder) / (0.194 + waterBinder) + 0.5 * flyAsh + 0.3 * slag, 1)
  const tau =
    66.78 *
    c3a ** -0.154 *
    c3s ** -0.401 *
    blaine ** -0.804 *
    so3 ** -0.758 *
    Math.exp(2.187 * slag + 9.5 * lime)
  const beta = 181.4 * c3a ** 0.146 * c3s ** 0.227 * blaine ** -0.535 * so3 ** 0.558 * Math.exp(-0.647 * slag)
  const fE = 1 - 1.05 * flyAsh * (1 - flyAshLime / 0.4) + 0.4 * slag
  const activation = 22_100 * fE * c3a ** 0.3 * c4af ** 0.25 * blaine ** 0.35
  const steps: Step[] = [
    step('Hcem', '500 C3S + 260 C2S + 866 C3A + 420 C4AF + 624 SO3 + 1186 CaO + 850 MgO', Hcem, 'J/g', {
      ...{ C3S: c3s, C2S: c2s, C3A: c3a, C4AF: c4af, SO3: so3, CaO: freeLime, MgO: magnesia },
    }),
    step('Hu', 'Hcem pc + 461 ps + 1800 pl', heat, 'J/g', { Hcem, pc: cement, ps: slag, pl: lime }),
    step('αu', 'min(1.031 w / (0.194 + w) + 0.5 pf + 0.3 ps, 1)', ultimate, '', {
      w: waterBinder,
      pf: flyAsh,
      ps: slag,
    }),
    step('τ', '66.78 C3A^−0.154 C3S^−0.401 Bl^−0.804 SO3^−0.758 exp(2.187 ps + 9.5 pl)', tau, 'h', {
      ...{ C3A: c3a, C3S: c3s, Bl: blaine, SO3: so3, ps: slag, pl: lime },
    }),
    step('β', '181.4 C3A^0.146 C3S^0.227 Bl^−0.535 SO3^0.558 exp(−0.647 ps)', beta, '', {
      ...{ C3A: c3a, C3S: c3s, Bl: blaine, SO3: so3, ps: slag },
    }),
    step('fE', '1 − 1.05 pf (1 − CaOf / 0.4) + 0.4 ps', fE, '', { pf: flyAsh, CaOf: flyAshLime, ps: slag }),
    step('Ea', '22100 fE C3A^0.3 C4AF^0.25 Bl^0.35', activation, 'J/mol', {
      fE,
      C3A: c3a,
      C4AF: c4af,
      Bl: blaine,
    }),
  ]
  return known({ heat, ultimate, tau, beta, activation, reference: REGRESSION_REFERENCE }, steps)
}

const REGRESSION: Source = { ...HYDRATION_SOURCE, clause: 'regressions on cement and binder' }

function step(
  symbol: string,
  formula: string,
  result: number,
  unit: string,
  given: Readonly<Record<string, number>>,
): Step {
  return { symbol, formula, given, result, unit, source: REGRESSION }
}
