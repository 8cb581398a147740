import type { CodeFamily } from '../codes/family.ts'
import type { Panel } from '../panel/panel.ts'
import { commonPractice } from '../working/source.ts'
import type { Assumed, Step } from '../working/worked.ts'
import type { Yard } from '../yard/yard.ts'
import { askedBeside, contactsAsked } from './laid-out/beside-check.ts'
import { besidePairs } from './laid-out/beside-pairs.ts'
import { clashesOf } from './laid-out/clash.ts'
import { layOut } from './laid-out/lay-out.ts'
import { type ListedBar, listedBars } from './listed-bars.ts'
import { type PlannedMat, plannedMats } from './mats.ts'
import { scheduleOf } from './schedule.ts'
import { steelAsked } from './steel-asked.ts'
import { steelChecks } from './steel-checks.ts'
import type { SteelPlan } from './steel-plan.ts'
import { tiePlan } from './tie-plan/tie-plan.ts'
import { tiesAsked } from './tie-plan/ties-asked.ts'
import { crossings } from './ties.ts'

/** Tying wire, kg for each tonne of bar: for bars of 10 to 16 mm; pages of the trade run from 6 to 13. */
export const WIRE_PER_TONNE = 10

export interface PlanSteelInput {
  readonly panel: Panel
  /** Where missing, bars are planned in one length and what needs the stock is not known. */
  readonly yard: Yard | null
  readonly family: CodeFamily
}

/**
 * The steel of one panel: bars cut around openings and to the yard's stock, laps, schedule, ties, checks and what to record.
 * What cannot be laid out or cut is named in `unknown`, and the masses are then null.
 */
export function planSteel({ panel, yard, family }: PlanSteelInput): SteelPlan {
  const rules = family.steel
  const { drawing } = panel
  const mats = plannedMats({ panel, yard, rules })
  const listed = listedBars({ panel, yard, rules })
  const laid = layOut({ panel, yard, rules, mats, listed })
  const schedule = scheduleOf({
    mats,
    listed,
    rules,
    listedPlace: (bar, place) => laid.listed.get(bar.mark)?.[place] ?? { height: null, side: 1 },
    laid: laid.lines.flatMap(({ bars }) => bars),
    lapDrawn: drawing.lap !== undefined,
  })
  const gaps = laid.lines.flatMap((line) => line.gaps)
  const unknown = [...schedule.unknown, ...gapsOf(mats, yard), ...gaps]
  const clashes = clashesOf(schedule.placed)
  const beside = besidePairs({
    placed: schedule.placed,
    laps: schedule.laps,
    asked: (diameter) => {
      const clear = askedBeside({ drawing, rules, diameter })
      return clear.known ? clear.value : null
    },
    tied: tiedMarks(listed),
  })
  const laidOut = mats.every((mat) => mat.laid !== null) && gaps.length === 0
  const mass = laidOut ? schedule.mass : null
  const ties = laidOut ? tied(mats) : null
  const wire = mass === null || schedule.bars.length === 0 ? null : (mass * WIRE_PER_TONNE) / 1000
  return {
    bars: schedule.bars,
    placed: schedule.placed,
    laps: schedule.laps,
    ...beside,
    ties,
    wire,
    mass,
    checks: steelChecks({
      drawing,
      yard,
      rules,
      mats,
      listed,
      laid: laid.lines,
      bars: schedule.bars,
      placed: schedule.placed,
      clashes,
      beside,
    }),
    toRecord: [
      ...steelAsked({ rules, mats, listed, laidMarks: schedule.laidMarks, bars: schedule.bars }),
      ...(laidOut ? tiesAsked(tiePlan(schedule)) : []),
      ...contactsAsked(beside.contacts),
    ],
    working: workingOf(listed, mass, wire),
    assumed: [...assumedOf(listed, wire), ...laid.lines.flatMap((line) => line.assumed)],
    unknown,
  }
}

/** Marks under which listed bars lie that the drawing says are tied, those of the pieces of a lapped one too. */
function tiedMarks(listed: readonly ListedBar[]): Set<string> {
  return new Set(
    listed
      .filter(({ drawn }) => drawn.tied === true)
      .flatMap(({ mark, pieces }) => [mark, ...pieces.map((_, i) => `${mark}/${i + 1}`)]),
  )
}

function gapsOf(mats: readonly PlannedMat[], yard: Yard | null): string[] {
  const gaps: string[] = []
  for (const { key, mat, laid, stock, unlapped, lap } of mats) {
    if (laid === null) gaps.push(`${key}: cover.edge: cover at edges and openings, mm`)
    if (stock === null) {
      gaps.push(
        yard === null
          ? `${key}: yard: bar stock, whether bars must be lapped`
          : `${key}: yard.stock: lengths of ${mat.diameter} mm ${mat.grade}, whether bars must be lapped`,
      )
    }
    if (unlapped > 0) {
      gaps.push(
        lap === null
          ? `${key}: lap: ${unlapped} rows are longer than the stock and no lap is known`
          : `${key}: lap: ${unlapped} rows are longer than the stock and cannot be built with a lap of ${lap} mm`,
      )
    }
  }
  return [...new Set(gaps)]
}

/** Crossings to tie in both layers; null where no layer has bars both ways. */
function tied(mats: readonly PlannedMat[]): number | null {
  let sum: number | null = null
  for (const layer of ['mould', 'top'] as const) {
    const lines = (direction: 'x' | 'y') =>
      mats
        .filter(({ mat }) => mat.layer === layer && mat.direction === direction)
        .flatMap((mat) => mat.laid?.lines ?? [])
    const [alongX, alongY] = [lines('x'), lines('y')]
    if (alongX.length === 0 || alongY.length === 0) continue
    sum = (sum ?? 0) + crossings({ alongX, alongY }).tied
  }
  return sum
}

function workingOf(listed: readonly ListedBar[], mass: number | null, wire: number | null): Step[] {
  const steps = listed.flatMap((bar) => (bar.shape.known && bar.bent ? bar.shape.value.working : []))
  if (mass === null || wire === null) return steps
  return [
    ...steps,
    {
      symbol: 'wire',
      formula: 'M w / 1000',
      given: { M: mass, w: WIRE_PER_TONNE },
      result: wire,
      unit: 'kg',
      source: commonPractice('tying wire per tonne of bar'),
    },
  ]
}

function assumedOf(listed: readonly ListedBar[], wire: number | null): Assumed[] {
  const assumed: Assumed[] = []
  for (const { mark, drawn, bent, inside } of listed) {
    if (bent && drawn.inside === undefined && inside !== null) {
      assumed.push({
        field: `steel.${mark}.inside`,
        value: inside,
        unit: 'mm',
        why: 'the drawing gives no inside diameter: the least that the code allows',
      })
    }
    if (drawn.legs !== undefined && drawn.legs.length > 1 && drawn.turns === undefined) {
      assumed.push({ field: `steel.${mark}.turns`, value: 90, unit: '°', why: 'the drawing gives no turns' })
    }
    if (drawn.count === undefined) {
      assumed.push({ field: `steel.${mark}.count`, value: 1, unit: '', why: 'the drawing gives no count' })
    }
    if (bent && drawn.role === undefined) {
      assumed.push({ field: `steel.${mark}.role`, value: 'main', unit: '', why: 'the drawing gives no role' })
    }
  }
  if (wire !== null) {
    assumed.push({
      field: 'wire',
      value: WIRE_PER_TONNE,
      unit: 'kg/t',
      why: 'tying wire by common practice; 6 to 13 kg/t are in use',
    })
  }
  return assumed
}
