import type { SteelRules } from '../codes/steel-rules.ts'
import type { Drawing } from '../panel/drawing.ts'
import type { Ring } from '../panel/point.ts'
import { type Check, compare } from '../working/check.ts'
import { commonPractice, enteredBy, GEOMETRY, type Source } from '../working/source.ts'
import type { Step, Worked } from '../working/worked.ts'
import { NO_RULE } from './laid-out/bend-of.ts'
import { openingZones } from './laid-out/opening-zones.ts'
import { STAGGER } from './lapped-line.ts'
import type { PlannedMat } from './mats.ts'

/** What a mat as laid says about its spacing, its laps, the clear distance and the cover of its bars, by step. */
export function matChecks(
  mats: readonly PlannedMat[],
  drawing: Drawing,
  rules: SteelRules,
): { readonly cage: readonly Check[]; readonly set: readonly Check[] } {
  return {
    cage: mats.flatMap((mat) => [...spacingCheck(mat), ...lapChecks(mat, drawing)]),
    set: mats.flatMap((mat) => clearChecks(mat, drawing, rules)),
  }
}

function spacingCheck({ key, mat, laid }: PlannedMat): Check[] {
  const working: Step[] =
    laid?.spacing == null || !laid.even
      ? []
      : [
          {
            symbol: 's',
            formula: 'W / (n − 1)',
            given: { W: laid.spacing * (laid.rows - 1), n: laid.rows },
            result: laid.spacing,
            unit: 'mm',
            source: GEOMETRY,
            note: 'W from first to last bar',
          },
        ]
  const missing =
    laid === null
      ? ['cover.edge: cover at edges and openings, mm']
      : laid.rows === 0
        ? ['no room for a bar within the edge cover']
        : []
  return [
    compare({
      id: `spacing:${key}`,
      step: 'cage',
      what: `Spacing of the ${key} mat as laid`,
      demand: laid === null ? null : (laid.spacing ?? 0),
      limit: mat.spacing,
      unit: 'mm',
      sense: 'at most',
      source: enteredBy('the drawing'),
      working,
      missing,
      ...(laid !== null && laid.dropped > 0
        ? { note: `${laid.dropped} pieces shorter than ten diameters are left out` }
        : {}),
    }),
  ]
}

function lapChecks(planned: PlannedMat, drawing: Drawing): Check[] {
  const { key, codeLap, lap, laps, unlapped, stock } = planned
  const asDrawn = drawing.lap?.length
  // With no stock on record nobody knows whether these bars are lapped: the drawing's lap is still held against the code.
  if (laps === 0 && unlapped === 0 && !(stock === null && asDrawn !== undefined)) return []
  const code: Worked<number> =
    codeLap.known && codeLap.value.length !== null
      ? { known: true, value: codeLap.value.length, working: codeLap.working }
      : { known: false, gaps: codeLap.known ? codeLap.value.gaps : codeLap.gaps }
  const checks = [
    compare({
      id: `lap:${key}`,
      step: 'cage',
      what: `Lap of the ${key} bars`,
      demand: lap,
      limit: code.known ? code.value : null,
      unit: 'mm',
      sense: 'at least',
      source: codeLap.known ? codeLap.value.source : NO_RULE,
      working: [...sharedWorking(planned), ...(code.known ? code.working : [])],
      missing: [
        ...(code.known ? [] : code.gaps),
        ...(unlapped > 0 && lap !== null
          ? [`lap: ${unlapped} rows longer than the stock cannot be built with a lap of ${lap} mm`]
          : []),
      ],
      note: `${asDrawn === undefined ? 'by the code, rounded up to 10 mm' : 'as drawn'}${
        planned.share === null ? '' : `; ${shareText(planned.share)} of the bars lapped at one section`
      }${besideText(lapsBesideOpenings(planned, drawing))}`,
    }),
  ]
  if (planned.crowded > 0) {
    checks.push(
      compare({
        id: `beside:${key}`,
        step: 'cage',
        what: `Lapped ${key} bars without room beside each other`,
        demand: planned.crowded,
        limit: 0,
        unit: '',
        sense: 'at most',
        source: GEOMETRY,
        note: 'the edge cover leaves no room for a second bar beside the row',
      }),
    )
  }
  const apart = nearestLaps(planned)
  if (apart !== null && lap !== null) {
    checks.push(
      compare({
        id: `stagger:${key}`,
        step: 'cage',
        what: `Laps of neighbouring ${key} bars apart, middle to middle`,
        demand: apart,
        limit: STAGGER * lap,
        unit: 'mm',
        sense: 'at least',
        source: STAGGERED,
        working: [
          {
            symbol: 'a',
            formula: '1.3 · l0',
            given: { l0: lap },
            result: STAGGER * lap,
            unit: 'mm',
            source: STAGGERED,
          },
        ],
      }),
    )
  }
  return checks
}

function besideText(count: number): string {
  if (count === 0) return ''
  return `; ${count} ${count === 1 ? 'lap has' : 'laps have'} no place away from an opening`
}

/** Laps that reach into the stretches beside openings because their rows leave no other place. */
function lapsBesideOpenings({ rows, mat, lap }: PlannedMat, drawing: Drawing): number {
  if (lap === null) return 0
  const openings = (drawing.openings ?? []).map(({ outline }) => outline as unknown as Ring)
  return rows.reduce((sum, { line, cut }) => {
    if (cut.laps.length === 0) return sum
    const zones = openingZones({ openings, direction: mat.direction, at: line.at, lap })
    const near = zones.filter(([low, high]) => high > line.from && low < line.to)
    const beside = cut.laps.filter((at) =>
      near.some(([low, high]) => at + lap / 2 > low + 1e-6 && at - lap / 2 < high - 1e-6),
    )
    return sum + beside.length
  }, 0)
}

function sharedWorking({ share, laps }: PlannedMat): Step[] {
  if (share === null) return []
  return [
    {
      symbol: 'ρ1',
      formula: 'rows lapped at the worst section / rows through it',
      given: { laps },
      result: share,
      unit: '%',
      source: GEOMETRY,
      by: 'search',
      note: 'counted over all rows of the mat',
    },
  ]
}

/** Up, so that a share never reads smaller than it counts. */
function shareText(share: number): string {
  return `${Math.ceil(share - 1e-9)} %`
}

const STAGGERED: Source = { standard: 'EN 1992-1-1:2004', clause: '8.7.2(3)', status: 'seen' }

/** Least distance along the bars between laps of neighbouring rows, mm; null where no two rows both have laps. */
function nearestLaps({ rows }: PlannedMat): number | null {
  const byRow = new Map<number, number[]>()
  for (const { line, cut } of rows) byRow.set(line.row, [...(byRow.get(line.row) ?? []), ...cut.laps])
  let least: number | null = null
  for (const [row, laps] of byRow) {
    const next = byRow.get(row + 1) ?? []
    for (const a of laps)
      for (const b of next) least = Math.min(least ?? Number.POSITIVE_INFINITY, Math.abs(a - b))
  }
  return least
}

function clearChecks(
  { key, mat, laid, laps, cover, clear: found }: PlannedMat,
  drawing: Drawing,
  rules: SteelRules,
): Check[] {
  const aggregate = drawing.concrete.aggregate ?? null
  const clear = rules.clearSpacing({ diameter: mat.diameter, aggregate })
  const spacing = laid?.spacing ?? mat.spacing
  const between = found ?? spacing - mat.diameter
  const gap: Step = {
    symbol: 'gap',
    formula: 's − d − e',
    given: { s: spacing, d: mat.diameter, e: spacing - mat.diameter - between },
    result: between,
    unit: 'mm',
    source: GEOMETRY,
    note: laps > 0 ? 'e: how far lapped bars beside their rows narrow it' : 'between bars',
  }
  const checks = [
    compare({
      id: `clear:${key}`,
      step: 'set',
      what: `Clear between the ${key} bars`,
      demand: between,
      limit: clear.known ? clear.value : null,
      unit: 'mm',
      sense: 'at least',
      source: clear.known ? (clear.working.at(-1)?.source ?? NO_RULE) : NO_RULE,
      working: clear.known ? [gap, ...clear.working] : [gap],
      missing: clear.known ? [] : clear.gaps,
    }),
  ]
  if (cover === null) {
    checks.push(
      coverCheck(key, null, null, commonPractice('cover is the designer’s'), [
        `cover.${mat.layer}: cover to the first mat, mm`,
      ]),
    )
  } else if (rules.bondCover !== null) {
    const bond = rules.bondCover({ diameter: mat.diameter, aggregate })
    checks.push(
      coverCheck(
        key,
        cover,
        bond.known ? bond.value : null,
        bond.known ? (bond.working[0]?.source ?? NO_RULE) : NO_RULE,
        bond.known ? [] : bond.gaps,
        bond.known ? bond.working : [],
      ),
    )
  }
  return checks
}

function coverCheck(
  key: string,
  cover: number | null,
  limit: number | null,
  source: Source,
  missing: readonly string[],
  working: readonly Step[] = [],
): Check {
  return compare({
    id: `bond-cover:${key}`,
    step: 'set',
    what: `Cover of the ${key} bars for bond and placing`,
    demand: cover,
    limit,
    unit: 'mm',
    sense: 'at least',
    source,
    working,
    missing,
    note: 'exposure and fire are the designer’s',
  })
}
