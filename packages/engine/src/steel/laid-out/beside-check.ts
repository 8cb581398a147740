import type { SteelRules } from '../../codes/steel-rules.ts'
import type { Drawing } from '../../panel/drawing.ts'
import type { Asked } from '../../working/asked.ts'
import { type Check, compare } from '../../working/check.ts'
import { commonPractice } from '../../working/source.ts'
import type { Worked } from '../../working/worked.ts'
import type { BesidePair, PlacedBar } from '../steel-plan.ts'
import { NO_RULE } from './bend-of.ts'
import type { BesidePairs } from './beside-pairs.ts'

export interface BesideCheckInput {
  readonly drawing: Drawing
  readonly rules: SteelRules
  readonly pairs: BesidePairs
  readonly placed: readonly PlacedBar[]
  /** Why bars have no place or no height, by field. */
  readonly unplaced: readonly string[]
}

/** Pairs that a check names. */
const NAMED = 4

/** The pair of bars side by side that is nearest to what is asked, with what it is asked by; the rest is counted. */
export function besideCheck({ drawing, rules, pairs, placed, unplaced }: BesideCheckInput): Check {
  const { crowded, contacts } = pairs
  const [worst] = crowded
  const diameters = new Map(placed.map(({ id, diameter }) => [id, diameter]))
  const thicker =
    worst === undefined
      ? Math.max(...diameters.values())
      : Math.max(...worst.bars.map((id) => diameters.get(id) ?? Number.NaN))
  const clear = askedBeside({ drawing, rules, diameter: thicker })
  const sure = worst !== undefined && clear.known
  return compare({
    id: 'side-by-side',
    step: 'cage',
    what: 'Pairs of bars side by side neither clear nor in contact and tied',
    demand: crowded.length,
    limit: 0,
    unit: '',
    sense: 'at most',
    source: clear.known ? (clear.working.at(-1)?.source ?? NO_RULE) : NO_RULE,
    working: clear.known ? clear.working : [],
    // A pair that is too near is told though others have no place.
    missing: sure ? [] : [...(clear.known ? [] : clear.gaps), ...unplaced],
    ...noteOf(crowded, contacts),
  })
}

/** Clear distance beside a bar, by the code and the drawing's aggregate, mm. */
export function askedBeside({
  drawing,
  rules,
  diameter,
}: {
  readonly drawing: Drawing
  readonly rules: SteelRules
  readonly diameter: number
}): Worked<number> {
  return rules.clearSpacing({ diameter, aggregate: drawing.concrete.aggregate ?? null })
}

function noteOf(crowded: readonly BesidePair[], contacts: readonly BesidePair[]): { readonly note?: string } {
  const lines = namedOnce(crowded, ({ marks, clear, asked, at, inContact }) =>
    inContact
      ? `${marks.join(' and ')} touch and are not drawn tied`
      : `${marks.join(' and ')} ${clear.toFixed(1)} mm clear of ${asked.toFixed(0)} mm near x ${at[0].toFixed(0)}, y ${at[1].toFixed(0)}`,
  )
  if (contacts.length > 0)
    lines.push(
      `${contacts.length} ${contacts.length === 1 ? 'pair lies' : 'pairs lie'} in contact and are tied`,
    )
  return lines.length === 0 ? {} : { note: lines.join('; ') }
}

/** The worst of each pair of marks, with the others counted. */
function namedOnce(pairs: readonly BesidePair[], words: (pair: BesidePair) => string): string[] {
  const byMarks = new Map<string, BesidePair>()
  for (const pair of pairs) {
    const key = [...pair.marks].sort().join(' ')
    if (!byMarks.has(key)) byMarks.set(key, pair)
  }
  const all = [...byMarks.values()]
  const more = all.length > NAMED ? [`and ${all.length - NAMED} more kinds of pair`] : []
  return [...all.slice(0, NAMED).map(words), ...more]
}

/** Seen on the cage before it leaves its bench: bars that touch along each other are tied. */
export function contactsAsked(contacts: readonly BesidePair[]): Asked[] {
  if (contacts.length === 0) return []
  const marks = [...new Set(contacts.map(({ marks: [one, other] }) => `${one} with ${other}`))]
  const named = marks.slice(0, NAMED).join(', ')
  return [
    {
      id: 'contacts:tied',
      step: 'cage',
      what: `Bars that touch along each other tied: ${contacts.length} ${contacts.length === 1 ? 'pair' : 'pairs'}`,
      kind: 'tick',
      unit: '',
      source: commonPractice('bars in contact are tied at both ends'),
      note: `${named}${marks.length > NAMED ? ` and ${marks.length - NAMED} more` : ''}`,
    },
  ]
}
