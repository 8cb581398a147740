import type { Point } from '../../panel/point.ts'
import type { Assumed, Check, Step, Worked } from '../../working/index.ts'
import type { CageMass } from './cage-mass.ts'
import type { Craning, Picks } from './craning.ts'

export interface CagePlan extends CageMass {
  /** Extent of the bars, mm. */
  readonly length: number
  readonly width: number
  /** With the picks entered, else with the fewest that keep to the sag entered. */
  readonly craning: Worked<Craning>
  /** Fewest hooks that keep the sag within the limit entered and the bars below yield. */
  readonly fewest: Worked<Picks>
  /** Nearest crossing of bars for each hook, in the order of `craning`; empty where that is not known. */
  readonly hooks: readonly Point[]
  /** From the middle of the hooks to the centre of mass, mm along x and y; null where either is not known. */
  readonly aside: Point | null
  readonly checks: readonly Check[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly cautions: readonly { readonly order: string; readonly text: string }[]
}
