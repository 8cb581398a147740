import type { LoadTime } from '@castwright/engine/pour'
import { fixed } from '../look/index.ts'

export interface OrderTextInput {
  readonly yard: string
  readonly panel: string
  readonly job: string
  /** Mark of the mix and its slump as ordered; null where not known. */
  readonly mix: string | null
  readonly slump: readonly [low: number, high: number] | null
  /** m³: in the panel, come already, and to order with the allowance. */
  readonly net: number
  readonly here: number
  readonly ordered: number
  readonly allowance: number
  /** Greatest age at the end of discharge, minutes; null where not known. */
  readonly limit: number | null
  /** Minutes that a surface may wait, with the air that it was taken at; null where not known. */
  readonly joint: { readonly minutes: number; readonly air: string } | null
  readonly loads: readonly LoadTime[]
  /** A time of a load as it is read out. */
  readonly when: (minutes: number) => string
}

/** The order as it is read out over the telephone or sent: a line for each thing, what is not known said as such. */
export function orderText(input: OrderTextInput): string {
  const { yard, panel, job, mix, slump, net, here, ordered, allowance, limit, joint, loads, when } = input
  return [
    `Concrete for ${yard}: ${panel}, ${job}`,
    `Mix ${mix ?? 'not known'}, slump ${slump === null ? 'not known' : `${slump[0]} to ${slump[1]} mm`}`,
    `${fixed(ordered, 1)} m³ in ${loads.length} ${loads.length === 1 ? 'load' : 'loads'} (${fixed(net, 2)} m³ in the panel, ${allowance * 100} % allowance${here > 0 ? `, ${fixed(here, 1)} m³ here` : ''})`,
    ...loads.map(
      ({ load, volume, batched, arrives }) =>
        `Load ${load}: ${fixed(volume, 2)} m³, batched ${when(batched)}, here ${when(arrives)}`,
    ),
    limit === null
      ? 'Greatest age at discharge: to be agreed'
      : `Each load discharged within ${limit} min of batching`,
    ...(loads.length < 2
      ? []
      : [
          joint === null
            ? 'Longest wait between loads: not known without the air temperature'
            : `The next load begins within ${Math.floor(joint.minutes)} min of the end of the one before (${joint.air})`,
        ]),
    'With each load: docket with batching time, water that may be added, mix and volume',
  ].join('\n')
}
