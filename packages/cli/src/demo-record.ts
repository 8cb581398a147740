import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { InputError } from '@castwright/engine/working'
import type { RecordPlace } from './serving.ts'

/** Marks a data folder as the invented job's, and says how far the job was moved. */
export const DEMO_FILE = 'invented-job.json'

/** A yard's own record is never kept in the folder of the invented job. @throws InputError */
export function refuseDemo({ folder }: RecordPlace): void {
  if (!existsSync(join(folder, DEMO_FILE))) return
  throw new InputError(
    [
      {
        path: '',
        found: `${folder}, which holds the invented job`,
        expected: 'a folder for the record of your yard',
      },
    ],
    'option --data',
  )
}
