import { type Reading, readTemperatureLog } from '@castwright/engine/cure'
import { InputError, type InputIssue } from '@castwright/engine/working'

export type LogFile =
  | { readonly ok: true; readonly readings: readonly Reading[] }
  | { readonly ok: false; readonly faults: readonly InputIssue[] }

/** A logger's file as the engine reads it, or every row that keeps it out. */
export function readLogFile(text: string): LogFile {
  try {
    return { ok: true, readings: readTemperatureLog(text) }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return { ok: false, faults: error.issues }
  }
}

export function logFaultSentence({ path, found, expected }: InputIssue): string {
  return `${path.charAt(0).toUpperCase()}${path.slice(1)}: found ${found}, expected ${expected}`
}
