import type { FamilyId } from '@castwright/engine/codes'
import { FAMILY_IDS } from '@castwright/engine/panel'
import { foundText, InputError, readJson } from '@castwright/engine/working'

export interface NumberWanted {
  /** Smallest value, itself not allowed. */
  readonly above?: number
  readonly least?: number
  readonly most?: number
  readonly whole?: boolean
  readonly unit?: string
}

/** No size, weight or energy of concrete comes near it, and no formula overflows under it. */
const LARGEST = 1e15

/** The options and files that were given to a verb, read strictly: nothing is guessed. */
export class Given {
  constructor(
    private readonly options: Readonly<Record<string, unknown>>,
    private readonly filePath: string | undefined,
    private readonly read: (path: string) => Promise<string>,
  ) {}

  /** @throws InputError where the option is missing or not such a number. */
  number(name: string, wanted: NumberWanted = {}): number {
    const value = this.optionalNumber(name, wanted)
    if (value === undefined) throw this.fault(name, undefined, numberWords(wanted))
    return value
  }

  optionalNumber(name: string, wanted: NumberWanted = {}): number | undefined {
    const raw = this.options[camel(name)]
    if (raw === undefined) return undefined
    const text = typeof raw === 'string' ? raw.trim() : String(raw)
    const value = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : Number.NaN
    const fits =
      Number.isFinite(value) &&
      (wanted.above === undefined || value > wanted.above) &&
      (wanted.least === undefined || value >= wanted.least) &&
      (wanted.most === undefined || value <= wanted.most) &&
      (wanted.whole !== true || Number.isInteger(value))
    if (!fits) throw this.fault(name, raw, numberWords(wanted))
    if (Math.abs(value) > LARGEST) throw this.fault(name, raw, `${numberWords(wanted)}, at most ${LARGEST}`)
    return value
  }

  /** Numbers separated by commas: `600,400`. */
  optionalNumbers(name: string, wanted: NumberWanted = {}): number[] | undefined {
    const raw = this.optionalText(name)
    if (raw === undefined) return undefined
    return raw.split(',').map((part) => {
      const one = new Given({ [camel(name)]: part }, undefined, this.read).optionalNumber(name, wanted)
      if (one === undefined)
        throw this.fault(name, raw, `numbers with commas between, each ${numberWords(wanted)}`)
      return one
    })
  }

  choice<T extends string>(name: string, words: readonly T[]): T {
    const value = this.optionalChoice(name, words)
    if (value === undefined) throw this.fault(name, undefined, `one of ${words.join(', ')}`)
    return value
  }

  optionalChoice<T extends string>(name: string, words: readonly T[]): T | undefined {
    const raw = this.options[camel(name)]
    if (raw === undefined) return undefined
    const found = words.find((word) => word === raw)
    if (found === undefined) throw this.fault(name, raw, `one of ${words.join(', ')}`)
    return found
  }

  text(name: string, expected = 'text'): string {
    const value = this.optionalText(name)
    if (value === undefined) throw this.fault(name, undefined, expected)
    return value
  }

  optionalText(name: string): string | undefined {
    const raw = this.options[camel(name)]
    return typeof raw === 'string' ? raw : undefined
  }

  /** An option that may be given several times or take several words. */
  texts(name: string): readonly string[] {
    const raw = this.options[camel(name)]
    return Array.isArray(raw) ? raw.map(String) : typeof raw === 'string' ? [raw] : []
  }

  flag(name: string): boolean {
    return this.options[camel(name)] === true
  }

  has(name: string): boolean {
    return this.options[camel(name)] !== undefined
  }

  /** Code family of `--code`, else of the fallbacks in turn (drawing, yard). @throws InputError where none says it. */
  code(...fallbacks: readonly (FamilyId | undefined)[]): FamilyId {
    const value = this.optionalCode() ?? fallbacks.find((fallback) => fallback !== undefined)
    if (value === undefined) throw this.fault('code', undefined, `one of ${FAMILY_IDS.join(', ')}`)
    return value
  }

  optionalCode(): FamilyId | undefined {
    return this.optionalChoice('code', FAMILY_IDS)
  }

  /** Path of the file argument as given; `-` is standard input. */
  get file(): string | undefined {
    return this.filePath
  }

  /** Text of the file argument. @throws InputError where it is missing or cannot be read. */
  async fileText(): Promise<string> {
    if (this.filePath === undefined)
      throw new InputError([{ path: '', found: 'no file', expected: 'a file, or - for standard input' }])
    return this.read(this.filePath)
  }

  /** JSON of the file argument. @throws InputError naming the file. */
  async fileJson(): Promise<unknown> {
    return readJson(await this.fileText(), this.fileName)
  }

  /** Text of the file that an option names, or undefined where the option is not given. */
  async optionFile(name: string): Promise<{ readonly path: string; readonly text: string } | undefined> {
    const path = this.optionalText(name)
    return path === undefined ? undefined : { path, text: await this.read(path) }
  }

  /** The file argument as messages name it. */
  get fileName(): string {
    return this.filePath === '-' ? 'standard input' : (this.filePath ?? '')
  }

  fault(name: string, found: unknown, expected: string): InputError {
    return new InputError([{ path: '', found: foundText(found), expected }], `option --${name}`)
  }
}

function numberWords({ above, least, most, whole, unit }: NumberWanted): string {
  const bounds = [
    above === undefined ? '' : `above ${above}`,
    least === undefined ? '' : `at least ${least}`,
    most === undefined ? '' : `at most ${most}`,
  ].filter((word) => word !== '')
  const kind = whole === true ? 'a whole number' : 'a number'
  return [kind, bounds.join(' and '), unit === undefined ? '' : `(${unit})`]
    .filter((word) => word !== '')
    .join(' ')
}

/** `least-edge` as commander keeps it: `leastEdge`. */
function camel(name: string): string {
  return name.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase())
}
