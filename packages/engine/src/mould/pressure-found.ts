import type { Source } from '../working/source.ts'
import type { Assumed, Step } from '../working/worked.ts'

export type ElementKind = 'wall' | 'column'

export interface PressureFound {
  /** kPa; null where not known. */
  readonly maximum: number | null
  /** Full fluid head, kPa; null where not known. */
  readonly hydrostatic: number | null
  readonly source: Source
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly unknown: readonly string[]
}

/** A given value, or the default with the line that lists it as assumed. */
export function assume<T extends number | string>(
  assumed: Assumed[],
  given: T | undefined,
  fallback: { readonly field: string; readonly value: T; readonly unit: string; readonly why: string },
): T {
  if (given !== undefined) return given
  assumed.push(fallback)
  return fallback.value
}
