import { readNumber } from '../look/index.ts'
import type { DocketInput } from './acts/record-docket.ts'
import { instantOf } from './when.ts'

/** A docket as typed. */
export interface DocketText {
  readonly number: string
  readonly truck: string
  readonly mix: string
  readonly batched: string
  readonly arrived: string
  readonly discharged: string
  readonly volume: string
  readonly slump: string
  readonly temperature: string
  readonly waterAdded: string
}

export const EMPTY_DOCKET: DocketText = {
  number: '',
  truck: '',
  mix: '',
  batched: '',
  arrived: '',
  discharged: '',
  volume: '',
  slump: '',
  temperature: '',
  waterAdded: '',
}

type ReadDocket =
  | { readonly ok: true; readonly docket: DocketInput }
  | { readonly ok: false; readonly faults: Readonly<Partial<Record<keyof DocketText, string>>> }

/** What was typed as a docket, or what is wrong by field. Only the number must be there; what is left empty is not known. */
export function readDocket(text: DocketText, zone: string): ReadDocket {
  const faults: Partial<Record<keyof DocketText, string>> = {}
  const word = (field: 'truck' | 'mix'): string | undefined => text[field].trim() || undefined
  const time = (field: 'batched' | 'arrived' | 'discharged'): string | undefined => {
    if (text[field] === '') return undefined
    const instant = instantOf(text[field], zone)
    if (instant === null) faults[field] = 'Give day and time.'
    return instant ?? undefined
  }
  const number = (
    field: 'volume' | 'slump' | 'temperature' | 'waterAdded',
    good: (value: number) => boolean,
    expected: string,
  ): number | undefined => {
    if (text[field].trim() === '') return undefined
    const value = readNumber(text[field])
    if (value !== null && good(value)) return value
    faults[field] = `Found ${text[field].trim()}, expected ${expected}.`
    return undefined
  }
  if (text.number.trim() === '') faults.number = 'Type the number printed on the docket.'
  const times = { batched: time('batched'), arrived: time('arrived'), discharged: time('discharged') }
  if (times.batched && times.arrived && times.arrived < times.batched)
    faults.arrived = 'Before it was batched.'
  if (times.arrived && times.discharged && times.discharged < times.arrived) {
    faults.discharged = 'Before it arrived.'
  }
  const values = {
    volume: number('volume', (value) => value > 0, 'a number above 0'),
    slump: number('slump', (value) => value >= 0, 'a number not below 0'),
    temperature: number('temperature', (value) => value > -20 && value < 100, 'a number from −20 to 100'),
    waterAdded: number('waterAdded', (value) => value >= 0, 'a number not below 0'),
  }
  if (Object.keys(faults).length > 0) return { ok: false, faults }
  const given = { number: text.number.trim(), truck: word('truck'), mix: word('mix'), ...times, ...values }
  return { ok: true, docket: withoutGaps(given) }
}

function withoutGaps(
  docket: { readonly number: string } & Readonly<Record<string, string | number | undefined>>,
): DocketInput {
  return {
    ...Object.fromEntries(Object.entries(docket).filter(([, value]) => value !== undefined)),
    number: docket.number,
  }
}
