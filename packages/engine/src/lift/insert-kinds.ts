import type { Drawing, DrawnInsert } from '../panel/drawing.ts'
import type { InsertKind, Yard } from '../yard/yard.ts'

export interface DrawnKinds {
  /** Each kind that the drawing uses, with its inserts, in the order of the drawing. */
  readonly kinds: readonly { readonly kind: InsertKind; readonly inserts: readonly DrawnInsert[] }[]
  /** Inserts whose kind is not known, and why. */
  readonly gaps: readonly string[]
}

/** Finds the yard's insert kind of each drawn insert. An insert of no listed kind has no rated load: a gap. */
export function drawnKinds({
  drawing,
  yard,
}: {
  readonly drawing: Drawing
  readonly yard: Yard | null
}): DrawnKinds {
  const inserts = drawing.inserts ?? []
  if (inserts.length === 0) return { kinds: [], gaps: ['inserts: none drawn; proposals come with the picks'] }
  const kinds = new Map<string, { kind: InsertKind; inserts: DrawnInsert[] }>()
  const gaps: string[] = []
  for (const insert of inserts) {
    const kind = yard?.insertKinds?.find((listed) => listed.mark === insert.type)
    if (insert.type === undefined) gaps.push(`insert ${insert.mark}: the drawing gives no type`)
    else if (kind === undefined) gaps.push(`insert ${insert.mark}: the yard lists no kind ${insert.type}`)
    else if (kind.kind !== insert.kind) {
      gaps.push(
        `insert ${insert.mark}: drawn as ${insert.kind} insert, ${kind.mark} is a ${kind.kind} insert`,
      )
    } else {
      const group = kinds.get(kind.mark) ?? { kind, inserts: [] }
      group.inserts.push(insert)
      kinds.set(kind.mark, group)
    }
  }
  return { kinds: [...kinds.values()], gaps }
}
