import type { Assumed, Step, Verdict } from '@castwright/engine/working'
import type { Given } from './given.ts'

export interface VerbOption {
  /** As commander writes it: `--diameter <mm>`, `--plain`, `--gap [mm]`. */
  readonly flags: string
  /** What it is, with its unit; a default is said here in words. */
  readonly about: string
  /** May be given several times; read with `given.texts`. */
  readonly repeated?: true
}

/** What a verb found. */
export interface Outcome {
  /** The contract's fields, not rounded; null beside `unknown: [...]` where not known. */
  readonly json: Readonly<Record<string, unknown>>
  readonly working?: readonly Step[]
  /** Listed in the JSON as `assumed`, and under the table. */
  readonly assumed?: readonly Assumed[]
  /** `fail` and `unknown` end with exit status 1. Absent where the verb judges nothing. */
  readonly verdict?: Verdict
  /** The verb has written what it had to say while it ran; nothing is printed at its end. */
  readonly printed?: boolean
  /** The readable form, without the working. Built only when it is printed. */
  readonly table: () => string
}

/** One verb of the command line: thin over the engine, no formula in here. */
export interface Verb {
  readonly name: string
  /** Name of the file argument, when there is one: `DRAWING`. */
  readonly file?: { readonly name: string; readonly about: string; readonly optional?: boolean }
  readonly options: readonly VerbOption[]
  /** Runs as printed, at the repository root. */
  readonly example: string
  /** @throws InputError where the input is wrong: exit status 2. */
  run(given: Given): Promise<Outcome>
}

/** A plain table: columns padded to their widest cell, numbers as given. */
export function textTable(rows: readonly (readonly string[])[]): string {
  const widths: number[] = []
  for (const row of rows)
    for (const [i, cell] of row.entries()) widths[i] = Math.max(widths[i] ?? 0, cell.length)
  return rows
    .map((row) =>
      row
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n')
}

/** A number for reading: four significant digits or whole; not known where it is null. */
export function numberText(value: number | null | undefined, unit = ''): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return 'not known'
  const text =
    Math.abs(value) >= 1000 || Number.isInteger(value)
      ? String(Math.round(value * 10) / 10)
      : String(Number(value.toPrecision(4)))
  return unit === '' ? text : `${text} ${unit}`
}
