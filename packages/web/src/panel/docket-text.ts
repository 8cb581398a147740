import type { DocketWords } from '@castwright/engine/pour/loads'
import { readNumber } from '../look/index.ts'
import { fieldTime, instantOf } from './when.ts'

const WORDS = ['supplier', 'truck', 'mix'] as const
const TIMES = ['batched', 'arrived', 'began', 'discharged'] as const
export type DocketTime = (typeof TIMES)[number]

/** What a number of a docket may be, in words, and whether it is. */
const NUMBERS = {
  ordered: [(value) => value > 0 && value <= 100, 'a number above 0, at most 100'],
  volume: [(value) => value > 0 && value <= 100, 'a number above 0, at most 100'],
  used: [(value) => value > 0 && value <= 100, 'a number above 0, at most 100'],
  slumpTarget: [(value) => value >= 0 && value <= 400, 'a number from 0 to 400'],
  slump: [(value) => value >= 0 && value <= 400, 'a number from 0 to 400'],
  temperature: [(value) => value > -20 && value < 100, 'a number from −20 to 100'],
  waterAllowed: [(value) => value >= 0 && value <= 10_000, 'a number not below 0'],
  waterAdded: [(value) => value >= 0 && value <= 10_000, 'a number not below 0'],
  admixtureAdded: [(value) => value >= 0 && value <= 10_000, 'a number not below 0'],
  remixTurns: [(value) => value >= 0 && value <= 10_000, 'a number not below 0'],
  remixMinutes: [(value) => value >= 0 && value <= 600, 'a number from 0 to 600'],
} as const satisfies Record<string, readonly [(value: number) => boolean, string]>
type DocketNumber = keyof typeof NUMBERS

/** A docket as typed. */
export type DocketText = Readonly<
  Record<
    | 'number'
    | (typeof WORDS)[number]
    | DocketTime
    | DocketNumber
    | 'slumpSample'
    | 'waterAfterDischarge'
    | 'specimens',
    string
  >
>
export type DocketFaults = Readonly<Partial<Record<keyof DocketText, string>>>

export const EMPTY_DOCKET: DocketText = {
  number: '',
  supplier: '',
  truck: '',
  mix: '',
  ordered: '',
  volume: '',
  used: '',
  batched: '',
  arrived: '',
  began: '',
  discharged: '',
  slumpTarget: '',
  slump: '',
  slumpSample: '',
  temperature: '',
  waterAllowed: '',
  waterAdded: '',
  waterAfterDischarge: '',
  admixtureAdded: '',
  remixTurns: '',
  remixMinutes: '',
  specimens: '',
}

type ReadDocket =
  | { readonly ok: true; readonly docket: DocketWords }
  | { readonly ok: false; readonly faults: DocketFaults }

/** What was typed as a docket, or what is wrong by field. Only the number must be there; what is left empty is not known. */
export function readDocket(text: DocketText, zone: string): ReadDocket {
  const faults: Partial<Record<keyof DocketText, string>> = {}
  const docket: Record<string, unknown> = { number: text.number.trim() }
  if (text.number.trim() === '') faults.number = 'Type the number printed on the docket.'
  for (const field of WORDS) if (text[field].trim() !== '') docket[field] = text[field].trim()
  for (const field of TIMES) {
    if (text[field] === '') continue
    const instant = instantOf(text[field], zone)
    if (instant === null) faults[field] = 'Give day and time.'
    else docket[field] = instant
  }
  for (const [field, [good, expected]] of Object.entries(NUMBERS) as [
    DocketNumber,
    readonly [(value: number) => boolean, string],
  ][]) {
    if (text[field].trim() === '') continue
    const value = readNumber(text[field])
    if (value !== null && good(value)) docket[field] = value
    else faults[field] = `Found ${text[field].trim()}, expected ${expected}.`
  }
  if (text.slumpSample !== '') docket.slumpSample = text.slumpSample
  if (text.waterAfterDischarge !== '') docket.waterAfterDischarge = text.waterAfterDischarge === 'yes'
  const marks = marksOf(text.specimens)
  if (marks.length > 0) docket.specimens = marks
  const words = docket as unknown as DocketWords
  Object.assign(faults, togetherFaults(words, faults))
  return Object.keys(faults).length > 0 ? { ok: false, faults } : { ok: true, docket: words }
}

/** Marks with commas or spaces between, each once. */
export function marksOf(text: string): string[] {
  return [...new Set(text.split(/[\s,;]+/).filter((mark) => mark !== ''))]
}

/** What one field says of another: times run forward, no more goes into the panel than the truck held. */
function togetherFaults(words: DocketWords, found: DocketFaults): DocketFaults {
  const { batched, arrived, began, discharged, used, volume } = words
  const faults: Partial<Record<keyof DocketText, string>> = {}
  const before = (early: string | undefined, late: string | undefined): boolean =>
    early !== undefined && late !== undefined && late < early
  if (before(batched, arrived)) faults.arrived = 'Before it was batched.'
  if (before(arrived ?? batched, began))
    faults.began = arrived ? 'Before it arrived.' : 'Before it was batched.'
  if (before(began ?? arrived ?? batched, discharged)) {
    faults.discharged = began ? 'Before it began.' : arrived ? 'Before it arrived.' : 'Before it was batched.'
  }
  if (used !== undefined && volume !== undefined && used > volume && found.used === undefined)
    faults.used = 'More than the truck held.'
  return faults
}

/** What is on record of a load, as the form shows it. */
export function textOf(words: DocketWords, zone: string): DocketText {
  const text: Record<string, string> = { ...EMPTY_DOCKET, number: words.number }
  for (const field of WORDS) text[field] = words[field] ?? ''
  for (const field of TIMES) {
    const at = words[field]
    text[field] = at === undefined ? '' : fieldTime(new Date(at), zone)
  }
  for (const field of Object.keys(NUMBERS) as DocketNumber[]) text[field] = String(words[field] ?? '')
  text.slumpSample = words.slumpSample ?? ''
  text.waterAfterDischarge =
    words.waterAfterDischarge === undefined ? '' : words.waterAfterDischarge ? 'yes' : 'no'
  text.specimens = (words.specimens ?? []).join(' ')
  return text as unknown as DocketText
}

/** The words of a load alone, and what was typed over them: times that the form shows to the minute stay as they were where nobody changed them. */
export function changedWords(before: DocketWords, typed: DocketWords, zone: string): DocketWords {
  const kept = { ...typed } as Record<string, unknown>
  for (const field of TIMES) {
    const [was, is] = [before[field], typed[field]]
    if (
      was !== undefined &&
      is !== undefined &&
      fieldTime(new Date(was), zone) === fieldTime(new Date(is), zone)
    )
      kept[field] = was
  }
  return kept as unknown as DocketWords
}

/** The next free marks of specimens of a panel: `W1-3 W1-4`. */
export function nextMarks(panel: string, taken: readonly string[], count: number): string[] {
  const used = new Set(taken)
  const marks: string[] = []
  for (let number = 1; marks.length < count; number += 1) {
    const mark = `${panel}-${number}`
    if (!used.has(mark)) marks.push(mark)
  }
  return marks
}
