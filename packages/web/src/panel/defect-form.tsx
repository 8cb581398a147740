import type { StepId } from '@castwright/engine/steps'
import { type FormEvent, type ReactElement, useState } from 'react'
import { Button, FileField, NumberField, readNumber, Sheet, TextField } from '../look/index.ts'
import { useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { reportDefect } from './acts/report-defect.ts'
import { usePanelRoom } from './panel-context.ts'

export interface DefectFormProps {
  readonly step: StepId
  /** Place tapped on the picture, mm. */
  readonly tapped: readonly [number, number] | null
  readonly onLeave: () => void
}

/** Something found wrong: what, where (tapped on the picture or typed), with a photo. */
export function DefectForm({ step, tapped, onLeave }: DefectFormProps): ReactElement {
  const { place } = usePanelRoom()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [text, setText] = useState('')
  const [typed, setTyped] = useState<{ x: string; y: string } | null>(null)
  const [files, setFiles] = useState<readonly File[]>([])
  const [faults, setFaults] = useState<{ text?: string; place?: string }>({})
  const x = typed?.x ?? (tapped === null ? '' : String(Math.round(tapped[0])))
  const y = typed?.y ?? (tapped === null ? '' : String(Math.round(tapped[1])))
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const at = placeOf(x, y)
    const wrong = {
      ...(text.trim() === '' ? { text: 'Write what is wrong.' } : {}),
      ...(at === undefined ? { place: 'Give both numbers, or leave both empty.' } : {}),
    }
    setFaults(wrong)
    if (Object.keys(wrong).length > 0 || at === undefined || busy) return
    void run(async () => {
      const attachments = []
      for (const file of files) attachments.push(await record.addFile(file, file.name))
      await record.add(reportDefect.draft(place, { step, text: text.trim(), place: at, attachments }))
    }).then((ok) => ok && onLeave())
  }
  return (
    <Sheet
      title="Found a defect"
      note="Tap the place on the picture, or type it. A panel with an open defect is not loaded."
    >
      <form className="stack" onSubmit={submit} noValidate>
        <TextField
          label="What is wrong"
          value={text}
          fault={faults.text}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        <div className="pair">
          <NumberField
            label="From the left, x"
            unit="mm"
            value={x}
            fault={faults.place}
            onText={(value) => setTyped({ x: value, y })}
          />
          <NumberField
            label="From below, y"
            unit="mm"
            value={y}
            onText={(value) => setTyped({ x, y: value })}
          />
        </div>
        <FileField
          label="Photo"
          accept="image/*"
          capture="environment"
          note={files.length === 0 ? undefined : files.map(({ name }) => name).join(', ')}
          onFiles={setFiles}
        />
        {fault === null ? null : (
          <p role="alert" className="check-fault">
            {fault}
          </p>
        )}
        <div className="row">
          <Button look="main" type="submit" disabled={busy}>
            {reportDefect.label}
          </Button>
          <Button look="plain" onClick={onLeave}>
            leave it
          </Button>
        </div>
      </form>
    </Sheet>
  )
}

/** Both numbers: a place; both empty: none; else undefined. */
function placeOf(x: string, y: string): readonly [number, number] | null | undefined {
  if (x.trim() === '' && y.trim() === '') return null
  const [right, up] = [readNumber(x), readNumber(y)]
  return right === null || up === null ? undefined : [right, up]
}
