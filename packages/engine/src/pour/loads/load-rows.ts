import type { CodeFamily } from '../../codes/family.ts'
import { compare } from '../../working/check.ts'
import { ceilTo } from '../../working/round.ts'
import { commonPractice, enteredBy } from '../../working/source.ts'
import type { Assumed } from '../../working/worked.ts'
import { jointMinutes } from '../load-times.ts'
import type { AirThen } from './air.ts'
import { counts, inOrder, type Load, volumeHere } from './load.ts'
import {
  joined,
  type LoadRow,
  loadRow,
  loadRowId,
  loadRowTitle,
  rowOfCheck,
  type Said,
  saidBy,
  waitsForEnd,
} from './load-row.ts'
import { oneLoadRows, type PourOrder } from './one-load.ts'

export interface LoadsInput {
  readonly loads: readonly Load[]
  readonly order: PourOrder
  readonly family: CodeFamily
  /** Air at an instant; null where nobody knows. */
  readonly air: (at: string) => AirThen | null
}

const MINUTE = 60_000
const JOINT = commonPractice('minutes that a surface may wait, by air temperature')
const ONE_MIX = commonPractice('one panel never from two unrelated mixes')
/** Half the time of plain concrete: the face of a panel is seen. */
export const VISIBLE: Assumed = {
  field: 'visible face',
  value: 'yes',
  unit: '',
  why: 'half the time of plain work',
}

/**
 * Every condition of the loads of one pour by what is on record, in the order of discharge, then those of all loads together. A load that was sent back
 * has one row that says so, and counts for nothing. No loads: no rows.
 */
export function loadRows(input: LoadsInput): LoadRow[] {
  const loads = inOrder(input.loads)
  if (loads.length === 0) return []
  const counted = loads.filter(counts)
  return [
    ...loads.flatMap((load) =>
      counts(load)
        ? [...oneLoadRows({ ...input, load }), ...jointRow(input, load, counted[counted.indexOf(load) - 1])]
        : [backRow(load)],
    ),
    sumRow(counted, input),
    ...oneMixRow(counted, input),
  ]
}

function backRow(load: Load): LoadRow {
  const id = loadRowId(load.number, 'back')
  const { decision } = load
  return loadRow({
    id,
    what: loadRowTitle(id) ?? id,
    verdict: 'pass',
    demand: 'not in this panel',
    note: decision === null ? '' : `${decision.by.name}: ${decision.reason ?? ''}`,
    source: commonPractice('a load outside the limits is somebody’s decision'),
    rests: decision === null ? load.entries : [...load.entries, decision.entry],
    since: load.seen,
  })
}

/** From the end of the load before to the begin of this one, against the time that a surface may wait. */
function jointRow({ air, loads }: LoadsInput, load: Load, before: Load | undefined): LoadRow[] {
  if (before === undefined) return []
  const then = before.discharged === undefined ? null : air(before.discharged)
  const minutes = (Date.parse(load.began ?? '') - Date.parse(before.discharged ?? '')) / MINUTE
  const id = loadRowId(load.number, 'joint')
  const check = compare({
    id,
    step: 'deliver',
    what: loadRowTitle(id) ?? id,
    // A load that begins while the one before still runs leaves no surface waiting.
    demand: Number.isFinite(minutes) ? Math.max(0, minutes) : null,
    limit: then === null ? null : jointMinutes({ air: then.celsius, visible: true }),
    unit: 'min',
    sense: 'at most',
    source: JOINT,
    assumed: [VISIBLE],
    missing: [
      ...(before.discharged === undefined ? [`end of discharge of load ${before.number}`] : []),
      ...(load.began === undefined ? ['begin of discharge'] : []),
      ...(before.discharged !== undefined && then === null
        ? [`air temperature as load ${before.number} ended: measured, logged or forecast`]
        : []),
    ],
    note:
      then === null
        ? 'The load before must still take the vibrator.'
        : `Air ${Math.round(then.celsius)} °C, ${then.from}. The load before must still take the vibrator.`,
  })
  return [
    rowOfCheck(
      check,
      joined(saidBy([before], ['discharged']), saidBy([load], ['began']), sentBack(loads)),
      waitsForEnd(before),
    ),
  ]
}

/** Concrete of the loads that count against what the panel needs: a shortfall shows before the last truck leaves. */
function sumRow(counted: readonly Load[], { order: { net }, loads }: LoadsInput): LoadRow {
  const volumes = counted.map(volumeHere)
  const sum = volumes.reduce<number>((all, volume) => all + (volume ?? 0), 0)
  const missing = counted.flatMap(({ number }, at) =>
    volumes[at] === null ? [`volume of load ${number}, m³`] : [],
  )
  const check = compare({
    id: 'loads:volume',
    step: 'deliver',
    what: loadRowTitle('loads:volume') ?? '',
    demand: sum,
    limit: net,
    unit: 'm³',
    sense: 'at least',
    source: enteredBy('the drawing: concrete of the panel'),
    // Enough is enough, whatever else came.
    missing: sum < net ? missing : [],
    note:
      sum < net && missing.length === 0
        ? `${ceilTo(net - sum, 0.01).toFixed(2)} m³ short of the panel, waste left out: order it before the last truck leaves.`
        : 'Waste and what stays in the hopper are left out.',
  })
  return rowOfCheck(check, joined(saidBy(counted, ['volume', 'used']), sentBack(loads)))
}

/** A second load of another mix never, unless an engineer decides what then lies in the mould. */
function oneMixRow(counted: readonly Load[], { loads }: LoadsInput): LoadRow[] {
  if (counted.length < 2) return []
  const mixes = [...new Set(counted.flatMap(({ mix }) => mix ?? []))]
  const missing = counted.flatMap(({ number, mix }) => (mix === undefined ? [`mix of load ${number}`] : []))
  return [
    loadRow({
      id: 'loads:one-mix',
      what: loadRowTitle('loads:one-mix') ?? '',
      verdict: mixes.length > 1 ? 'fail' : missing.length > 0 ? 'unknown' : 'pass',
      demand: mixes.join(', ') || null,
      note: mixes.length > 1 ? 'Send one of them back, or an engineer decides.' : '',
      source: ONE_MIX,
      unknown: mixes.length > 1 ? [] : missing,
      deciders: ['engineer'],
      ...joined(saidBy(counted, ['mix']), sentBack(loads)),
    }),
  ]
}

/** What was sent back changes what the others add up to, and which of them follow each other. */
function sentBack(loads: readonly Load[]): Said {
  return joined(
    ...loads.flatMap((load) =>
      load.decision === null || counts(load)
        ? []
        : [{ rests: [load.decision.entry], since: load.decision.seen }],
    ),
  )
}
