import { type Drawing, panelOf, parseDrawing } from '@castwright/engine/panel'
import { InputError } from '@castwright/engine/working'
import { jsonFault } from './json-place.ts'

export interface FileFault {
  /** Where: `line 3, column 14`, or the path of the field. */
  readonly place: string
  readonly found: string
  readonly expected: string
}

export type DrawingFile =
  | { readonly ok: true; readonly drawing: Drawing }
  | { readonly ok: false; readonly faults: readonly FileFault[] }

/** A drawing file, or every place where it is none. */
export function readDrawingFile(text: string): DrawingFile {
  const broken = jsonFault(text)
  if (broken !== null) {
    const { line, column, found, expected } = broken
    return { ok: false, faults: [{ place: `line ${line}, column ${column}`, found, expected }] }
  }
  try {
    const drawing = parseDrawing(JSON.parse(text.replace(/^\uFEFF/, '')))
    panelOf(drawing)
    return { ok: true, drawing }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return {
      ok: false,
      faults: error.issues.map(({ path, found, expected }) => ({
        place: path || 'the whole file',
        found,
        expected,
      })),
    }
  }
}
