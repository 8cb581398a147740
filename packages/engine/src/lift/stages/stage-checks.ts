import type { CodeFamily } from '../../codes/family.ts'
import type { EnteredLimit } from '../../steps/facts.ts'
import { type Check, compare } from '../../working/check.ts'
import { STATICS } from '../../working/source.ts'
import { type Known, unknown, type Worked } from '../../working/worked.ts'
import { carriedByBars } from './corner-bars.ts'
import { insertLimit } from './insert-limit.ts'
import { leastStrength } from './least-strength.ts'
import type { LiftCondition, LiftStage, LiftStageId, StageInsert, StagePeak } from './stage.ts'
import { tensionLimit } from './tension-limit.ts'

export interface StageChecksInput {
  readonly stages: readonly LiftStage[]
  readonly family: CodeFamily
  readonly limits?: Readonly<Record<string, EnteredLimit>>
  /** Strength of the concrete at the hour, MPa: the one wanted, or the low edge of now. */
  readonly strength: Worked<number>
  /** mm */
  readonly thickness: number
}

/** Begin of the ids of what a stage compares. */
export const STAGE_PEAK = 'lift-peak:'
export const STAGE_INSERT = 'lift-insert:'

/** Every stage at a strength: its tension against the family's limit, and its most used insert against rating and resistance. */
export function stageChecks(input: StageChecksInput): Check[] {
  return input.stages.flatMap((stage) => [
    peakCheck(stage, input),
    ...(stage.inserts.length > 0 ? [insertCheck(stage, input)] : []),
  ])
}

function peakCheck(stage: LiftStage, { family, limits = {}, strength, thickness }: StageChecksInput): Check {
  const limit = strength.known
    ? tensionLimit({ family, limits, strength: strength.value, thickness })
    : unknown(...strength.gaps)
  const counted = countedPeak(stage)
  const gaps = [...stage.unknown, ...(limit.known ? [] : limit.gaps)]
  // No tension found is no tension of zero.
  if (stage.peak === null && gaps.length === 0) gaps.push(`tension, ${inWords(stage.name)}: none was found`)
  return compare({
    id: `${STAGE_PEAK}${stage.id}`,
    step: stage.step,
    what: `Tension of the panel, ${inWords(stage.name)}`,
    demand: stage.peak === null ? null : (counted?.stress ?? 0),
    limit: limit.known ? limit.value : null,
    unit: 'MPa',
    sense: 'at most',
    source: (limit.known && limit.working.at(-1)?.source) || STATICS,
    working: [
      ...stage.working,
      ...(strength.known ? strength.working : []),
      ...(limit.known ? limit.working : []),
    ],
    assumed: stage.assumed,
    missing: gaps,
    note: peakNote(stage, counted),
  })
}

/** The greatest tension that the concrete has to hold: a corner that its bars carry is passed over. */
export function countedPeak({ peaks, corners }: Pick<LiftStage, 'peaks' | 'corners'>): StagePeak | null {
  return peaks.find((peak) => !carriedByBars(peak, corners)) ?? null
}

function peakNote(stage: LiftStage, counted: StagePeak | null): string {
  if (counted === null) return `${stage.how}.`
  const bars =
    stage.peak !== counted
      ? ' A re-entrant corner above it is carried by the bars drawn across it, cracked.'
      : ''
  return `${stage.how}; ${peakWords(counted)}.${bars}`
}

/** Where a tension stands and what it is averaged over. Example: `at A, averaged over a strip of 1500 mm`. */
export function peakWords({ of, mark, at, width }: StagePeak): string {
  const place = `at ${Math.round(at[0])}, ${Math.round(at[1])} mm`
  switch (of) {
    case 'pick':
      return `at ${mark}, averaged over a strip of ${Math.round(width)} mm`
    case 'corner':
      return `re-entrant corner ${place}, averaged over a disc of ${Math.round(width)} mm`
    case 'section':
      return `the section ${place}, ${Math.round(width)} mm of concrete`
    case 'plate':
      return width > 0
        ? `over the support ${place}, averaged over ${Math.round(width)} mm`
        : `the plate’s own value ${place}`
  }
}

function inWords(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1)
}

function insertCheck(stage: LiftStage, { family, limits = {}, strength }: StageChecksInput): Check {
  const base = {
    id: `${STAGE_INSERT}${stage.id}`,
    step: stage.step,
    what: `Working load of the most used insert, ${inWords(stage.name)}`,
    unit: 'kN',
    sense: 'at most',
    source: STATICS,
  } as const
  const gaps = new Set(stage.inserts.flatMap((insert) => insert.gaps))
  if (!strength.known) for (const gap of strength.gaps) gaps.add(gap)
  let worst: { readonly insert: StageInsert; readonly limit: Known<number>; readonly ratio: number } | null =
    null
  for (const insert of stage.inserts) {
    if (!strength.known || insert.load === null) continue
    const limit = insertLimit({ insert, family, limits, strength: strength.value })
    if (!limit.known) for (const gap of insert.gaps.length > 0 ? [] : limit.gaps) gaps.add(gap)
    else if (worst === null || insert.load / limit.value > worst.ratio) {
      worst = { insert, limit, ratio: insert.load / limit.value }
    }
  }
  return compare({
    ...base,
    demand: worst?.insert.load ?? greatest(stage.inserts),
    limit: worst?.limit.value ?? null,
    working: worst === null ? [] : [...worst.insert.working, ...worst.limit.working],
    source: worst?.limit.working.at(-1)?.source ?? STATICS,
    missing: [...gaps],
    note:
      worst === null
        ? ''
        : `${worst.insert.mark}: ${worst.insert.from}; the maker’s sheet and the engineer outrank this.`,
  })
}

function greatest(inserts: readonly StageInsert[]): number | null {
  const loads = inserts.flatMap(({ load }) => load ?? [])
  return loads.length > 0 ? Math.max(...loads) : null
}

/** What must hold at every stage, each with the least strength at which it does. */
export function liftConditions({
  stages,
  family,
  limits = {},
  thickness,
}: Omit<StageChecksInput, 'strength'>): LiftCondition[] {
  return stages.flatMap((stage): LiftCondition[] => {
    const counted = countedPeak(stage)
    const peak =
      stage.unknown.length > 0 || stage.peak === null
        ? { strength: null, never: false, gaps: stage.unknown }
        : leastStrength(counted?.stress ?? 0, (strength) =>
            tensionLimit({ family, limits, strength, thickness }),
          )
    return [
      {
        check: `${STAGE_PEAK}${stage.id}`,
        stage: stage.id,
        what: `Tension, ${inWords(stage.name)}`,
        ...peak,
      },
      ...stage.inserts.map(
        (insert): LiftCondition => ({
          check: `${STAGE_INSERT}${stage.id}:${insert.mark}`,
          stage: stage.id,
          what: `Insert ${insert.mark}, ${inWords(stage.name)}`,
          ...insertStrength(insert, family, limits),
        }),
      ),
    ]
  })
}

function insertStrength(
  insert: StageInsert,
  family: CodeFamily,
  limits: Readonly<Record<string, EnteredLimit>>,
): Pick<LiftCondition, 'strength' | 'never' | 'gaps'> {
  if (insert.load === null || insert.gaps.length > 0)
    return { strength: null, never: false, gaps: insert.gaps }
  return leastStrength(insert.load, (strength) => insertLimit({ insert, family, limits, strength }))
}

/** Stages whose checks are conditions of the first lift. */
export const STRIP_STAGES: readonly LiftStageId[] = ['release', 'turn', 'hang']
