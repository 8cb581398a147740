import { useEffect, useState } from 'react'
import type { StrengthAnswer, StrengthWork } from './strength-work.ts'

/** A piece of work in a worker of its own; null while it runs or where nothing is asked. A new question ends the one before. */
export function useStrengthWork(work: StrengthWork | null): StrengthAnswer | null {
  const [answer, setAnswer] = useState<StrengthAnswer | null>(null)
  useEffect(() => {
    if (work === null) return
    const made = new Worker(new URL('./strength-worker.ts', import.meta.url), { type: 'module' })
    made.onmessage = ({ data }: MessageEvent<StrengthAnswer>) => {
      setAnswer(data)
      made.terminate()
    }
    made.onerror = ({ message }) =>
      setAnswer({ kind: 'fault', fault: message || 'a part of the app did not load' })
    made.postMessage(work)
    return () => made.terminate()
  }, [work])
  return work === null ? null : answer
}
