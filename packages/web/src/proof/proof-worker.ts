import { DeviceDatabase } from '../record/database.ts'
import { type LogCheck, LogChecker } from './log-check.ts'

/** Told while it runs, and at the end. */
export type ProofAnswer =
  | { readonly kind: 'progress'; readonly done: number; readonly of: number }
  | { readonly kind: 'done'; readonly check: LogCheck }
  | { readonly kind: 'fault'; readonly text: string }

const scope = self as unknown as { onmessage: (() => void) | null; postMessage(answer: ProofAnswer): void }
const BATCH = 2000

scope.onmessage = () => {
  void run().catch((error: unknown) => {
    scope.postMessage({ kind: 'fault', text: error instanceof Error ? error.message : String(error) })
  })
}

async function run(): Promise<void> {
  const db = new DeviceDatabase()
  const of = await db.entries.count()
  const checker = new LogChecker()
  for (let from = 0; from < of; from += BATCH) {
    checker.add(
      await db.entries
        .where('index')
        .between(from, from + BATCH, true, false)
        .sortBy('index'),
    )
    scope.postMessage({ kind: 'progress', done: checker.size, of })
  }
  scope.postMessage({ kind: 'done', check: checker.result() })
  db.close()
}
