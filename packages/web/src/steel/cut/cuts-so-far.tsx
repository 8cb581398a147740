import type { CutFacts, CutPlanFacts } from '@castwright/record'
import { type ReactElement, useState } from 'react'
import { Button } from '../../look/index.ts'
import { useActing } from '../../panel/acting.ts'
import { mayDo } from '../../panel/entitled.ts'
import { ReasonForm } from '../../panel/reason-form.tsx'
import { usePerson, useRecord } from '../../record/index.ts'
import { takeBackCut } from './acts/take-back-cut.ts'
import { piecesText } from './piece-text.ts'

/** What was ticked off of a plan, each line with a way back: a wrong tick must not stay in stock and rack. */
export function CutsSoFar({ cuts }: Pick<CutPlanFacts, 'cuts'>): ReactElement | null {
  if (cuts.length === 0) return null
  return (
    <details>
      <summary>What is ticked off so far</summary>
      <ul className="stack">
        {cuts.map((facts) => (
          <li key={facts.entry}>
            <OneCut facts={facts} />
          </li>
        ))}
      </ul>
    </details>
  )
}

function OneCut({ facts }: { readonly facts: CutFacts }): ReactElement {
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [asked, setAsked] = useState(false)
  const { cut, bundle, by } = facts
  const wrong = cut.lost ?? []
  const about = `${cut.bars} ${cut.bars === 1 ? 'bar' : 'bars'} of ${Math.round(cut.stock)} mm`
  return (
    <>
      <p>
        {cut.line === null ? '' : `Line ${cut.line}: `}
        {about} {bundle === null ? 'of unknown origin' : `from ${bundle}`}; {piecesText(cut.pieces)}
        {wrong.length > 0 ? `; wrong: ${piecesText(wrong)}` : ''}. {by.name}.
      </p>
      {!mayDo(person.role, 'cut') ? null : asked ? (
        <ReasonForm
          label="Reason"
          button={takeBackCut.label}
          about={about}
          busy={busy}
          fault={fault}
          onCancel={() => setAsked(false)}
          onReason={(reason) =>
            void run(() => record.add(takeBackCut.draft({ facts, reason }))).then(
              (done) => done && setAsked(false),
            )
          }
        />
      ) : (
        <Button onClick={() => setAsked(true)}>
          {takeBackCut.label}
          <span className="only-read">: {about}</span>
        </Button>
      )}
    </>
  )
}
