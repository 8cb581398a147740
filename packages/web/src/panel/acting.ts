import { useCallback, useRef, useState } from 'react'

export interface Acting {
  readonly busy: boolean
  /** What went wrong, in words; null where nothing did. */
  readonly fault: string | null
  /** Runs one act at a time; true where it went through. */
  readonly run: (act: () => Promise<unknown>) => Promise<boolean>
}

/** An act that takes a moment: a second tap while it runs does nothing, and a fault is shown where it happened. */
export function useActing(): Acting {
  const [busy, setBusy] = useState(false)
  const [fault, setFault] = useState<string | null>(null)
  const running = useRef(false)
  const run = useCallback(async (act: () => Promise<unknown>): Promise<boolean> => {
    if (running.current) return false
    running.current = true
    setBusy(true)
    setFault(null)
    try {
      await act()
      return true
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error))
      return false
    } finally {
      running.current = false
      setBusy(false)
    }
  }, [])
  return { busy, fault, run }
}
