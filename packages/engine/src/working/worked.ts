import type { Source } from './source.ts'

/**
 * One line of a calculation as an engineer would write it.
 *
 * With `by: 'formula'` (the default) the printed numbers put in the printed formula give the printed result; `replay`
 * holds every step to that. `table` reads a row, `search` is a numerical method or a count named in the formula text;
 * those two are not replayed.
 */
export interface Step {
  readonly symbol: string
  readonly formula: string
  /** The numbers put in, by the names they have in the formula. */
  readonly given: Readonly<Record<string, number | string>>
  readonly result: number | string
  /** Empty for a pure number. */
  readonly unit: string
  readonly source: Source
  readonly by?: 'formula' | 'table' | 'search'
  /** A remark in words: which branch was taken, what was left out. */
  readonly note?: string
}

/** A default that the caller did not give. It is always shown. */
export interface Assumed {
  readonly field: string
  readonly value: number | string
  readonly unit: string
  readonly why: string
}

export interface Known<T> {
  readonly known: true
  readonly value: T
  readonly working: readonly Step[]
  readonly assumed?: readonly Assumed[]
}

export interface Unknown {
  readonly known: false
  /** What is missing, in words that name the field. Never empty. */
  readonly gaps: readonly string[]
  readonly working?: readonly Step[]
  readonly assumed?: readonly Assumed[]
}

/** A value with its working, or what is missing to say it. */
export type Worked<T> = Known<T> | Unknown

export function known<T>(value: T, working: readonly Step[], assumed: readonly Assumed[] = []): Known<T> {
  return assumed.length > 0 ? { known: true, value, working, assumed } : { known: true, value, working }
}

export function unknown(...gaps: readonly string[]): Unknown {
  if (gaps.length === 0) throw new Error('unknown needs at least one gap that says what is missing')
  return { known: false, gaps }
}
