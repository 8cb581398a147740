import { barTags } from './bar-tags.ts'
import { bendGaugeSheet } from './bend-gauge.ts'
import { label } from './label.ts'
import { liftCard } from './lift-card.ts'
import { liftWorking } from './lift-working.ts'
import { mouldCard } from './mould-card.ts'
import { passportSheet } from './passport-sheet.ts'
import { pourCard } from './pour-card.ts'
import type { SheetInput } from './sheet.ts'
import { steelSchedule } from './steel-schedule.ts'
import { tiePlanSheet } from './tie-plan.ts'

/** Every sheet by the name that its address has. */
export const SHEET_NAMES = [
  'mould-card',
  'pour-card',
  'steel-schedule',
  'bar-tags',
  'tie-plan',
  'bend-gauge',
  'lift-card',
  'lift-working',
  'label',
  'passport',
] as const
export type SheetName = (typeof SHEET_NAMES)[number]

const MAKERS: Readonly<Record<SheetName, (input: SheetInput) => Promise<Uint8Array>>> = {
  'mould-card': mouldCard,
  'pour-card': pourCard,
  'steel-schedule': steelSchedule,
  'bar-tags': barTags,
  'tie-plan': tiePlanSheet,
  'bend-gauge': bendGaugeSheet,
  'lift-card': liftCard,
  'lift-working': liftWorking,
  label,
  passport: passportSheet,
}

/** One sheet as a PDF. The same input gives the same bytes. */
export function makeSheet(name: SheetName, input: SheetInput): Promise<Uint8Array> {
  return MAKERS[name](input)
}
