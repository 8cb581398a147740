import type { CodeFamily } from '../codes/family.ts'
import type { Drawing } from '../panel/drawing.ts'
import type { EnteredLimit } from '../steps/facts.ts'
import { enteredBy, type Source } from '../working/source.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'
import type { Yard } from '../yard/yard.ts'
import { designName } from './design-name.ts'
import { type DrawnKinds, drawnKinds } from './insert-kinds.ts'

/** Key of the yard's entered limits under which an engineer gives the least strength at the first lift, MPa. */
export const LEAST_STRENGTH_LIMIT = 'lift.leastStrength'

export interface WantedStrengthInput {
  readonly drawing: Drawing
  readonly yard: Yard | null
  readonly family: CodeFamily
  readonly limits?: Readonly<Record<string, EnteredLimit>>
}

export interface WantedStrength {
  /** MPa */
  readonly strength: number
  /** Which of the askers is the greatest, in words. */
  readonly from: string
  readonly source: Source
}

/**
 * Strength of the concrete wanted at the first lift: the greatest of what the lifting design, the family (or an
 * engineer's entered limit, where the family gives none) and the makers of the inserts ask; MPa.
 *
 * Unknown while any of the three is missing: two of them are not the greatest of three.
 */
export function wantedStrength({
  drawing,
  yard,
  family,
  limits = {},
}: WantedStrengthInput): Worked<WantedStrength> {
  const asked: WantedStrength[] = []
  const gaps: string[] = []
  if (drawing.lifting) {
    const from = designName(drawing.lifting.reference)
    asked.push({ strength: drawing.lifting.strength, from, source: enteredBy('the drawing') })
  } else gaps.push('lifting: the drawing has no lifting design')
  const least = familyLeast(family, limits)
  if (least) asked.push(least)
  else {
    gaps.push(
      `least strength at the first lift: no confirmed value for ${family.id}; an engineer enters it for the yard`,
    )
  }
  const kinds = drawnKinds({ drawing, yard })
  gaps.push(...kinds.gaps)
  asked.push(...kindsLeast(kinds))
  const greatest = asked.reduce<WantedStrength | null>(
    (most, next) => (most === null || next.strength > most.strength ? next : most),
    null,
  )
  if (gaps.length > 0 || greatest === null) return unknown(...gaps)
  return known(greatest, [greatestStep(asked, greatest)])
}

/** The engineer's entered limit may raise what the family asks, never lower it. */
function familyLeast(
  family: CodeFamily,
  limits: Readonly<Record<string, EnteredLimit>>,
): WantedStrength | null {
  const rule = family.lift.leastStrength
  const entered = limits[LEAST_STRENGTH_LIMIT]
  const usable =
    entered !== undefined && entered.unit === 'MPa' && Number.isFinite(entered.value) && entered.value > 0
  if (usable && (rule === null || entered.value > rule.value)) {
    return {
      strength: entered.value,
      from: `limit entered by ${entered.by.name}`,
      source: { standard: entered.standard, clause: entered.edition, status: 'entered' },
    }
  }
  return rule === null
    ? null
    : { strength: rule.value, from: `code family ${family.id}`, source: rule.source }
}

function kindsLeast({ kinds }: DrawnKinds): WantedStrength[] {
  return kinds.map(({ kind }) => ({
    strength: kind.leastStrength,
    from: `maker of ${kind.mark}`,
    source: enteredBy(`the yard: insert ${kind.mark}`),
  }))
}

function greatestStep(asked: readonly WantedStrength[], greatest: WantedStrength): Step {
  const names = asked.map((_, index) => `f${index + 1}`)
  return {
    symbol: 'f',
    formula: `max(${names.join(', ')})`,
    given: Object.fromEntries(names.map((name, index) => [name, asked[index]?.strength ?? 0])),
    result: greatest.strength,
    unit: 'MPa',
    source: greatest.source,
    note: asked.map(({ from }, index) => `${names[index]}: ${from}`).join('; '),
  }
}
