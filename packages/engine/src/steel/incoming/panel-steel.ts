import type { SteelRules } from '../../codes/steel-rules.ts'
import { joinVerdicts, type Verdict } from '../../working/verdict.ts'
import type { Bundle } from './bundle.ts'
import { type BundleDecision, bundleStanding } from './standing.ts'

/** Bars of one bundle that went into a panel. */
export interface PanelSteel {
  /** Name of the bundle in the yard; null where an offcut of unknown origin was cut. */
  readonly bundle: string | null
  /** As it came; null where it is not on record. */
  readonly came: Bundle | null
  readonly decisions: readonly BundleDecision[]
  readonly pieces: readonly {
    readonly mark: string | null
    readonly length: number | null
    readonly count: number | null
  }[]
  /** Entries that say so: cuts, the bundle and its decisions. */
  readonly entries: readonly string[]
  /** Why an acceptance of the bundle says nothing of this steel. */
  readonly doubt?: string
}

export interface SteelAccepted {
  readonly verdict: Verdict
  readonly accepted: number
  /** What keeps it from a pass, one sentence a bundle. */
  readonly against: readonly string[]
}

/** Whether every bundle that went into a panel stands accepted. Kept apart fails; not decided or not traced is not known. */
export function steelAccepted(steel: readonly PanelSteel[], rules: SteelRules): SteelAccepted {
  const said = steel.map((one): { readonly verdict: Verdict; readonly why: string | null } => {
    if (one.bundle === null) return { verdict: 'unknown', why: 'Bars cut from an offcut of unknown origin.' }
    if (one.came === null) return { verdict: 'unknown', why: `Bundle ${one.bundle} is not on record.` }
    const { standing, why } = bundleStanding({ bundle: one.came, decisions: one.decisions, rules })
    if (one.doubt !== undefined && standing !== 'apart') return { verdict: 'unknown', why: one.doubt }
    const verdict = standing === 'accepted' ? 'pass' : standing === 'apart' ? 'fail' : 'unknown'
    return { verdict, why: why === null ? null : `Bundle ${one.bundle}: ${why}` }
  })
  return {
    verdict: joinVerdicts(said.map(({ verdict }) => verdict)),
    accepted: said.filter(({ verdict }) => verdict === 'pass').length,
    against: said.flatMap(({ why }) => (why === null ? [] : [why])),
  }
}
