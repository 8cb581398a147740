import { type ReactElement, useState } from 'react'
import { FileField, Notice } from '../look/index.ts'
import { Refused } from '../record/api.ts'
import { useStore } from '../record/index.ts'

interface Outcome {
  readonly file: string
  readonly fault: string | null
  readonly issues: readonly string[]
  readonly done: string | null
}

/** Brings yard, job and drawing files into the record; a bad file is rejected with the place shown. */
export function BringIn(): ReactElement {
  const store = useStore()
  const [outcomes, setOutcomes] = useState<readonly Outcome[]>([])
  const [busy, setBusy] = useState(false)
  const take = async (files: readonly File[]): Promise<void> => {
    setBusy(true)
    const found: Outcome[] = []
    for (const file of files) found.push(await bringOne(file))
    setOutcomes(found)
    await store.sync.wake()
    setBusy(false)
  }
  const bringOne = async (file: File): Promise<Outcome> => {
    const outcome: Outcome = { file: file.name, fault: null, issues: [], done: null }
    let document: unknown
    try {
      document = JSON.parse(await file.text())
    } catch (error) {
      return {
        ...outcome,
        fault: `It is not JSON: ${error instanceof Error ? error.message : String(error)}`,
      }
    }
    try {
      const { stored, known = 0, assumed = [] } = await store.api.bring(document)
      const taken = assumed.map(({ field, value, why }) => `${field}: ${value} assumed, ${why}`)
      const parts = [`${stored} in the record`, ...(known > 0 ? [`${known} known already`] : []), ...taken]
      return { ...outcome, done: `${parts.join('; ')}.` }
    } catch (error) {
      const issues = error instanceof Refused ? error.issues : []
      return {
        ...outcome,
        fault: error instanceof Error ? error.message : String(error),
        issues: issues.map(
          ({ path, found, expected }) =>
            `${path === '' ? 'the file' : path}: found ${found}, expected ${expected}`,
        ),
      }
    }
  }
  return (
    <div className="stack">
      <FileField
        label="Files"
        accept=".json,application/json"
        multiple
        disabled={busy}
        note={busy ? 'Reading …' : 'Nothing of a file is taken where any of it is wrong. Needs the network.'}
        onFiles={(files) => void take(files)}
      />
      <div className="stack" aria-live="polite">
        {outcomes.map(({ file, fault, issues, done }) =>
          fault === null ? (
            <Notice key={file} title={file}>
              {done}
            </Notice>
          ) : (
            <Notice key={file} kind="fail" title={`${file} was not taken`}>
              {fault}
              {issues.length > 0 ? (
                <ul>
                  {issues.map((issue) => (
                    <li key={issue}>{issue}</li>
                  ))}
                </ul>
              ) : null}
            </Notice>
          ),
        )}
      </div>
    </div>
  )
}
