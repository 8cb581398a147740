import { FAMILY_IDS } from '@castwright/engine/panel'
import type { ReactElement } from 'react'
import { Sheet } from '../look/index.ts'
import { useYardState } from '../record/index.ts'
import { setField } from './acts/set-field.ts'
import { useDraft } from './draft-context.ts'
import { DraftField } from './draft-field.tsx'
import { DraftSelect } from './draft-select.tsx'

/** Which panel this is: job, mark, revision, code family. */
export function PanelPart({ fixed }: { readonly fixed: boolean }): ReactElement {
  const { draft, act } = useDraft()
  const { jobs, yard } = useYardState()
  const family = yard.yard?.code
  return (
    <Sheet title="Panel">
      <div className="fields">
        {fixed ? (
          <p className="fields-wide">
            New revision of <strong>{draft.mark}</strong> in {draft.job}. Earlier revisions stay in the
            record.
          </p>
        ) : (
          <>
            <DraftField
              of="job"
              label="Job"
              words
              list="jobs"
              note="The mark of the job; a new one is made as you type it."
            />
            <datalist id="jobs">
              {[...jobs.keys()].map((job) => (
                <option key={job} value={job} />
              ))}
            </datalist>
            <DraftField of="mark" label="Mark" words note="As painted on the panel." />
          </>
        )}
        <DraftField of="revision" label="Revision" words />
        <DraftSelect
          label="Code family"
          field="code"
          value={draft.code}
          choices={[
            ['', family === undefined ? 'not given' : `the yard’s: ${family}`],
            ...FAMILY_IDS.map((id) => [id, id] as const),
          ]}
          onText={(text) => act(setField, { field: 'code', text: text })}
        />
      </div>
    </Sheet>
  )
}
