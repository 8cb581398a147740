import { misplacedInserts, type Panel } from '../panel/panel.ts'
import type { Point } from '../panel/point.ts'
import { covers, type Piece } from '../panel/region.ts'
import type { Check } from '../working/check.ts'
import { InputError, type InputIssue } from '../working/issue.ts'
import { joinVerdicts, type Verdict } from '../working/verdict.ts'
import type { Assumed, Step, Worked } from '../working/worked.ts'
import { known, unknown } from '../working/worked.ts'
import type { Yard } from '../yard/yard.ts'
import { ownWeight } from './body-forces.ts'
import { type CutSection, cutSection, cutStep, evenPlate } from './cut-section.ts'
import { upliftCheck } from './lift-checks.ts'
import { balanceSteps, loadSteps, peakSteps, plateSteps, probeSteps } from './lift-working.ts'
import { proposedInserts } from './picks/index.ts'
import { type DiscMoments, type LiftedPlate, liftedPlate, SAME_POINT } from './plate/index.ts'
import { riggingOf } from './rigging-of.ts'
import { inOneLine, type Support, supportLoads } from './supports.ts'

export interface LiftReportInput {
  readonly panel: Panel
  /** Its rigging says whether legs are equalised; without it inserts are rigid points. */
  readonly yard: Yard | null
  /** On own weight; 1 assumed. */
  readonly factor?: number
  /** MPa; 30 000 assumed. */
  readonly modulus?: number
  /** 0.2 assumed. */
  readonly poisson?: number
  /** Points to look at, mm. */
  readonly probes?: readonly Point[]
  readonly from?: string
}

/** Bending at one place, factor in it; null where the loads are not known. Moments kN·m/m, sagging positive; stress MPa. */
export interface LiftBending {
  readonly mx: number | null
  readonly my: number | null
  readonly mxy: number | null
  /** Largest principal bending tension on either face, MPa. */
  readonly stress: number | null
}

/** One probe of the plate. */
export interface LiftProbe extends LiftBending {
  readonly at: Point
  /** mm, downward positive. */
  readonly deflection: number | null
  /** Whether it stands in the disc of a support or re-entrant corner: its moments and stress are then those of that disc. */
  readonly averaged: boolean
}

export interface LiftPeak extends LiftBending {
  readonly at: Point | null
  /** Estimate of its error by a second, coarser mesh, MPa. */
  readonly error: number | null
  /** Averaged over the disc of a support or re-entrant corner, or the plate's own value. */
  readonly of: 'support' | 'corner' | 'plate' | null
}

/** Moments averaged over the concrete within half a thickness of a support or re-entrant corner. */
export interface LiftAverage extends LiftBending {
  readonly of: 'support' | 'corner'
  /** Mark of the insert; empty at a corner. */
  readonly mark: string
  readonly at: Point
}

export interface LiftReport {
  /** kg */
  readonly mass: number
  /** kN, without the factor. */
  readonly weight: number
  readonly centre: Point
  /** Whether the inserts are proposed because the drawing has none. */
  readonly proposed: boolean
  /** Loads with the factor, kN; negative: that insert would have to push down. */
  readonly inserts: readonly { readonly mark: string; readonly at: Point; readonly load: number | null }[]
  readonly peak: LiftPeak
  readonly averages: readonly LiftAverage[]
  readonly probes: readonly LiftProbe[]
  readonly checks: readonly Check[]
  readonly verdict: Verdict
  readonly unknown: readonly string[]
  /** Where thin-plate theory is stretched. */
  readonly notes: readonly string[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

const DEFAULTS = { factor: 1, modulus: 30_000, poisson: 0.2 } as const

/**
 * A flat lift on the inserts as rigid points, or on equal pulls where the rigging equalises: loads, deflection and moments by
 * thin-plate bending under own weight times the factor.
 *
 * Unknown where nothing is drawn and nothing can be proposed, and where equalised legs would not hang the panel level.
 *
 * @throws InputError for fewer than three inserts, all in one line, two at one point, an insert out of place or a probe outside the
 * concrete; Error (a defect) where a solve does not balance.
 */
export function liftReport(input: LiftReportInput): LiftReport {
  const { panel, yard, probes = [], from = '' } = input
  const { factor, modulus, poisson } = { ...DEFAULTS, ...defined(input) }
  const issues = [...insertIssues(panel), ...probeIssues(panel, probes)]
  if (issues.length > 0) throw new InputError(issues, from)
  const proposed = panel.drawing.inserts === undefined
  const proposals = proposed ? proposedInserts({ panel }) : null
  const inserts: readonly Support[] =
    panel.drawing.inserts ?? (proposals?.known ? proposals.value.inserts : [])
  const force = panel.weight * factor
  const found = plateOn({ panel, yard, inserts, factor, modulus, poisson, from })
  const cut = cutSection(panel)
  const onCut = <T extends LiftBending>(bending: T): T => ({
    ...bending,
    stress: stressOn(cut, bending.stress),
  })
  const loads: Worked<readonly number[]> = found.known
    ? known(
        found.value.reactions.map((reaction) => reaction / 1000),
        [...found.working],
      )
    : found
  const checks = upliftCheck({ loads: withoutNoise(loads, force), marks: inserts.map(({ mark }) => mark) })
  const plate = found.known ? found.value : null
  const whole = probes.map((at) => readProbe(plate, at))
  return {
    mass: panel.mass,
    weight: panel.weight,
    centre: panel.centre,
    proposed,
    inserts: inserts.map(({ mark, at }, i) => ({
      mark,
      at,
      load: loads.known ? (loads.value[i] ?? null) : null,
    })),
    peak: onCut(readPeak(plate)),
    averages: plate === null ? [] : readAverages(plate, inserts).map(onCut),
    probes: whole.map(onCut),
    checks,
    verdict: joinVerdicts([
      ...checks.map(({ verdict }) => verdict),
      ...(found.known && cut.known ? [] : (['unknown'] as const)),
    ]),
    unknown: found.known
      ? cut.known
        ? []
        : [...cut.gaps, 'peak', ...(probes.length > 0 ? ['probes'] : [])]
      : [
          ...(proposals?.known === false ? proposals.gaps : found.gaps),
          'peak',
          ...(probes.length > 0 ? ['probes'] : []),
        ],
    notes: thickNotes(panel.drawing.thickness, inserts),
    working: [
      ...panel.working,
      ...(proposals?.working ?? []),
      ...loadSteps({ panel, factor, modulus, poisson }),
      ...(found.working ?? []),
      ...(plate === null ? [] : [...peakSteps(plate), ...probeSteps(whole, panel.drawing.thickness)]),
      ...(plate === null || !cut.known || cut.value.bending === 1
        ? []
        : [...cut.working, cutStep(plate.peak.stress, cut.value)]),
    ],
    assumed: [...panel.assumed, ...evenPlate(panel), ...assumedIn(input, proposed ? inserts : null)],
  }
}

/** A stress of the full section on the least one; null where either is not known. */
function stressOn(cut: Worked<CutSection>, stress: number | null): number | null {
  return stress === null || !cut.known ? null : stress / cut.value.bending
}

/** Thickness over span above which shear flexibility is no longer small beside bending: common practice, no source. */
const THICK = 0.1

/** The span is the least distance between two inserts. */
function thickNotes(thickness: number, inserts: readonly Support[]): string[] {
  const spans = inserts.flatMap((a, i) =>
    inserts.slice(i + 1).map((b) => Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1])),
  )
  const ratio = thickness / Math.min(...spans)
  if (!(ratio > THICK)) return []
  return [
    `Thickness is ${ratio.toFixed(2)} of the least span between inserts: above ${THICK} shear flexibility and the depth of the panel count, which thin-plate theory leaves out.`,
  ]
}

function defined({
  factor,
  modulus,
  poisson,
}: LiftReportInput): Partial<Record<keyof typeof DEFAULTS, number>> {
  return {
    ...(factor === undefined ? {} : { factor }),
    ...(modulus === undefined ? {} : { modulus }),
    ...(poisson === undefined ? {} : { poisson }),
  }
}

interface PlateOn {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly inserts: readonly Support[]
  /** On own weight. */
  readonly factor: number
  readonly modulus: number
  readonly poisson: number
  readonly from: string
}

function plateOn({ panel, yard, inserts, factor, modulus, poisson, from }: PlateOn): Worked<LiftedPlate> {
  const { region, drawing, centre } = panel
  const force = panel.weight * factor
  const own = ownWeight(panel)
  if (inserts.length === 0) return unknown('inserts: none drawn')
  const rigging = riggingOf(drawing.rigging, yard?.rigging ?? [])
  // Three rigid or equalised legs carry what statics say; more share by the rigging.
  const equalised = inserts.length > 3 && !('gap' in rigging) && rigging.equalised === true
  if (equalised && !('gap' in rigging) && rigging.legs !== inserts.length) {
    return unknown(
      `loads: rigging ${rigging.mark} equalises ${rigging.legs} legs, the panel has ${inserts.length} inserts`,
    )
  }
  try {
    const plate = liftedPlate({
      piece: region[0] as Piece,
      thickness: drawing.thickness,
      modulus,
      poisson,
      supports: inserts.map(({ at }) => ({ at, ...(equalised ? { equalised: 'all' } : {}) })),
      pressure: own.pressure * factor,
      forces: own.forces.map(({ at, force: one }) => ({ at, force: one * factor })),
      estimate: true,
    })
    const statics =
      inserts.length === 3 ? supportLoads({ weight: force, centre, supports: inserts, equalised }) : null
    if (statics?.known) assertSame(plate.reactions, statics.value, force)
    const working = [
      ...plateSteps(plate),
      ...(statics?.known ? statics.working : []),
      ...balanceSteps({ plate, inserts, force, centre, equalised, determinate: statics?.known === true }),
    ]
    return known(plate, working)
  } catch (fault) {
    if (!(fault instanceof InputError)) throw fault
    if (equalised && fault.issues.every(({ path }) => path === 'supports')) {
      return unknown(`loads on equalised legs: ${fault.issues.map(({ found }) => found).join('; ')}`)
    }
    const issues = fault.issues.map(({ path, ...rest }) => ({
      path: path.replace(/^supports/, 'inserts'),
      ...rest,
    }))
    throw new InputError(issues, from)
  }
}

/** Plate and statics are two ways to the same three numbers. */
function assertSame(reactions: readonly number[], loads: readonly number[], force: number): void {
  for (const [i, load] of loads.entries()) {
    const found = reactions[i]! / 1000
    const size = Math.max(force, ...loads.map(Math.abs))
    if (!(Math.abs(found - load) <= 1e-6 * size))
      throw new Error(`load ${i}: plate ${found}, statics ${load} kN`)
  }
}

/** A load this small beside the whole is rounding, not uplift. */
const NOISE = 1e-7

function withoutNoise(loads: Worked<readonly number[]>, force: number): Worked<readonly number[]> {
  if (!loads.known) return loads
  return { ...loads, value: loads.value.map((load) => (Math.abs(load) <= NOISE * force ? 0 : load)) }
}

/** N·mm/mm to kN·m/m. */
function moments({ mx, my, mxy }: { readonly mx: number; readonly my: number; readonly mxy: number }) {
  return { mx: mx / 1000, my: my / 1000, mxy: mxy / 1000 }
}

const NOT_KNOWN = { mx: null, my: null, mxy: null, stress: null } as const

function readPeak(plate: LiftedPlate | null): LiftPeak {
  if (plate === null) return { at: null, ...NOT_KNOWN, error: null, of: null }
  const { peak, peakError } = plate
  return { at: peak.at, stress: peak.stress, ...moments(peak), error: peakError, of: peak.of }
}

function readAverages(plate: LiftedPlate, inserts: readonly Support[]): LiftAverage[] {
  const average = (of: LiftAverage['of'], mark: string, found: DiscMoments): LiftAverage => ({
    of,
    mark,
    at: found.at,
    ...moments(found),
    stress: found.stress,
  })
  return [
    ...plate.supportMoments.map((found, i) => average('support', inserts[i]?.mark ?? '', found)),
    ...plate.corners.map((found) => average('corner', '', found)),
  ]
}

function readProbe(plate: LiftedPlate | null, at: Point): LiftProbe {
  const none = { at, deflection: null, ...NOT_KNOWN, averaged: false }
  const found = plate?.field.at(at) ?? null
  if (plate === null) return none
  if (found === null) throw new Error(`probe [${at[0]}, ${at[1]}]: expected a triangle there`)
  const disc = [...plate.supportMoments, ...plate.corners].find(
    (one) => Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) < plate.model.thickness / 2,
  )
  const { stress, ...rest } = disc ?? found
  return { at, deflection: found.deflection, ...moments(rest), stress, averaged: disc !== undefined }
}

function assumedIn(
  { factor, modulus, poisson, panel, yard }: LiftReportInput,
  proposed: readonly Support[] | null,
): Assumed[] {
  const because = 'not given'
  const assumed: Assumed[] = []
  if (factor === undefined) assumed.push({ field: 'factor', value: DEFAULTS.factor, unit: '', why: because })
  if (modulus === undefined)
    assumed.push({ field: 'modulus', value: DEFAULTS.modulus, unit: 'MPa', why: because })
  if (poisson === undefined)
    assumed.push({ field: 'poisson', value: DEFAULTS.poisson, unit: '', why: because })
  if (proposed !== null && proposed.length > 0) {
    const value = proposed
      .map(({ mark, at }) => `${mark} (${at[0].toFixed(0)}, ${at[1].toFixed(0)})`)
      .join(', ')
    assumed.push({ field: 'inserts', value, unit: 'mm', why: 'the drawing has none: these are proposed' })
  }
  if ('gap' in riggingOf(panel.drawing.rigging, yard?.rigging ?? [])) {
    const why = 'no rigging is known that equalises'
    assumed.push({ field: 'rigging', value: 'inserts are rigid points', unit: '', why })
  }
  return assumed
}

function insertIssues(panel: Panel): InputIssue[] {
  const { inserts } = panel.drawing
  // Missing inserts are proposed, not refused; drawn ones must be able to hold a panel level.
  if (inserts === undefined) return []
  const expected = 'three or more inserts, not all in one line'
  if (inserts.length < 3) {
    return [
      { path: 'inserts', found: `${inserts.length} insert${inserts.length === 1 ? '' : 's'}`, expected },
    ]
  }
  const issues = misplacedInserts(panel)
  for (const [i, { mark, at }] of inserts.entries()) {
    const other = inserts
      .slice(0, i)
      .find((one) => Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) < SAME_POINT)
    if (other !== undefined) {
      const found = `${mark} at the point of ${other.mark}`
      issues.push({ path: `inserts[${i}].at`, found, expected: 'a point of its own' })
    }
  }
  if (inOneLine(inserts.map(({ at }) => at))) {
    issues.push({ path: 'inserts', found: 'all inserts in one line', expected })
  }
  return issues
}

function probeIssues({ region }: Panel, probes: readonly Point[]): InputIssue[] {
  return probes.flatMap((at, index) =>
    covers(region, at)
      ? []
      : [{ path: `probe[${index}]`, found: `${at[0]},${at[1]}`, expected: 'a point of the concrete' }],
  )
}
