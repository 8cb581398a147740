import * as z from 'zod'
import { drawingSchema } from './drawing.ts'

/** JSON Schema 2020-12 of a drawing file, for editors and other programs. What no schema can say is in `parseDrawing`. */
export function drawingJsonSchema(): Record<string, unknown> {
  return { title: 'Castwright drawing, version 1', ...z.toJSONSchema(drawingSchema, { io: 'input' }) }
}
