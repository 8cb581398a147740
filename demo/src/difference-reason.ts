import type { CardRow } from '@castwright/engine/steps'

/** Why the invented engineer lets the lifting design govern, in her words. */
export function differenceReason({ id, verdict, unknown }: CardRow): string {
  const what = id.includes('lift-peak') ? 'tension' : 'insert load'
  return verdict === 'fail'
    ? `Our ${what} is above our limit; R. Oakley’s design takes the bars as drawn into account. Gone through with him by telephone, his sheet 3 is in the file.`
    : `Our ${what} is not known (${unknown[0] ?? 'no value'}). The design of R. Oakley gives it; gone through by hand, within his figure.`
}
