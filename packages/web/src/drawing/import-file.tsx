import type { Drawing } from '@castwright/engine/panel'
import { type ReactElement, useState } from 'react'
import { FileField, Sheet } from '../look/index.ts'
import { type FileFault, readDrawingFile } from './drawing-file.ts'

export interface ImportFileProps {
  readonly onDrawing: (drawing: Drawing) => void
}

/** A drawing from a file into the form. A bad file changes nothing, and every bad place is named. */
export function ImportFile({ onDrawing }: ImportFileProps): ReactElement {
  const [name, setName] = useState('')
  const [faults, setFaults] = useState<readonly FileFault[] | null>(null)
  const take = async (file: File): Promise<void> => {
    setName(file.name)
    try {
      const read = readDrawingFile(await file.text())
      setFaults(read.ok ? null : read.faults)
      if (read.ok) onDrawing(read.drawing)
    } catch (error) {
      const found = error instanceof Error ? error.message : String(error)
      setFaults([{ place: 'the whole file', found, expected: 'a file that can be read' }])
    }
  }
  return (
    <Sheet title="From a file">
      <div className="stack">
        <FileField
          label="Drawing file, JSON"
          accept=".json,application/json"
          note="It fills the form; nothing is recorded before you save."
          onFiles={([file]) => {
            if (file !== undefined) void take(file)
          }}
        />
        {faults === null ? null : (
          <div role="alert" className="stack">
            <p className="check-fault">{name} was not taken. What is wrong, place by place:</p>
            <div className="scroll-x">
              <table>
                <thead>
                  <tr>
                    <th scope="col">Place</th>
                    <th scope="col">Found</th>
                    <th scope="col">Expected</th>
                  </tr>
                </thead>
                <tbody>
                  {faults.slice(0, 50).map((fault) => (
                    <tr key={`${fault.place} ${fault.expected}`}>
                      <td>{fault.place}</td>
                      <td>{fault.found}</td>
                      <td>{fault.expected}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
            {faults.length > 50 ? <p>And {faults.length - 50} more.</p> : null}
          </div>
        )}
      </div>
    </Sheet>
  )
}
