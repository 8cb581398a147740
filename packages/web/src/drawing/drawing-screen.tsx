import { useNavigate, useParams } from '@tanstack/react-router'
import { type ReactElement, useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { Button, Notice, Sheet, useTitle } from '../look/index.ts'
import { useActing } from '../panel/acting.ts'
import { mayDo } from '../panel/entitled.ts'
import '../panel/panel.css'
import { usePanel, usePerson, useRecord } from '../record/index.ts'
import type { DraftAct } from './acts/act.ts'
import { clearDraft } from './acts/clear-draft.ts'
import { goOn } from './acts/go-on.ts'
import { takeDrawing } from './acts/take-drawing.ts'
import { ConcretePart } from './concrete-part.tsx'
import { draftOf, EMPTY_DRAFT } from './draft.ts'
import { DraftContext, type DraftRoom } from './draft-context.ts'
import { readDraft } from './draft-drawing.ts'
import { DraftPicture } from './draft-picture.tsx'
import './drawing.css'
import { HandlingPart } from './handling-part.tsx'
import { type History, perform, redo, startHistory, undo } from './history.ts'
import { ImportFile } from './import-file.tsx'
import { InsertPart } from './insert-part.tsx'
import { forgetDraft, keepDraft, readKeptDraft } from './kept-draft.ts'
import { LiftingPart } from './lifting-part.tsx'
import { OpeningPart } from './opening-part.tsx'
import { OutlinePart } from './outline-part.tsx'
import { PanelPart } from './panel-part.tsx'
import { nextRevision } from './revision.ts'
import { saveDrawing } from './save-drawing.ts'
import { SteelPart } from './steel-part.tsx'
import { VoidPart } from './void-part.tsx'

/** A drawing entered by hand: a new panel, or a new revision of one. */
export function DrawingScreen(): ReactElement {
  const params = useParams({ strict: false })
  const facts = usePanel(params.job ?? '', params.mark ?? '')
  const person = usePerson()
  const revises = params.job !== undefined && params.mark !== undefined
  useTitle(revises ? `Drawing of ${params.mark}` : 'New drawing')
  if (revises && facts?.drawing == null) {
    return (
      <div className="narrow">
        <Sheet title={`No panel ${params.mark} in ${params.job}`} note="Enter it as a new drawing." />
      </div>
    )
  }
  return (
    <>
      {mayDo(person.role, 'drawing') ? null : (
        <div className="narrow">
          <Notice kind="unknown" title="You can look, not record">
            Drawings are recorded by a lead or an engineer.
          </Notice>
        </div>
      )}
      <DrawingForm
        key={`${params.job ?? ''}/${params.mark ?? ''}`}
        job={params.job ?? ''}
        mark={params.mark ?? ''}
        revises={revises}
      />
    </>
  )
}

interface DrawingFormProps {
  readonly job: string
  readonly mark: string
  readonly revises: boolean
}

function DrawingForm({ job, mark, revises }: DrawingFormProps): ReactElement {
  const inForce = usePanel(job, mark)
  const panel = revises ? `${job}/${mark}` : 'new'
  const [before] = useState(() => readKeptDraft(localStorage, panel))
  const [history, setHistory] = useState<History>(() => {
    const start = startHistory(
      inForce?.drawing == null
        ? EMPTY_DRAFT
        : { ...draftOf(inForce.drawing), job, mark, revision: nextRevision(inForce.revision) },
    )
    return before === null ? start : perform(start, goOn, before)
  })
  useEffect(() => {
    if (history.past.length > 0) keepDraft(localStorage, panel, history.draft)
    else forgetDraft(localStorage, panel)
  }, [history, panel])
  const { draft } = history
  const facts = usePanel(draft.job.trim(), draft.mark.trim())
  const person = usePerson()
  const record = useRecord()
  const navigate = useNavigate()
  const { busy, fault: saveFault, run } = useActing()
  const [touched, setTouched] = useState<ReadonlySet<string>>(new Set())
  const [all, setAll] = useState(false)
  const read = useMemo(() => readDraft(draft), [draft])
  const saved =
    read.drawing === null
      ? null
      : saveDrawing({ drawing: read.drawing, job: draft.job.trim(), facts, revises })
  const act = useCallback(
    <Input,>(done: DraftAct<Input>, input: Input) => setHistory((before) => perform(before, done, input)),
    [],
  )
  const room: DraftRoom = {
    draft,
    act,
    left: useCallback((field) => setTouched((before) => new Set(before).add(field)), []),
    fault: (field) => {
      if (!all && !touched.has(field)) return null
      const own = saved !== null && !saved.ok && saved.field === field ? saved.fault : null
      return (
        own ??
        read.faults.get(field) ??
        (field === 'job' && draft.job.trim() === '' ? 'Missing: the mark of the job.' : null)
      )
    },
  }
  const form = useRef<HTMLFormElement>(null)
  const save = (): void => {
    setAll(true)
    if (saved?.ok !== true) {
      // The fields show what is wrong after this turn; the first of them takes the focus.
      setTimeout(() => form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus(), 0)
      return
    }
    void run(() => record.add(saved.draft)).then((ok) => {
      if (!ok) return
      forgetDraft(localStorage, panel)
      void navigate({
        to: '/panel/$job/$mark',
        params: { job: draft.job.trim(), mark: draft.mark.trim() },
      })
    })
  }
  const wrong = read.faults.size + (saved !== null && !saved.ok ? 1 : 0)
  return (
    <DraftContext value={room}>
      <div className="drawing-body">
        <DraftPicture draft={draft} whole={read.drawing} />
        <form
          ref={form}
          className="stack drawing-form"
          noValidate
          onSubmit={(event) => {
            event.preventDefault()
            if (!busy) save()
          }}
        >
          <h1>{revises ? `Drawing of ${mark}` : 'New drawing'}</h1>
          {before !== null && history.past.length > 0 ? (
            <Notice title="What was typed here before">
              It was kept on this device and is not recorded. Undo or clear the form to start anew.
            </Notice>
          ) : null}
          <ImportFile onDrawing={(drawing) => act(takeDrawing, { drawing })} />
          <PanelPart fixed={revises} />
          <OutlinePart />
          <OpeningPart />
          <VoidPart />
          <ConcretePart />
          <SteelPart />
          <InsertPart />
          <HandlingPart />
          <LiftingPart />
          {all && read.faults.get('') !== undefined ? (
            <p role="alert" className="check-fault">
              {read.faults.get('')}
            </p>
          ) : null}
          {all && wrong > 0 ? (
            <p role="status">
              {wrong} {wrong === 1 ? 'field is' : 'fields are'} missing or wrong; each says what.
            </p>
          ) : null}
          {saveFault === null ? null : (
            <p role="alert" className="check-fault">
              {saveFault}
            </p>
          )}
          {mayDo(person.role, 'drawing') ? (
            <Button look="main" wide type="submit" disabled={busy}>
              {revises ? `Record revision ${draft.revision}` : 'Record this drawing'}
            </Button>
          ) : null}
        </form>
        <div className="drawing-tools no-print" role="toolbar" aria-label="Take back">
          <Button disabled={history.past.length === 0} onClick={() => setHistory(undo)}>
            Undo
            <span className="only-read">: {history.past.at(-1)?.label ?? 'nothing'}</span>
          </Button>
          <Button disabled={history.future.length === 0} onClick={() => setHistory(redo)}>
            Redo
          </Button>
          <Button look="plain" onClick={() => act(clearDraft, null)}>
            clear the form
          </Button>
        </div>
      </div>
    </DraftContext>
  )
}
