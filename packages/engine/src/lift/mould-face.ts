import type { MouldFace } from '../codes/lift-rules.ts'
import type { YardBed } from '../yard/yard.ts'

/** How yards name their faces, and which kind of face the rules know it as. First match counts. */
const WORDS: readonly (readonly [RegExp, MouldFace])[] = [
  [/rough|sawn/i, 'rough'],
  [/concrete/i, 'concrete'],
  [/plan(ed|k)|varnish/i, 'planed'],
  [/steel|coated|plastic|film|smooth/i, 'smooth'],
]

/** Kind of mould face by the yard's own words; null where they do not say it. `timber` alone does not: planed or rough? */
export function mouldFace(words: string | undefined): MouldFace | null {
  return WORDS.find(([word]) => word.test(words ?? ''))?.[1] ?? null
}

/** The beds that a panel of these bounding sizes fits on, lying either way. */
export function fittingBeds(
  beds: readonly YardBed[],
  { length, width }: { readonly length: number; readonly width: number },
): readonly YardBed[] {
  return beds.filter(
    (bed) => (bed.length >= length && bed.width >= width) || (bed.length >= width && bed.width >= length),
  )
}
