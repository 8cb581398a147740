import { codeFamily, type FamilyId } from '@castwright/engine/codes'
import { type LiftStage, peakWords, STAGE_INSERT, STAGE_PEAK, stageChecks } from '@castwright/engine/lift'
import type { CardRow, YardFacts } from '@castwright/engine/steps'
import {
  type Check,
  joinVerdicts,
  known,
  unknown,
  type Verdict,
  type Worked,
} from '@castwright/engine/working'

/** One line of the table of stages: what is compared, at which strength. */
export interface StageRow {
  readonly stage: LiftStage
  readonly peak: Check
  /** Null where no insert carries at that stage. */
  readonly insert: Check | null
  readonly verdict: Verdict
  /** What the peak is averaged over and where it stands; empty where there is none. */
  readonly averaged: string
}

/** The strength that the stages are held against. */
export interface StageStrength {
  readonly of: 'now' | 'wanted' | 'none'
  readonly strength: Worked<number>
}

/** The low edge of now where this pour has one, else what is wanted at the first lift; by the strength row of the card. */
export function stageStrength(row: CardRow | undefined): StageStrength {
  if (typeof row?.demand === 'number') return { of: 'now', strength: known(row.demand, row.working) }
  if (typeof row?.limit === 'number') return { of: 'wanted', strength: known(row.limit, row.working) }
  return {
    of: 'none',
    strength: unknown(...(row?.unknown.length ? row.unknown : ['strength at the first lift'])),
  }
}

export interface StageRowsInput {
  readonly stages: readonly LiftStage[]
  readonly family: FamilyId
  readonly limits: YardFacts['limits']
  readonly strength: Worked<number>
  /** mm */
  readonly thickness: number
}

export function stageRows({ stages, family, limits, strength, thickness }: StageRowsInput): StageRow[] {
  const checks = stageChecks({ stages, family: codeFamily(family), limits, strength, thickness })
  return stages.flatMap((stage) => {
    const peak = checks.find(({ id }) => id === `${STAGE_PEAK}${stage.id}`)
    if (peak === undefined) return []
    const insert = checks.find(({ id }) => id === `${STAGE_INSERT}${stage.id}`) ?? null
    const verdict = joinVerdicts([peak.verdict, ...(insert === null ? [] : [insert.verdict])])
    return [{ stage, peak, insert, verdict, averaged: stage.peak === null ? '' : peakWords(stage.peak) }]
  })
}
