import type { CodeFamily } from '../../codes/family.ts'
import type { DrawnInsert } from '../../panel/drawing.ts'
import { misplacedInserts, type Panel } from '../../panel/panel.ts'
import type { Point } from '../../panel/point.ts'
import type { EnteredLimit } from '../../steps/facts.ts'
import { InputError } from '../../working/issue.ts'
import { unknown, type Worked } from '../../working/worked.ts'
import type { Yard } from '../../yard/yard.ts'
import { ownWeight } from '../body-forces.ts'
import { cutSection } from '../cut-section.ts'
import { proposal } from '../proposal.ts'
import { riggingOf } from '../rigging-of.ts'
import { type Arrangement, arrangements } from '../stages/arrangement.ts'
import { type Bench, benchOf, bent, pointsOfLines } from '../stages/bending.ts'
import { liftStages } from '../stages/lift-stages.ts'
import type { LiftStage, LiftStageId, StagePeak, StageSupport } from '../stages/stage.ts'
import { stageFactor } from '../stages/stage-factor.ts'
import { type StressField, stressField, stressLevels } from '../stress-field.ts'

export interface TrialBenchInput {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly family: CodeFamily
  readonly limits: Readonly<Record<string, EnteredLimit>>
}

export interface TrialAsk {
  readonly stage: LiftStageId
  /** Places of the inserts in their order, mm. */
  readonly places: readonly Point[]
  /** Of the panel from flat while it is turned, degrees; 0 elsewhere. */
  readonly angle: number
}

/** A stage with the inserts where somebody tries them. */
export interface TrialView extends TrialAsk {
  /** `quick`: the inserts lie between the mesh points of the plate at hand; `full`: the mesh was refined at each of them. */
  readonly quality: 'quick' | 'full'
  /** On own weight, for bending; null where the family gives none and nobody entered one: loads and stresses are then those of own weight alone. */
  readonly factor: number | null
  readonly how: string
  /** Vertical loads with the factor, kN. */
  readonly supports: readonly StageSupport[]
  /** What opens or shuts; null for a panel that hangs upright, which does not bend. */
  readonly peak: StagePeak | null
  /** Greatest first, factor and angle in them. */
  readonly peaks: readonly StagePeak[]
  readonly sag: { readonly most: number; readonly least: number } | null
  /** Tension of the worse face, factor and angle in it. */
  readonly field: StressField | null
}

/** Candidates that are kept: those of a finger's way are dropped. */
const MOST_KEPT = 64

/**
 * One panel's plate, held between the moves of a finger: a move solves one more unit force and the small system of the supports. `settle`
 * makes the mesh anew with the inserts as mesh points.
 */
export class TrialBench {
  readonly panel: Panel
  /** Drawn inserts, or those proposed for a drawing without any. */
  readonly inserts: readonly DrawnInsert[]
  readonly proposed: boolean
  readonly #input: TrialBenchInput
  readonly #equalised: boolean
  #bench: Bench | null = null
  /** Places that the mesh was refined at. */
  #settled: readonly Point[] = []
  /** Levels of the contours of each stage: they stay while the finger moves, so that colours keep their meaning. */
  readonly #levels = new Map<LiftStageId, readonly number[]>()

  constructor(input: TrialBenchInput) {
    const { panel, yard } = input
    this.#input = input
    this.panel = panel
    this.proposed = (panel.drawing.inserts ?? []).length === 0
    this.inserts = this.proposed
      ? proposal({ panel }).map(({ mark, at, kind }) => ({ mark, at: [at[0], at[1]], kind }))
      : (panel.drawing.inserts ?? [])
    const rigging = riggingOf(panel.drawing.rigging, yard?.rigging ?? [])
    this.#equalised = !('gap' in rigging) && rigging.equalised === true
  }

  /** The panel with its inserts there. */
  panelWith(places: readonly Point[]): Panel {
    const inserts = this.inserts.map((insert, i) => ({
      ...insert,
      at: [...(places[i] ?? insert.at)] as [number, number],
    }))
    return { ...this.panel, drawing: { ...this.panel.drawing, inserts } }
  }

  /** Every stage of handling with the inserts there, as the plan computes them. */
  stages(places: readonly Point[]): LiftStage[] {
    const { yard, family, limits } = this.#input
    return liftStages({ panel: this.panelWith(places), yard, family, limits })
  }

  /** On the mesh at hand; interpolated where the inserts are not its points. */
  move(ask: TrialAsk): Worked<TrialView> {
    return this.#view(ask)
  }

  /** The mesh made anew for these places, unless it is theirs. */
  settle(ask: TrialAsk): Worked<TrialView> {
    if (!same(ask.places, this.#settled)) this.#bench = null
    return this.#view(ask)
  }

  #view(ask: TrialAsk): Worked<TrialView> {
    const panel = this.panelWith(ask.places)
    const misplaced = misplacedInserts(panel)
    if (misplaced.length > 0)
      return unknown(...misplaced.map(({ found, expected }) => `${found}: expected ${expected}`))
    const arrangement = arrangements(panel).find(({ id }) => id === ask.stage)
    if (arrangement === undefined) return unknown('this panel does not go through that stage')
    if (arrangement.gaps.length > 0) return unknown(...arrangement.gaps)
    const rule = stageFactor({ ...this.#input, panel, stage: ask.stage, of: 'bending' })
    const factor = rule.known ? rule.value.factor : null
    const base = { ...ask, factor, how: arrangement.how }
    if (arrangement.on === 'upright') {
      const view: TrialView = {
        ...base,
        quality: 'full',
        supports: [],
        peak: null,
        peaks: [],
        sag: null,
        field: null,
      }
      return { known: true, value: view, working: [] }
    }
    const bench = this.#benchFor(panel)
    return bench.known ? this.#bentView(bench.value, arrangement, base) : bench
  }

  #bentView(
    bench: Bench,
    arrangement: Arrangement,
    base: TrialAsk & Pick<TrialView, 'factor' | 'how'>,
  ): Worked<TrialView> {
    const cut = cutSection(this.panel)
    if (!cut.known) return cut
    const found = bent(bench, arrangement, this.#equalised)
    forget(bench)
    if (!found.known) return found
    const { supports, peaks, sag, field } = found.value
    // Of what leans only a part acts square to the panel; of what is turned, the cosine of its angle, while the loads stay.
    const tilt = arrangement.lean === null ? 1 : Math.sin((arrangement.lean * Math.PI) / 180)
    const onLoads = (base.factor ?? 1) * tilt
    const share = onLoads * turnedShare(base.angle)
    const { bending } = cut.value
    const factored = peaks.map((peak) => timesFactor({ ...peak, stress: peak.stress / bending }, share))
    const levels = this.#levels.get(base.stage) ?? stressLevels(((peaks[0]?.stress ?? 0) * onLoads) / bending)
    this.#levels.set(base.stage, levels)
    const view: TrialView = {
      ...base,
      quality: same(base.places, this.#settled) ? 'full' : 'quick',
      supports: supports.map(({ load, ...rest }) => ({
        ...rest,
        load: load === null ? null : load * onLoads,
      })),
      peak: factored[0] ?? null,
      peaks: factored,
      sag: { most: sag.most * share, least: sag.least * share },
      field: share > 1e-9 ? stressField({ field, face: 'worse', factor: share / bending, levels }) : null,
    }
    return { known: true, value: view, working: [] }
  }

  #benchFor(panel: Panel): Worked<Bench> {
    if (this.#bench !== null) return { known: true, value: this.#bench, working: [] }
    const piece = panel.region[0]
    if (piece === undefined) return unknown('concrete: nothing is left of the panel')
    const places = (panel.drawing.inserts ?? []).map(({ at }): Point => [at[0], at[1]])
    try {
      this.#bench = benchOf({
        piece,
        thickness: panel.drawing.thickness,
        ...ownWeight(panel),
        picks: places,
        along: pointsOfLines(arrangements(panel), panel.drawing.thickness),
      })
      this.#settled = places
      this.#levels.clear()
      return { known: true, value: this.#bench, working: [] }
    } catch (error) {
      if (!(error instanceof InputError)) throw error
      return unknown(
        ...error.issues.map(({ path, found, expected }) => `${path}: ${found}, expected ${expected}`),
      )
    }
  }
}

/** Part of the weight that acts square to a panel at an angle from flat, degrees: its cosine; 0 upright. */
export function turnedShare(angle: number): number {
  if (!(angle >= 0 && angle <= 90)) throw new Error(`angle ${angle}: expected 0 to 90 degrees`)
  return angle === 90 ? 0 : Math.cos((angle * Math.PI) / 180)
}

function same(a: readonly Point[], b: readonly Point[]): boolean {
  return a.length === b.length && a.every(([x, y], i) => x === b[i]![0] && y === b[i]![1])
}

function timesFactor(peak: StagePeak, factor: number): StagePeak {
  const { stress, mx, my, mxy } = peak
  return { ...peak, stress: stress * factor, mx: mx * factor, my: my * factor, mxy: mxy * factor }
}

function forget({ candidates }: Bench): void {
  for (const key of candidates.keys()) {
    if (candidates.size <= MOST_KEPT) return
    candidates.delete(key)
  }
}
