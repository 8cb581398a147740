import type { ReactElement } from 'react'
import { useRecord } from '../record/index.ts'

/** Whether an entry is only kept here or in the record. */
export function KeptWord({ entry }: { readonly entry: string }): ReactElement {
  const { kept } = useRecord()
  return <strong>{kept.some(({ id }) => id === entry) ? 'kept here' : 'in the record'}</strong>
}
