import { InputError } from '@castwright/engine/working'

/** What the code on a bundle's tag says. */
export interface BarTag {
  readonly job: string
  readonly panel: string
  /** Drawing revision; `none` where it has none. */
  readonly revision: string
  readonly mark: string
  /** mm */
  readonly diameter: number
  readonly grade: string
  readonly count: number
  /** Along the centreline, whole mm. */
  readonly cutLength: number
}

const FORMAT = 'castwright.bar/1'
const FIELDS = ['job', 'panel', 'revision', 'mark', 'diameter', 'grade', 'count', 'cutLength'] as const
const NUMBERS: readonly string[] = ['diameter', 'count', 'cutLength']

/** The tag as one line: the format, then its fields in order, each percent-encoded, one space between. */
export function barTagText(tag: BarTag): string {
  return [FORMAT, ...FIELDS.map((field) => encodeURIComponent(String(tag[field])))].join(' ')
}

/**
 * Reads a tag's line.
 *
 * @throws InputError naming the field: another format, fields missing or too many, numbers not above 0.
 */
export function readBarTag(text: string): BarTag {
  const [format, ...words] = text.trim().split(' ')
  if (format !== FORMAT) refuse('format', format ?? '', FORMAT)
  if (words.length !== FIELDS.length) refuse('tag', `${words.length} fields`, `${FIELDS.length} fields`)
  const read = FIELDS.map((field, index): [string, string | number] => {
    const word = decoded(field, words[index] ?? '')
    if (word === '') refuse(field, 'nothing', 'a word')
    if (!NUMBERS.includes(field)) return [field, word]
    const value = Number(word)
    if (!(value > 0 && Number.isFinite(value))) refuse(field, word, 'a number above 0')
    return [field, value]
  })
  return Object.fromEntries(read) as unknown as BarTag
}

function decoded(field: string, word: string): string {
  try {
    return decodeURIComponent(word)
  } catch {
    return refuse(field, word, 'a percent-encoded word')
  }
}

function refuse(path: string, found: string, expected: string): never {
  throw new InputError([{ path, found, expected }])
}
