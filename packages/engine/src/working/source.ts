/**
 * Where a rule or a number comes from.
 *
 * `seen`: the value was read in a public copy; `from memory`: of the named standard, not seen; `common practice`: a
 * rule of the trade without a source; `computed`: geometry or statics, no rule behind it; `entered`: typed in by the
 * yard, a maker's sheet or the drawing.
 */
export type SourceStatus = 'seen' | 'from memory' | 'common practice' | 'computed' | 'entered'

export interface Source {
  /** Standard with its edition, or handbook. Example: `EN 1992-1-1:2004`. */
  readonly standard: string
  /** Clause, table or page. Empty where there is none. */
  readonly clause: string
  readonly status: SourceStatus
}

export const COMMON_PRACTICE: Source = {
  standard: 'common practice, no source',
  clause: '',
  status: 'common practice',
}

export const GEOMETRY: Source = { standard: 'geometry', clause: '', status: 'computed' }
export const STATICS: Source = { standard: 'statics', clause: '', status: 'computed' }

/** A rule of the trade with a word on what it is about. */
export function commonPractice(clause: string): Source {
  return { ...COMMON_PRACTICE, clause }
}

/** A value that somebody typed in; `by` says who or what: `the drawing`, `yard: crane C1`. */
export function enteredBy(by: string): Source {
  return { standard: `entered by ${by}`, clause: '', status: 'entered' }
}
