import { type Drawing, type DrawnBar, isListed, parseDrawing } from '@castwright/engine/panel'
import { InputError, type InputIssue } from '@castwright/engine/working'

export interface AddBarsInput {
  readonly drawing: Drawing
  readonly bars: readonly DrawnBar[]
  /** Bars of the drawing with the same mark give way; without it a mark that is there already is refused. */
  readonly replace?: boolean
}

/**
 * The drawing with the bars of a list added to its steel.
 *
 * @throws InputError where a mark is in the drawing already, or is drawn there with its place, which a list cannot say.
 */
export function addBars({ drawing, bars, replace = false }: AddBarsInput): Drawing {
  const marks = new Set(bars.map(({ bar }) => bar))
  const issues = (drawing.steel ?? []).flatMap((steel, index): InputIssue[] => {
    if (!isListed(steel) || !marks.has(steel.bar)) return []
    const path = `steel[${index}].bar`
    const found = `${JSON.stringify(steel.bar)}, which is in the list too`
    if (!replace) return [{ path, found, expected: 'other marks, or to replace the bars of the same mark' }]
    return steel.path === undefined
      ? []
      : [{ path, found, expected: 'a bar without its place: this one is drawn where it lies' }]
  })
  if (issues.length > 0) throw new InputError(issues, 'drawing')
  const kept = (drawing.steel ?? []).filter((steel) => !isListed(steel) || !marks.has(steel.bar))
  return parseDrawing({ ...drawing, steel: [...kept, ...bars] }, 'drawing')
}
