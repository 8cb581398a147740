import type { CardRow } from '@castwright/engine/steps'
import type { Check } from '@castwright/engine/working'

/** Why the invented engineer lets the lifting design govern, in her words. */
export function differenceReason({ id, verdict, unknown }: CardRow): string {
  if (id.includes(':turn') || (id.includes(':release') && unknown.length === 0 && verdict === 'fail')) {
    return id.includes('lift-peak')
      ? 'Ours takes the concrete alone. R. Oakley’s design counts the trimmers and mats as drawn, cracked, and the tilting table where there is one; his sheet 3 is in the file and was gone through.'
      : 'Ours is stricter than the maker’s rating. R. Oakley’s design takes the rating with the bars at the insert; his sheet 4 is in the file and was gone through.'
  }
  return verdict === 'fail'
    ? 'R. Oakley’s design counts what ours leaves out, his sheet 4; gone through with him by telephone.'
    : `Ours is not known (${unknown[0] ?? 'no value'}). R. Oakley’s design gives it, his sheet 2; gone through by hand.`
}

/** Why the lead goes on at a later stage of handling that our figures leave open. */
export function stageReason({ verdict, step }: Pick<Check, 'verdict' | 'step'>): string {
  if (step === 'hand-over')
    return 'Handed over lying or on the frame; the erector’s engineer plans how it is set.'
  return verdict === 'fail'
    ? 'A third timber under the middle, by the engineer’s sketch; concrete is days older than planned here.'
    : 'Lies on three timbers by the engineer’s sketch, as this shape always does here.'
}
