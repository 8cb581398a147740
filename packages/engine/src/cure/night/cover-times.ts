import type { PanelFacts, Recorded } from '../../steps/facts.ts'
import type { Assumed } from '../../working/worked.ts'
import { nextClock } from '../../yard/wall-clock.ts'
import type { Yard, YardCover } from '../../yard/yard.ts'

/** Hours from mixing. */
export interface CoverTime {
  readonly hour: number
  /** `recorded`: somebody recorded it; `tried`: on a screen only; else as planned. */
  readonly by: 'recorded' | 'planned' | 'tried'
}

export interface CoverTimes {
  /** Null: the panel lies bare. */
  readonly cover: { readonly mark: string; readonly resistance: number } | null
  readonly on: CoverTime | null
  readonly off: CoverTime | null
  readonly assumed: readonly Assumed[]
}

export interface CoverTimesInput {
  readonly facts: Pick<PanelFacts, 'cast' | 'steps'>
  readonly yard: Yard | null
  /** End of the power-float window, hours from mixing; null where it is not known. */
  readonly finished: number | null
  /** Hours from mixing to now. */
  readonly age: number
}

const HOUR = 3_600_000
/** When covers come off where the yard says nothing: common practice, no source. */
const USUAL_OFF = '05:30'
/** From the end of the last pass to the cover, h: common practice, no source. */
const AFTER_FINISH = 0.5
/** From mixing to the cover where the mix says nothing of setting, h: common practice, no source. */
const USUAL_ON = 6
/** A tarpaulin with some air under it, m²K/W: 0.05 to 0.15, from memory. */
const THIN_COVER = 0.1

/**
 * When a panel is covered, and with what: as recorded where it is, else as the yard plans it. A cover that nobody recorded is
 * never taken to be on before now; one that somebody recorded as not laid is not there.
 */
export function coverTimes({ facts, yard, finished, age }: CoverTimesInput): CoverTimes {
  const assumed: Assumed[] = []
  if (facts.cast === null) return { cover: null, on: null, off: null, assumed }
  const mixed = Date.parse(facts.cast.at)
  const { finish, cure } = facts.steps
  const ticks = [finish.values['cover-on'], cure.values.covered].filter((each) => each !== undefined)
  const laid = ticks.filter(({ value }) => value === true)
  if (laid.length === 0 && ticks.length > 0)
    return {
      cover: null,
      on: null,
      off: null,
      assumed: [
        { field: 'cover', value: 'none', unit: '', why: 'recorded as not laid: the panel is taken as bare' },
      ],
    }
  const on = earliest(laid, mixed) ?? plannedOn(finished, age, assumed)
  const off = offOf(cure.values['cover-off'], mixed, on.hour, yard, assumed)
  return { cover: coverOf(yard, assumed), on, off, assumed }
}

function earliest(ticks: readonly Recorded[], mixed: number): CoverTime | null {
  const hours = ticks.map(({ seen }) => (Date.parse(seen) - mixed) / HOUR).filter(Number.isFinite)
  return hours.length === 0 ? null : { hour: Math.max(0, Math.min(...hours)), by: 'recorded' }
}

function plannedOn(finished: number | null, age: number, assumed: Assumed[]): CoverTime {
  const planned = finished === null ? USUAL_ON : finished + AFTER_FINISH
  const hour = Math.max(planned, age)
  const why =
    hour > planned
      ? 'the cover is not recorded: it is taken to be laid now'
      : finished === null
        ? 'the cover is not recorded, and the mix says nothing of setting'
        : 'the cover is not recorded: half an hour after the planned finish'
  assumed.push({ field: 'cover on', value: Math.round(100 * hour) / 100, unit: 'h', why })
  return { hour, by: 'planned' }
}

function offOf(
  recorded: Recorded | undefined,
  mixed: number,
  on: number,
  yard: Yard | null,
  assumed: Assumed[],
): CoverTime | null {
  const seen = recorded === undefined ? Number.NaN : (Date.parse(recorded.seen) - mixed) / HOUR
  if (seen > on) return { hour: seen, by: 'recorded' }
  if (yard === null) return null
  const clock = yard.covering?.off ?? USUAL_OFF
  const why = yard.covering?.off === undefined ? 'the yard gives no hour' : 'the yard’s usual hour'
  const hour = (nextClock(clock, mixed + on * HOUR, yard.timezone) - mixed) / HOUR
  assumed.push({ field: 'cover off', value: clock, unit: '', why: `not recorded yet: ${why}` })
  return { hour, by: 'planned' }
}

function coverOf(yard: Yard | null, assumed: Assumed[]): NonNullable<CoverTimes['cover']> {
  const usual = yard?.covering?.cover
  const listed = yard?.covers?.find(({ mark }) => usual === undefined || mark === usual)
  if (listed === undefined) {
    const why = 'the yard lists no covers: a thin sheet with some air under it, from memory'
    assumed.push({ field: 'cover', value: THIN_COVER, unit: 'm²K/W', why })
    return { mark: 'thin sheet', resistance: THIN_COVER }
  }
  if (usual === undefined)
    assumed.push({
      field: 'cover',
      value: listed.mark,
      unit: '',
      why: 'the yard names no usual cover: the first that it lists',
    })
  return { mark: listed.mark, resistance: coverResistance(listed) }
}

/** m²K/W */
export function coverResistance({ resistance, thickness = 0, conductivity = 1 }: YardCover): number {
  return resistance ?? thickness / 1000 / conductivity
}
