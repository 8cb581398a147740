import type { SteelRules } from '../codes/steel-rules.ts'
import type { Asked } from '../working/asked.ts'
import { commonPractice, enteredBy } from '../working/source.ts'
import type { ListedBar } from './listed-bars.ts'
import type { PlannedMat } from './mats.ts'
import type { LaidMark } from './schedule.ts'
import { sizeKey } from './steel-checks.ts'
import type { ScheduledBar } from './steel-plan.ts'

export interface SteelAskedInput {
  readonly rules: SteelRules
  readonly mats: readonly PlannedMat[]
  readonly listed: readonly ListedBar[]
  /** Lines of the schedule of edge bars, trimmers, starters and ties. */
  readonly laidMarks: readonly LaidMark[]
  readonly bars: readonly ScheduledBar[]
}

const NO_MARK = 'no mark found'

/** What a person must see or measure about the steel, in the order of the steps. */
export function steelAsked({ rules, mats, listed, laidMarks, bars }: SteelAskedInput): Asked[] {
  const sizes = new Map(bars.map((bar) => [sizeKey(bar), bar]))
  return [
    ...[...sizes].flatMap(([key, bar]) => goodsIn(key, bar, rules)),
    ...cutBend(bars, bentOf(listed, laidMarks), rules),
    ...mats.flatMap((mat) => cage(mat, rules)),
    ...[...listed, ...laidMarks].map((bar) =>
      countOf(`count:${bar.mark}`, `Bars ${bar.mark} in the cage`, bar.count),
    ),
  ]
}

function goodsIn(key: string, bar: ScheduledBar, rules: SteelRules): Asked[] {
  const name = `${bar.diameter} mm ${bar.grade}`
  const grades = rules.grades.map(({ grade }) => grade)
  const words = [...(grades.includes(bar.grade) ? grades : [bar.grade, ...grades]), NO_MARK]
  const size = rules.barSize({ diameter: bar.diameter })
  const tolerance = rules.massTolerance({ diameter: bar.diameter })
  const nominal = size.known ? size.value.massPerMetre : null
  return [
    {
      id: `mark:${key}`,
      step: 'steel-in',
      what: `Grade rolled on the ${name} bars`,
      kind: 'choice',
      unit: '',
      choices: words.map((value) => ({ value, good: value === bar.grade })),
      source: enteredBy('the drawing'),
      note: 'Read the bar itself, over 1.5 m; the docket does not decide.',
    },
    {
      id: `mass:${key}`,
      step: 'steel-in',
      what: `Mass per metre of the ${name} bars`,
      kind: 'number',
      unit: 'kg/m',
      low: nominal === null || tolerance.minus === null ? null : nominal * (1 - tolerance.minus),
      high: nominal === null || tolerance.plus === null ? null : nominal * (1 + tolerance.plus),
      ...(size.known ? {} : { unknown: size.gaps }),
      source: tolerance.source,
      note: 'Weigh a straight piece of at least 0.5 m.',
    },
    {
      id: `docket:${key}`,
      step: 'steel-in',
      what: `Docket and heat number of the ${name} bars`,
      kind: 'text',
      unit: '',
      recordOnly: true,
      source: commonPractice('steel traced to its certificate'),
    },
  ]
}

type Bent = Pick<LaidMark, 'mark' | 'least'>

function bentOf(listed: readonly ListedBar[], laidMarks: readonly LaidMark[]): Bent[] {
  return [...listed.filter((bar) => bar.bent), ...laidMarks.filter(({ least }) => least !== null)]
}

function cutBend(bars: readonly ScheduledBar[], bent: readonly Bent[], rules: SteelRules): Asked[] {
  const asked = [...bySize(bars)].map(([key, same]) => cutLengths(key, same, rules))
  for (const { mark, least } of bent) {
    asked.push({
      id: `bend:${mark}:measured`,
      step: 'cut-bend',
      what: `Inside diameter of the bends of ${mark}`,
      kind: 'number',
      unit: 'mm',
      low: least?.known ? least.value : null,
      ...(least?.known ? {} : { unknown: least?.gaps ?? ['inside: no confirmed limit'] }),
      source: (least?.known ? least.working[0]?.source : undefined) ?? commonPractice('no confirmed limit'),
    })
  }
  if (bent.length > 0) {
    asked.push({
      id: 'bar-temperature',
      step: 'cut-bend',
      what: 'Temperature of the bars at bending',
      kind: 'number',
      unit: '°C',
      ...(rules.coldest === null ? { recordOnly: true } : { low: rules.coldest.temperature }),
      source: rules.coldest?.source ?? commonPractice('the family names no lowest temperature'),
    })
  }
  return asked
}

/** One deviation for all bars of a size and grade, within the tightest tolerance among them. */
function cutLengths(key: string, bars: readonly ScheduledBar[], rules: SteelRules): Asked {
  const tolerances = bars.map((bar) => rules.cutTolerance({ length: bar.cutLength }))
  const source = tolerances[0]?.source ?? commonPractice('cut length of a bar')
  const [bar] = bars
  return {
    id: `cut:${key}:deviation`,
    step: 'cut-bend',
    what: `Largest deviation of the cut lengths, ${bar?.diameter} mm ${bar?.grade}`,
    kind: 'number',
    unit: 'mm',
    low: 0 - Math.min(...tolerances.map(({ minus }) => minus)),
    high: Math.min(...tolerances.map(({ plus }) => plus)),
    source,
    note: 'Against the schedule; shorter counts below 0.',
  }
}

function bySize(bars: readonly ScheduledBar[]): Map<string, ScheduledBar[]> {
  const sizes = new Map<string, ScheduledBar[]>()
  for (const bar of bars) sizes.set(sizeKey(bar), [...(sizes.get(sizeKey(bar)) ?? []), bar])
  return sizes
}

function cage(planned: PlannedMat, rules: SteelRules): Asked[] {
  const { key, mat, laid, lap, laps, rows } = planned
  if (laid === null) return []
  const asked: Asked[] = [countOf(`count:${key}`, `Bars of the ${key} mat`, pieces(rows))]
  if (laid.spacing !== null) {
    const tolerance = rules.spacingTolerance({ spacing: laid.spacing })
    asked.push({
      id: `spacing:${key}:measured`,
      step: 'cage',
      what: `Largest spacing in the ${key} mat`,
      kind: 'number',
      unit: 'mm',
      ...(tolerance.plus === null ? {} : { high: mat.spacing + tolerance.plus }),
      source: tolerance.source,
    })
  }
  if (laps > 0 && lap !== null) {
    asked.push(
      {
        id: `lap:${key}:measured`,
        step: 'cage',
        what: `Shortest lap in the ${key} mat`,
        kind: 'number',
        unit: 'mm',
        low: lap,
        source: enteredBy('the plan of this panel'),
      },
      {
        id: `lap:${key}:tied`,
        step: 'cage',
        what: `Laps of the ${key} mat in contact and tied`,
        kind: 'tick',
        unit: '',
        source: commonPractice('laps are tied at both ends'),
      },
    )
  }
  return asked
}

function pieces(rows: PlannedMat['rows']): number {
  return rows.reduce((sum, row) => sum + row.cut.pieces.length, 0)
}

function countOf(id: string, what: string, count: number): Asked {
  return {
    id,
    step: 'cage',
    what,
    kind: 'number',
    unit: '',
    low: count,
    high: count,
    source: enteredBy('the plan of this panel'),
  }
}
