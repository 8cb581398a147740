import type { SpecimenSet } from '@castwright/engine/steps'
import { readNumber } from '../look/index.ts'
import type { SetInput } from './acts/record-set.ts'
import { instantOf } from './when.ts'

/** A line of the form: so many specimens for an age. */
export interface AgeText {
  readonly name: string
  readonly count: string
  readonly age: string
  readonly unit: 'h' | 'd'
  readonly cured: 'panel' | 'standard'
}

/** The form of a set as typed. */
export interface SetText {
  readonly set: string
  readonly kind: SpecimenSet['kind']
  readonly size: string
  readonly made: string
  readonly docket: string
  readonly ages: readonly AgeText[]
}

export interface SetFaults {
  readonly set?: string
  readonly size?: string
  readonly made?: string
  readonly ages: readonly (string | undefined)[]
  readonly all?: string
}

/** Most specimens for one age. */
const MOST = 20

/** What a yard mostly makes: two for the first lift beside the panel, two at 7 and two at 28 days by the standard. Common practice, no source. */
export function emptySet({
  set,
  made,
  docket,
  strip,
}: {
  readonly set: string
  readonly made: string
  readonly docket: string
  /** Planned hour of the first lift, from mixing; null where it is not known. */
  readonly strip: number | null
}): SetText {
  return {
    set,
    kind: 'cylinder',
    size: '',
    made,
    docket,
    ages: [
      {
        name: 'First lift',
        count: '2',
        age: strip === null ? '' : String(Math.ceil(strip)),
        unit: 'h',
        cured: 'panel',
      },
      { name: 'Seven days', count: '2', age: '7', unit: 'd', cured: 'standard' },
      { name: '28 days', count: '2', age: '28', unit: 'd', cured: 'standard' },
      { name: 'Another age', count: '0', age: '', unit: 'd', cured: 'standard' },
    ],
  }
}

/** Reads the form: the set with a mark for each specimen, `<set>-1` on, or what is wrong with which line. */
export function readSet(
  { set, kind, size, made, docket, ages }: SetText,
  zone: string,
): { readonly ok: true; readonly set: SetInput } | { readonly ok: false; readonly faults: SetFaults } {
  const mark = set.trim()
  const at = instantOf(made, zone)
  const wide = size.trim() === '' ? undefined : readNumber(size)
  const lines = ages.map(readAge)
  const wanted = lines.flatMap((line) => (typeof line === 'string' || line.count === 0 ? [] : [line]))
  const faults: SetFaults = {
    ...(mark === '' || mark.length > 34 ? { set: 'Type a mark for the set, at most 34 letters.' } : {}),
    ...(at === null ? { made: 'Give day and time when they were made.' } : {}),
    ...(wide === null || (wide !== undefined && !(wide > 0 && wide <= 1000))
      ? { size: 'Type the diameter or side in mm.' }
      : {}),
    ages: lines.map((line) => (typeof line === 'string' ? line : undefined)),
    ...(wanted.length === 0 && lines.every((line) => typeof line !== 'string')
      ? { all: 'Give at least one specimen to test.' }
      : {}),
  }
  if (
    at === null ||
    faults.set !== undefined ||
    faults.size !== undefined ||
    faults.all !== undefined ||
    faults.ages.some((fault) => fault !== undefined)
  )
    return { ok: false, faults }
  let next = 1
  return {
    ok: true,
    set: {
      set: mark,
      kind,
      ...(typeof wide === 'number' ? { size: wide } : {}),
      made: at,
      ...(docket.trim() === '' ? {} : { docket: docket.trim() }),
      tests: wanted.map(({ count, age, cured }) => ({
        age,
        cured,
        specimens: Array.from({ length: count }, () => `${mark}-${next++}`),
      })),
    },
  }
}

/** A line read, or what is wrong with it. */
function readAge({
  count,
  age,
  unit,
  cured,
}: AgeText): { readonly count: number; readonly age: number; readonly cured: AgeText['cured'] } | string {
  const many = count.trim() === '' ? 0 : readNumber(count)
  if (many === null || !Number.isInteger(many) || many < 0 || many > MOST)
    return `Type how many, a whole number up to ${MOST}.`
  if (many === 0) return { count: 0, age: 0, cured }
  const found = readNumber(age)
  if (found === null || !(found > 0)) return 'Type the age at which they are tested.'
  return { count: many, age: unit === 'd' ? 24 * found : found, cured }
}

/** `20 h`, `7 d`. */
export function ageText(hours: number): string {
  return hours >= 48 && hours % 24 === 0 ? `${hours / 24} d` : `${Math.round(10 * hours) / 10} h`
}
