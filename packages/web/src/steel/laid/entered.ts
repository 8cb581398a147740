import { readNumber } from '../../look/index.ts'

export interface Entered {
  /** Null where nothing, or nothing usable, was typed. */
  readonly value: number | null
  readonly fault: string | null
}

/** A number above 0 that may be left empty. */
export function enteredNumber(text: string): Entered {
  if (text.trim() === '') return { value: null, fault: null }
  const value = readNumber(text)
  return value !== null && value > 0
    ? { value, fault: null }
    : { value: null, fault: 'A number above 0, or empty.' }
}

/** A whole number from 2 that may be left empty. */
export function enteredHooks(text: string): Entered {
  const { value, fault } = enteredNumber(text)
  if (value === null) return { value, fault }
  return Number.isInteger(value) && value >= 2 && value <= 40
    ? { value, fault: null }
    : { value: null, fault: 'A whole number from 2 to 40, or empty.' }
}
