import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import { type HookAnchorageInput, hookGaps } from '../../hook-anchorage.ts'
import { usBar } from '../astm/bars.ts'
import { RANGE } from './lap.ts'

const HOOK: Source = { standard: 'ACI 318-19', clause: '25.4.3.1', status: 'from memory' }
const FACTORS: Source = { standard: 'ACI 318-19', clause: 'Table 25.4.3.2', status: 'from memory' }

/** 1 psi in MPa. */
const PSI = 0.006894757293168
const INCH = 25.4

/**
 * Development of a standard hook in tension, from the critical section to the outside of the hook, mm: uncoated bar, normal-weight concrete, no
 * credit for ties; worked in inches and psi as the code has it.
 *
 * ψr is 1 where bars stand 6 db apart, middle to middle, ψo where the side cover is 6 db. Unknown for diameters that are no US bar and for No. 14
 * and 18. Example: No. 5, 5000 psi, grade 60, close and at an edge: 361 mm.
 */
export function hookAnchorage(input: HookAnchorageInput): Worked<number> {
  const gaps = hookGaps(input, RANGE)
  if (gaps.length > 0) return { known: false, gaps }
  const bar = usBar(input.diameter)
  if (bar === null) return unknown(`diameter: no US bar within 0.5 mm of ${input.diameter} mm`)
  if (bar.number > 11) return unknown(`diameter: hooks of No. ${bar.number} are left to special rules`)
  const db = bar.inches
  const fy = input.yield / PSI
  const fc = input.concrete / PSI
  const root = Math.min(Math.sqrt(fc), 100)
  const ψr = input.gap / INCH + db >= 6 * db ? 1 : 1.6
  const ψo = input.sideCover / INCH >= 6 * db ? 1 : 1.25
  const ψc = fc < 6000 ? fc / 15_000 + 0.6 : 1
  const raw = ((fy * ψr * ψo * ψc) / (55 * root)) * db ** 1.5
  const length = Math.max(raw, 8 * db, 6) * INCH
  return known(length, [
    {
      symbol: '√fc',
      formula: 'min(√(fcMPa / psi), 100)',
      given: { fcMPa: input.concrete, psi: PSI },
      result: root,
      unit: 'psi^½',
      source: HOOK,
    },
    {
      symbol: 'fy',
      formula: 'fyMPa / psi',
      given: { fyMPa: input.yield, psi: PSI },
      result: fy,
      unit: 'psi',
      source: HOOK,
    },
    {
      symbol: 'ψ',
      formula: 'ψr · ψo · ψc',
      given: { ψr, ψo, ψc },
      result: ψr * ψo * ψc,
      unit: '',
      source: FACTORS,
      note: 'uncoated; ψr by spacing, ψo by side cover, ψc by concrete strength',
    },
    {
      symbol: 'ldh',
      formula: 'max(fy · ψ · db^1.5 / (55 · root), 8 · db, 6) · 25.4',
      given: { fy, ψ: ψr * ψo * ψc, db, root },
      result: length,
      unit: 'mm',
      source: HOOK,
    },
  ])
}
