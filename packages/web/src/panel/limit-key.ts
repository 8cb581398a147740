import { LEAST_TEMPERATURE_LIMIT, PEAK_LIMIT } from '@castwright/engine/cure'
import { CORE_FACE_LIMIT } from '@castwright/engine/cure/heat'
import { LEAST_STRENGTH_LIMIT } from '@castwright/engine/lift'
import { toleranceKey } from '@castwright/engine/quality'
import { type CardRow, CUBE_RATIO_LIMIT } from '@castwright/engine/steps'

/** A number that an engineer may enter for the yard at a row. */
export interface LimitAsk {
  /** Key that the engine reads it by. */
  readonly key: string
  readonly label: string
  readonly unit: string
  /** A factor is set by judgement: it wants a reason beside its source. */
  readonly reasoned: boolean
  /** What counts and what does not, one sentence. */
  readonly note: string
}

/** Rows whose limit an engineer may enter for the yard, by the row's id. */
const KEYS: ReadonlyMap<string, string> = new Map([
  ['peak-temperature', PEAK_LIMIT],
  ['least-temperature', LEAST_TEMPERATURE_LIMIT],
  ['night-core-face', CORE_FACE_LIMIT],
  ['strength', LEAST_STRENGTH_LIMIT],
  ...(['length', 'width', 'thickness', 'squareness', 'bow', 'warp', 'flatness'] as const).map(
    (what): [string, string] => [`built-${what}`, toleranceKey(what)],
  ),
])

const LIFT_ROW = /^(?:now:)?lift-(peak|insert):(\w+)$/
const STAGE_WORDS: Readonly<Record<string, string>> = {
  release: 'off the mould',
  turn: 'turned up',
  hang: 'hanging',
  store: 'in storage',
  travel: 'on the road',
  erect: 'erected',
}

/**
 * What an engineer may enter at this row: its limit where none is built in; at a stage of the lift its load factor, the tension
 * that the concrete may have, or the margin of the inserts, which may raise what the code asks and never lower it.
 */
export function limitAsks(row: Pick<CardRow, 'id' | 'limit' | 'unit' | 'unknown'>): readonly LimitAsk[] {
  const lift = LIFT_ROW.exec(row.id)
  if (lift !== null) return liftAsks(lift[1] as 'peak' | 'insert', lift[2] ?? '')
  if (row.id === 'mould-cast') return castAsks(row)
  const key = row.limit === null ? KEYS.get(row.id) : undefined
  const limit: LimitAsk[] =
    key === undefined ? [] : [{ key, label: 'Limit', unit: row.unit, reasoned: false, note: '' }]
  return row.id === 'strength' && row.unknown.some((gap) => gap.includes('cubes are not counted'))
    ? [...limit, CUBE_RATIO]
    : limit
}

/** Asked for where only cubes were tested. */
const CUBE_RATIO: LimitAsk = {
  key: CUBE_RATIO_LIMIT,
  label: 'Strength of a cylinder over that of a cube',
  unit: '',
  reasoned: true,
  note: 'Above 0 and at most 1, by tests of the yard’s own concrete where there are any. Without it cubes count for nothing.',
}

const CAST = ['length', 'width', 'thickness', 'squareness'] as const

/** As-built tolerances that nobody has given, as the row of the mould names them. */
function castAsks({ unit, unknown }: Pick<CardRow, 'unit' | 'unknown'>): LimitAsk[] {
  return CAST.filter((what) => unknown.some((gap) => gap.startsWith(`${what}:`))).map((what) => ({
    key: toleranceKey(what),
    label: `As-built tolerance of ${what}, either way`,
    unit,
    reasoned: false,
    note: '',
  }))
}

function liftAsks(of: 'peak' | 'insert', stage: string): readonly LimitAsk[] {
  const words = STAGE_WORDS[stage]
  if (words === undefined) return []
  const ask = (key: string, label: string, unit: string, note: string): LimitAsk => ({
    key,
    label,
    unit,
    reasoned: true,
    note,
  })
  return of === 'peak'
    ? [
        ask(
          `lift.factor:${stage}`,
          `Load factor for bending, ${words}`,
          '',
          'Below the code’s factor it counts for nothing.',
        ),
        ask(
          'lift.tension',
          'k of the tension limit k √f',
          '√MPa',
          'Where the code has a limit, the lower of the two counts.',
        ),
      ]
    : [
        ask(
          `lift.insertFactor:${stage}`,
          `Load factor for inserts, ${words}`,
          '',
          'Below the code’s factor it counts for nothing.',
        ),
        ask(
          'lift.insertMargin',
          'Failure load over working load of inserts',
          '',
          'Below the code’s margin it counts for nothing.',
        ),
      ]
}
