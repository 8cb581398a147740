import type { Cover } from '@castwright/engine/cure'
import type { Mix } from '@castwright/engine/yard'
import type { StrengthInput, StrengthLine } from './strength-line.ts'

/** What takes too long for the screen's own thread: open tests of like mixes, and a mix's tests left out one at a time. */
export type StrengthWork =
  | { readonly kind: 'open'; readonly line: Omit<StrengthInput, 'open'>; readonly mix: Mix }
  | { readonly kind: 'cover'; readonly mix: Mix }

export interface OpenLine {
  readonly line: StrengthLine | null
  /** Proportions outside the open mixes, in words. */
  readonly warnings: readonly string[]
  /** So far outside that the open tests say nothing: then there is no line. */
  readonly far: boolean
}

export type StrengthAnswer =
  | { readonly kind: 'open'; readonly found: OpenLine }
  | { readonly kind: 'cover'; readonly found: Cover }
  | { readonly kind: 'fault'; readonly fault: string }
