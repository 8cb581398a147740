import type { CodeFamily } from '../../codes/family.ts'
import type { LoadCaseId } from '../../codes/lift-rules.ts'
import type { Panel } from '../../panel/panel.ts'
import type { EnteredLimit } from '../../steps/facts.ts'
import { enteredBy, type Source, STATICS } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import type { Yard } from '../../yard/yard.ts'
import { loadFactor } from '../load-factor.ts'
import type { LiftStageId } from './stage.ts'

export interface StageFactorInput {
  readonly stage: LiftStageId
  readonly panel: Panel
  readonly yard: Yard | null
  readonly family: CodeFamily
  readonly limits: Readonly<Record<string, EnteredLimit>>
  /** For bending of the panel, or for inserts and gear. */
  readonly of: 'bending' | 'inserts'
}

export interface StageFactor {
  readonly factor: number
  readonly source: Source
  /** What the family asks at least; null where it says nothing and an engineer's factor stands alone. */
  readonly floor: number | null
}

/** Keys of the limits that an engineer may enter for a stage. */
export function factorLimit(of: 'bending' | 'inserts', stage: LiftStageId): string {
  return `lift.${of === 'bending' ? 'factor' : 'insertFactor'}:${stage}`
}

const CASES: Readonly<Record<LiftStageId, LoadCaseId | 'still'>> = {
  release: 'release',
  turn: 'handling',
  hang: 'handling',
  store: 'still',
  travel: 'travel',
  erect: 'handling',
}

/**
 * Factor on own weight at a stage: the family's, or a higher one by an engineer's entry or by the drawing. A factor below the family's
 * counts for nothing: the family's stays, and `factorCheck` shows the drawing that asks for less. What lies still has 1.
 */
export function stageFactor(input: StageFactorInput): Worked<StageFactor> {
  const { stage, panel, of, limits } = input
  const rule = ruleOf(input)
  const asked: { readonly value: number; readonly source: Source }[] = []
  const entered = limits[factorLimit(of, stage)]
  if (entered !== undefined && Number.isFinite(entered.value) && entered.value > 0) {
    const source: Source = { standard: entered.standard, clause: entered.edition, status: 'entered' }
    asked.push({ value: entered.value, source })
  }
  const drawn = panel.drawing.handling?.factors?.[stage]
  // A drawing may raise what a rule or an engineer gives; alone it decides nothing.
  if (drawn !== undefined && (rule.known || asked.length > 0))
    asked.push({ value: drawn, source: enteredBy('the drawing') })
  if (!rule.known && asked.length === 0) return rule
  const floor = rule.known ? rule.value.factor : null
  const all = [...(rule.known ? [rule.value.factor] : []), ...asked.map(({ value }) => value)]
  const factor = Math.max(...all)
  const from = asked.find(({ value }) => value === factor && value !== floor)
  const source = from?.source ?? (rule.known ? rule.value.source : enteredBy('an engineer'))
  const names = all.map((_, index) => `f${index + 1}`)
  const greatest: Step = {
    symbol: of === 'bending' ? 'f' : 'fi',
    formula: `max(${names.join(', ')})`,
    given: Object.fromEntries(names.map((name, index) => [name, all[index]!])),
    result: factor,
    unit: '',
    source,
    note: rule.known
      ? 'f1 by the family; a greater one by entry or drawing counts'
      : 'as entered; the family gives none',
  }
  return known({ factor, source, floor }, [
    ...(rule.known ? rule.working : []),
    ...(all.length > 1 || !rule.known ? [greatest] : []),
  ])
}

function ruleOf({
  stage,
  panel,
  yard,
  family,
  of,
}: StageFactorInput): Worked<{ factor: number; source: Source }> {
  const kind = CASES[stage]
  if (kind === 'still') {
    return known({ factor: 1, source: STATICS }, [
      {
        symbol: 'f',
        formula: 'own weight, at rest',
        given: { stage },
        result: 1,
        unit: '',
        source: STATICS,
        by: 'table',
      },
    ])
  }
  if (kind === 'release') {
    const worst = loadFactor({ panel, yard, family, of })
    return worst.known
      ? known({ factor: worst.value.factor, source: sourceOf(worst.working) }, worst.working)
      : worst
  }
  const rule = of === 'inserts' ? family.lift.factor : family.lift.bendingFactor
  const found = rule({ stage: kind, face: null, weight: panel.weight, faceArea: panel.faceArea })
  return found.known
    ? known({ factor: found.value, source: sourceOf(found.working) }, found.working)
    : unknown(...found.gaps)
}

function sourceOf(working: readonly Step[]): Source {
  return working.at(-1)?.source ?? STATICS
}
