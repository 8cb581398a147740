import { type Card, type CardRow, panelStep } from '@castwright/engine/steps'
import { type ReactElement, useState } from 'react'
import { Button, Caution, VerdictMark } from '../look/index.ts'
import { usePerson } from '../record/index.ts'
import { useActing } from './acting.ts'
import { CardRowView } from './card-row.tsx'
import { CarriedList } from './carried-list.tsx'
import { DefectForm } from './defect-form.tsx'
import { DefectList } from './defect-list.tsx'
import { mayDo } from './entitled.ts'
import { FinishStep } from './finish-step.tsx'
import { FinishSurface } from './finish-surface.tsx'
import { usePanelRoom } from './panel-context.ts'
import { PhotoButton } from './photo-button.tsx'
import { Photos } from './photos.tsx'
import { MOST_MET, orderRows } from './row-order.ts'
import { SheetLinks } from './sheet-links.tsx'
import { StepExtras } from './step-extras.tsx'
import { TruckClocks } from './truck-clocks.tsx'

export interface StepCardProps {
  readonly card: Card
  /** Place last tapped on the picture, mm. */
  readonly tapped: readonly [number, number] | null
  /** Whether a tap on the picture is wanted. */
  readonly onWantPlace: (wanted: boolean) => void
}

/** The card of a step: question, one line of answer, a row a check, one wide button, and the caution that closes it. */
export function StepCard({ card, tapped, onWantPlace }: StepCardProps): ReactElement {
  const { facts, state } = usePanelRoom()
  const person = usePerson()
  const photo = useActing()
  const [defect, setDefect] = useState(false)
  const step = panelStep(card.step)
  const photos = (state.photos.get(`${facts.job}/${facts.mark}`) ?? []).filter(
    (kept) => kept.step === card.step,
  )
  const wantDefect = (wanted: boolean): void => {
    setDefect(wanted)
    onWantPlace(wanted)
  }
  return (
    <div className="stack">
      {card.step === 'finish' ? <FinishSurface part="times" /> : null}
      {card.step === 'deliver' ? <TruckClocks panels={[facts]} /> : null}
      <section className="sheet" aria-labelledby="card-question">
        <header className="sheet-head">
          <h2 id="card-question">{step.question}</h2>
          <p className="sheet-note" role="status">
            {card.answer}
          </p>
        </header>
        <CheckRows card={card} hold={step.hold} />
      </section>
      <StepExtras card={card} />
      <FinishStep card={card} />
      {mayDo(person.role, 'photo') ? (
        <div className="always no-print">
          <PhotoButton step={card.step} acting={photo} />
          <Button aria-expanded={defect} onClick={() => wantDefect(!defect)}>
            Found a defect
          </Button>
        </div>
      ) : null}
      {photo.fault === null ? null : (
        <p role="alert" className="check-fault">
          {photo.fault}
        </p>
      )}
      {defect ? <DefectForm step={card.step} tapped={tapped} onLeave={() => wantDefect(false)} /> : null}
      {photos.length > 0 ? <Photos attachments={photos.flatMap(({ attachments }) => attachments)} /> : null}
      <CarriedList card={card} />
      <DefectList />
      <Caution {...step.caution} />
      <SheetLinks />
    </div>
  )
}

/** What wants a person on top; what is met below, under one line where it is much. */
function CheckRows({ card, hold }: { readonly card: Card; readonly hold: boolean }): ReactElement | null {
  const [shown, setShown] = useState(() => matchMedia('(min-width: 60rem)').matches)
  if (card.rows.length === 0) return null
  const { open, met } = orderRows(card.rows)
  const view = (row: CardRow): ReactElement => <CardRowView key={row.id} card={card} row={row} hold={hold} />
  if (met.length <= MOST_MET) return <ul className="check-list">{[...open, ...met].map(view)}</ul>
  return (
    <>
      {open.length === 0 ? null : <ul className="check-list">{open.map(view)}</ul>}
      <details className="check-met" open={shown} onToggle={(event) => setShown(event.currentTarget.open)}>
        <summary>
          <VerdictMark verdict="pass" silent /> {met.length} met
        </summary>
        <ul className="check-list">{met.map(view)}</ul>
      </details>
    </>
  )
}
