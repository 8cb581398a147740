import { useCallback, useEffect, useRef, useState } from 'react'
import type { CutAnswer, CutFound, CutQuestion } from './cut-messages.ts'

export interface CutSearchState {
  /** The best plan so far, or the last. */
  readonly found: CutFound | null
  readonly why: string | null
  readonly busy: boolean
  /** The search was ended by hand: the plan is the best until then. */
  readonly stopped: boolean
  readonly start: (question: CutQuestion) => void
  readonly stop: () => void
}

/** One cutting search in a worker of its own, that can be stopped and keeps what it has. */
export function useCut(): CutSearchState {
  const worker = useRef<Worker | null>(null)
  const [found, setFound] = useState<CutFound | null>(null)
  const [why, setWhy] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const [stopped, setStopped] = useState(false)
  const end = useCallback(() => {
    worker.current?.terminate()
    worker.current = null
    setBusy(false)
  }, [])
  useEffect(() => () => worker.current?.terminate(), [])
  const start = useCallback(
    (question: CutQuestion) => {
      end()
      setFound(null)
      setWhy(null)
      setStopped(false)
      setBusy(true)
      const made = new Worker(new URL('./cut-worker.ts', import.meta.url), { type: 'module' })
      made.onmessage = ({ data }: MessageEvent<CutAnswer>) => {
        if ('why' in data) setWhy(data.why)
        else setFound(data)
        if ('why' in data || data.proven !== null) end()
      }
      made.onerror = ({ message }) => {
        setWhy(message || 'its part of the app did not load')
        end()
      }
      worker.current = made
      made.postMessage(question)
    },
    [end],
  )
  const stop = useCallback(() => {
    setStopped(true)
    end()
  }, [end])
  return { found, why, busy, stopped, start, stop }
}
