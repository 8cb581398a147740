import type { BundleFindings, Finding, Outcome } from '@castwright/engine/steel/incoming'
import type { Verdict } from '@castwright/engine/working'
import type { ReactElement } from 'react'
import { Explain, VerdictMark } from '../../look/index.ts'

/** What an outcome asks of the floor. */
export const OUTCOME: Readonly<Record<Outcome, { readonly verdict: Verdict; readonly words: string }>> = {
  accept: { verdict: 'pass', words: 'Nothing speaks against it: it may be accepted.' },
  ask: { verdict: 'unknown', words: 'Something is open: ask before anything is cut.' },
  quarantine: { verdict: 'fail', words: 'Keep it apart: it is not what was ordered, or not fit.' },
}

/** Every finding about a bundle, with what was found and wanted. */
export function FindingsList({ found }: { readonly found: BundleFindings }): ReactElement {
  const { verdict, words } = OUTCOME[found.outcome]
  return (
    <div className="stack">
      <p className="bundle-outcome" role="status">
        <VerdictMark verdict={verdict} size={32} silent /> <strong>{words}</strong>
      </p>
      {found.next.length === 0 ? null : (
        <details>
          <summary>Still to get or to look at ({found.next.length})</summary>
          <ul>
            {found.next.map((gap) => (
              <li key={gap}>{gap}</li>
            ))}
          </ul>
        </details>
      )}
      <ul className="plain-list finding-list">
        {[...found.findings]
          .sort((a, b) => rankOf(a) - rankOf(b))
          .map((finding) => (
            <FindingRow key={finding.id} finding={finding} />
          ))}
      </ul>
    </div>
  )
}

/** What speaks against it first, then what is open, then what is only told, then what agrees. */
function rankOf({ verdict, onFail, onUnknown }: Finding): number {
  if (verdict === 'fail') return onFail === 'told' ? 2 : 0
  if (verdict === 'unknown') return onUnknown === 'told' ? 2 : 1
  return 3
}

function FindingRow({ finding }: { readonly finding: Finding }): ReactElement {
  const { what, found, wanted, verdict, unknown, note, source, working } = finding
  return (
    <li>
      <div className="finding">
        <VerdictMark verdict={verdict} />
        <div>
          <strong>{what}</strong>: {found ?? 'nothing recorded'}
          <div className="field-note">
            Wanted: {wanted}. {note ?? ''} {verdict === 'unknown' ? `Not known: ${unknown.join('; ')}.` : ''}
          </div>
          <Explain about={what} source={source} working={working} />
        </div>
      </div>
    </li>
  )
}
