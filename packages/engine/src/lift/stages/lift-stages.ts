import type { CodeFamily } from '../../codes/family.ts'
import { misplacedInserts, type Panel } from '../../panel/panel.ts'
import { distance } from '../../panel/point.ts'
import type { EnteredLimit } from '../../steps/facts.ts'
import { InputError } from '../../working/issue.ts'
import { STATICS } from '../../working/source.ts'
import { type Known, known, type Step, unknown, type Worked } from '../../working/worked.ts'
import type { Yard } from '../../yard/yard.ts'
import { fullWeight, ownWeight } from '../body-forces.ts'
import { type CutSection, cutSection, cutStep, evenPlate } from '../cut-section.ts'
import { riggingOf } from '../rigging-of.ts'
import { EQUALISED_OFFSET, pickCentre } from '../supports.ts'
import { type Arrangement, arrangements } from './arrangement.ts'
import { type Bench, type Bent, benchOf, bent, pointsOfLines } from './bending.ts'
import { carriedByBars, cornerBars } from './corner-bars.ts'
import { hangingPeak } from './hanging.ts'
import { leastStrength } from './least-strength.ts'
import type { CornerBars, LiftStage, StagePeak, StageSupport } from './stage.ts'
import { type StageFactor, stageFactor } from './stage-factor.ts'
import { stageInserts } from './stage-inserts.ts'
import { tensionLimit } from './tension-limit.ts'

export interface LiftStagesInput {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly family: CodeFamily
  readonly limits?: Readonly<Record<string, EnteredLimit>>
}

/**
 * Every stage that this panel goes through, from drawing, yard and family alone: supports, factor, tension, insert loads and the least strength that each
 * asks for. One mesh and one factor serve all of them; what a panel of the same shape and inserts had computed is kept.
 */
export function liftStages({ panel, yard, family, limits = {} }: LiftStagesInput): LiftStage[] {
  const all = arrangements(panel)
  const bentOf = bending(panel, all)
  const misplaced = misplacedInserts(panel).map(({ found, expected }) => `${found}: expected ${expected}`)
  return all.map((arrangement): LiftStage => {
    const factor = stageFactor({ stage: arrangement.id, panel, yard, family, limits, of: 'bending' })
    const rigging = riggingOf(arrangement.rigging, yard?.rigging ?? [])
    const equalised = !('gap' in rigging) && rigging.equalised === true
    const hang = equalised && arrangement.on === 'points' ? equalShares(panel, arrangement) : 'rigid'
    const gaps = [...misplaced, ...arrangement.gaps, ...(typeof hang === 'string' ? [] : hang.gaps)]
    const found = gaps.length > 0 ? unknown(...gaps) : bentOf(arrangement, hang === 'equal')
    return stageOf({ arrangement, panel, yard, family, limits, factor, found })
  })
}

/** Equal shares hang level within this of the middle of the picks, mm; up to `EQUALISED_OFFSET` the panel is taken on rigid points. */
const LEVEL = 1

/** How equalised legs carry: alike; as rigid points where the centre of gravity stands a little off their middle; or not level at all. */
function equalShares(
  panel: Panel,
  { picks }: Arrangement,
): 'equal' | 'rigid' | { readonly gaps: readonly string[] } {
  if (picks.length < 4) return 'rigid'
  const middle = pickCentre(picks)
  const offset = distance(middle, panel.centre)
  if (offset <= LEVEL) return 'equal'
  const radius = Math.min(...picks.map(({ at }) => distance(middle, at)))
  return offset <= EQUALISED_OFFSET * radius
    ? 'rigid'
    : {
        gaps: [
          `equalised legs: the centre of gravity is ${Math.round(offset)} mm off the middle of the inserts, the panel would not hang level`,
        ],
      }
}

interface StageOfInput extends Required<LiftStagesInput> {
  readonly arrangement: Arrangement
  readonly factor: Worked<StageFactor>
  readonly found: Worked<KeptBent | null>
}

function stageOf(input: StageOfInput): LiftStage {
  const { arrangement, panel, family, limits, factor, found } = input
  const { id, step, name, how, assumed, lean } = arrangement
  const tilt = lean === null ? 1 : Math.sin((lean * Math.PI) / 180)
  const cut = cutSection(panel)
  const gaps = [
    ...(found.known ? [] : found.gaps),
    ...(factor.known ? [] : factor.gaps),
    ...(cut.known ? [] : cut.gaps),
  ]
  const base = {
    id,
    step,
    name,
    how,
    angle: lean === null ? (arrangement.on === 'upright' ? 90 : 0) : 90 - lean,
    assumed,
  }
  const f = factor.known ? factor.value.factor : null
  const carried = stageInserts({ ...input, bent: found.known ? found.value : null })
  const empty: LiftStage = {
    ...base,
    assumed: [...assumed, ...evenPlate(panel), ...carried.assumed],
    factor: f,
    factorSource: factor.known ? factor.value.source : null,
    supports:
      found.known && found.value !== null ? found.value.supports.map((one) => ({ ...one, load: null })) : [],
    peak: null,
    peaks: [],
    corners: [],
    disc: null,
    sag: null,
    leastStrength: null,
    inserts: carried.inserts,
    ...(carried.hung === undefined ? {} : { hung: carried.hung }),
    working: factor.known ? factor.working : [],
    unknown: [...new Set(gaps)],
  }
  if (!found.known || f === null || !factor.known) return empty
  const whole = found.value === null ? hung(input, f) : bentPeaks(found.value, f * tilt)
  if (!whole.known) return { ...empty, unknown: whole.gaps }
  const carrying = { ...empty, supports: loaded(found.value, f * (lean === null ? 1 : tilt)) }
  if (!cut.known) return carrying
  const tension = onSection(whole, cut)
  const corners = tension.value.flatMap((peak): Worked<CornerBars>[] =>
    peak.of === 'corner' ? [cornerBars({ drawing: panel.drawing, peak })] : [],
  )
  const held = corners.flatMap((one) => (one.known ? [one.value] : []))
  const governing = tension.value[0] ?? null
  const least = leastOf(tension.value, held, (strength) =>
    tensionLimit({ family, limits, strength, thickness: panel.drawing.thickness }),
  )
  const { value } = found
  return {
    ...carrying,
    peak: governing,
    peaks: tension.value.filter(
      (peak, i) =>
        i === 0 || peak.of === 'pick' || peak.of === 'plate' || peak.stress > tension.value[0]!.stress / 2,
    ),
    corners: held,
    disc:
      value === null || arrangement.on !== 'points'
        ? null
        : { at: value.disc.at, stress: (value.disc.stress * f * tilt) / cut.value.bending },
    sag: value === null ? null : { most: value.sag.most * f * tilt, least: value.sag.least * f * tilt },
    leastStrength: least,
    working: [
      ...factor.working,
      ...(value === null ? [] : statics(input, value, f * tilt)),
      ...tension.working,
      ...corners.flatMap((one) => (one.known ? one.working : [])),
    ],
  }
}

function loaded(bent: KeptBent | null, factor: number): StageSupport[] {
  return (bent?.supports ?? []).map((one) => ({ ...one, load: one.load === null ? null : one.load * factor }))
}

/** Tensions of the full section on the least section that void formers and ducts leave, greatest first. */
function onSection(found: Known<StagePeak[]>, cut: Known<CutSection>): Known<StagePeak[]> {
  const { bending, pulled } = cut.value
  const share = ({ of }: StagePeak): number => (of === 'section' ? pulled : bending)
  const peaks = found.value
    .map((peak) => (share(peak) === 1 ? peak : { ...peak, stress: peak.stress / share(peak) }))
    .sort((a, b) => b.stress - a.stress)
  const [worst] = peaks
  if (worst === undefined || share(worst) === 1) return { ...found, value: peaks }
  const step = cutStep(worst.stress * share(worst), { bending: share(worst) })
  return known(peaks, [...found.working, ...cut.working, step])
}

/** Least strength that holds every tension; a corner whose bars carry it does not count. */
function leastOf(
  peaks: readonly StagePeak[],
  corners: readonly CornerBars[],
  limitAt: (strength: number) => Worked<number>,
): number | null {
  const counted = peaks.filter((peak) => !carriedByBars(peak, corners))
  const worst = counted[0]
  return worst === undefined ? 0 : leastStrength(worst.stress, limitAt).strength
}

function hung({ arrangement, panel }: StageOfInput, factor: number): Worked<StagePeak[]> {
  const piece = panel.region[0]
  if (piece === undefined || arrangement.about === null) return unknown('edge that hangs lowest')
  const peak = hangingPeak({
    piece,
    thickness: panel.drawing.thickness,
    pressure: (panel.bodies.length === 0 ? panel.weight / panel.faceArea : fullWeight(panel)) * factor,
    about: arrangement.about,
    picks: arrangement.picks,
  })
  return peak.known ? known([peak.value], peak.working) : peak
}

function bentPeaks(bent: KeptBent, factor: number): Worked<StagePeak[]> {
  const peaks = bent.peaks.map((peak) => ({
    ...peak,
    stress: peak.stress * factor,
    mx: peak.mx * factor,
    my: peak.my * factor,
    mxy: peak.mxy * factor,
  }))
  return known(peaks, [])
}

/** What an engineer follows by hand: load, equilibrium, and the governing moment to its stress. */
function statics({ panel, arrangement }: StageOfInput, bent: KeptBent, factor: number): Step[] {
  const thickness = panel.drawing.thickness
  const pressure = panel.weight / panel.faceArea
  const sum = bent.supports.reduce((all, { load }) => all + (load ?? 0), 0)
  const steps: Step[] = [
    {
      symbol: 'q',
      formula: 'W f / A',
      given: { W: panel.weight, f: factor, A: panel.faceArea },
      result: pressure * factor,
      unit: 'kN/m²',
      source: STATICS,
      note: `${arrangement.lean === null ? 'square to the panel' : 'f holds the sine of the lean'}${panel.bodies.length === 0 ? '' : '; even here, with void formers and ducts taken off where they lie in the plate'}`,
    },
    {
      symbol: 'ΣR',
      formula: 'Σ of the support loads by the plate, factor 1',
      given: { supports: bent.supports.length, nodes: bent.nodes },
      result: sum,
      unit: 'kN',
      source: STATICS,
      by: 'search',
      note: `thin-plate finite elements; own weight is ${panel.weight.toFixed(3)} kN`,
    },
  ]
  const first = bent.peaks[0]
  if (first !== undefined) {
    const moment = (first.stress * factor * thickness ** 2) / 6000
    steps.push(
      {
        symbol: 'm',
        formula: WORDS[first.of],
        given: {
          x: first.at[0],
          y: first.at[1],
          width: first.width,
          mx: first.mx * factor,
          my: first.my * factor,
          mxy: first.mxy * factor,
        },
        result: moment,
        unit: 'kN·m/m',
        source: STATICS,
        by: 'search',
        note: `${first.face === 'top' ? 'hogging, top' : 'sagging, mould'} face in tension`,
      },
      {
        symbol: 'σ',
        formula: '6000 m / t²',
        given: { m: moment, t: thickness },
        result: (6000 * moment) / thickness ** 2,
        unit: 'MPa',
        source: STATICS,
      },
    )
  }
  return steps
}

const WORDS: Readonly<Record<StagePeak['of'], string>> = {
  pick: 'plate moment averaged over the strip at the pick',
  plate: 'greatest principal moment of the plate',
  corner: 'principal moment averaged over a disc of one thickness at the re-entrant corner',
  section: 'moment of the section',
}

/** Bending of each arrangement of a panel under factor 1; null for what hangs and does not bend as a plate. */
function bending(
  panel: Panel,
  all: readonly Arrangement[],
): (arrangement: Arrangement, equalised: boolean) => Worked<KeptBent | null> {
  const kept = keptFor(panel)
  let bench: Bench | null = null
  return (arrangement, equalised) => {
    if (arrangement.on === 'upright') return known(null, [])
    const key = JSON.stringify([arrangement.picks.map(({ at }) => at), arrangement.lines, equalised])
    const before = kept.get(key)
    if (before !== undefined) return before
    let found: Worked<KeptBent>
    try {
      bench ??= makeBench(panel, all)
      found = withoutField(bent(bench, arrangement, equalised))
    } catch (error) {
      if (!(error instanceof InputError)) throw error
      found = unknown(
        ...error.issues.map(
          ({ path, found: came, expected }) => `plate: ${path}: ${came}; expected ${expected}`,
        ),
      )
    }
    kept.set(key, found)
    return found
  }
}

/** What is kept of a bent panel: figures, not its mesh. */
type KeptBent = Omit<Bent, 'field'>

function withoutField(found: Worked<Bent>): Worked<KeptBent> {
  if (!found.known) return found
  const { field: _, ...kept } = found.value
  return { ...found, value: kept }
}

function makeBench(panel: Panel, all: readonly Arrangement[]): Bench {
  const piece = panel.region[0]
  if (piece === undefined)
    throw new InputError([{ path: 'outline', found: 'no concrete', expected: 'one piece' }])
  return benchOf({
    piece,
    thickness: panel.drawing.thickness,
    ...ownWeight(panel),
    picks: (panel.drawing.inserts ?? []).map(({ at }) => at),
    along: pointsOfLines(all, panel.drawing.thickness),
  })
}

/** Panels whose bending is kept; the oldest goes first. A few numbers each: meshes and factors are not kept. */
const KEPT = 4000
const keptPanels = new Map<string, Map<string, Worked<KeptBent>>>()

function keptFor({ drawing, density }: Panel): Map<string, Worked<KeptBent>> {
  const { outline, openings, voids, ducts, thickness, inserts, handling } = drawing
  const shape = JSON.stringify([
    outline,
    openings?.map((one) => one.outline),
    voids,
    ducts,
    thickness,
    inserts,
    handling,
    density,
  ])
  const known = keptPanels.get(shape)
  if (known !== undefined) return known
  const made = new Map<string, Worked<KeptBent>>()
  keptPanels.set(shape, made)
  for (const oldest of keptPanels.keys()) {
    if (keptPanels.size <= KEPT) break
    keptPanels.delete(oldest)
  }
  return made
}
