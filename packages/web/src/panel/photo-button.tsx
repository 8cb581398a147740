import type { StepId } from '@castwright/engine/steps'
import { type ReactElement, useRef } from 'react'
import { announce, Button } from '../look/index.ts'
import { useRecord } from '../record/index.ts'
import type { Acting } from './acting.ts'
import { keepPhoto } from './acts/keep-photo.ts'
import { usePanelRoom } from './panel-context.ts'

export interface PhotoButtonProps {
  readonly step: StepId
  readonly acting: Acting
}

/** Opens the camera, or the files where there is none; the photo is made smaller and kept with its hash. */
export function PhotoButton({ step, acting }: PhotoButtonProps): ReactElement {
  const { place } = usePanelRoom()
  const record = useRecord()
  const input = useRef<HTMLInputElement>(null)
  const keep = async (files: readonly File[]): Promise<void> => {
    const attachments = []
    for (const file of files) attachments.push(await record.addFile(file, file.name))
    await record.add(keepPhoto.draft(place, { step, attachments }))
    announce(files.length === 1 ? 'Photo kept here.' : `${files.length} photos kept here.`)
  }
  return (
    <>
      <input
        ref={input}
        type="file"
        accept="image/*"
        capture="environment"
        hidden
        aria-label="Photo file"
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])]
          event.currentTarget.value = ''
          if (files.length > 0) void acting.run(() => keep(files))
        }}
      />
      <Button disabled={acting.busy} onClick={() => input.current?.click()}>
        {acting.busy ? 'Keeping …' : keepPhoto.label}
      </Button>
    </>
  )
}
