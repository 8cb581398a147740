import type { YardRigging } from '../yard/yard.ts'

/** Rigging by its mark; a gap where the drawing or the yard does not name it. */
export function riggingOf(
  mark: string | undefined,
  listed: readonly YardRigging[],
): YardRigging | { readonly gap: string } {
  if (mark === undefined) return { gap: 'rigging: the drawing names none' }
  return listed.find((rigging) => rigging.mark === mark) ?? { gap: `rigging: the yard lists no ${mark}` }
}
