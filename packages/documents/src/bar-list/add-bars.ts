import { codeFamily, type FamilyId } from '@castwright/engine/codes'
import { type Drawing, type DrawnBar, panelOf, parseDrawing } from '@castwright/engine/panel'
import { planSteel } from '@castwright/engine/steel'
import { InputError, type InputIssue } from '@castwright/engine/working'

export interface AddBarsInput {
  readonly drawing: Drawing
  readonly bars: readonly DrawnBar[]
  readonly family: FamilyId
  /**
   * A mark that the drawing has already: `refuse` it, `replace` the drawing's listed bars of that mark, or `keep` what is drawn and leave
   * out the bars of the list.
   */
  readonly existing?: 'refuse' | 'replace' | 'keep'
}

export interface AddedBars {
  readonly drawing: Drawing
  /** Marks of the list that were left out, since the drawing has them. */
  readonly kept: readonly string[]
}

/**
 * The drawing with the bars of a list added to its steel.
 *
 * @throws InputError where a mark is in the drawing already and may not be replaced: bars of its mats and of what else it lays out, and bars
 * drawn with their place, which a list cannot say.
 */
export function addBars({ drawing, bars, family, existing = 'refuse' }: AddBarsInput): AddedBars {
  const steel = drawing.steel ?? []
  const drawn = marksOf(drawing, family)
  const marks = new Set(bars.map(({ bar }) => bar))
  const both = [...marks].filter(drawn)
  if (existing === 'keep') {
    const added = bars.filter(({ bar }) => !drawn(bar))
    if (added.length === 0) throw refused([issue('steel', 'no bar that the drawing has not', 'new marks')])
    return { drawing: withSteel(drawing, [...steel, ...added]), kept: both }
  }
  const issues = both.flatMap((mark): InputIssue[] => {
    const index = steel.findIndex((each) => 'bar' in each && each.bar === mark)
    const found = `${JSON.stringify(mark)}, which is in the list too`
    if (index < 0) return [issue('steel', found, 'another mark: this one is laid out by the drawing itself')]
    const path = `steel[${index}].bar`
    if (existing === 'refuse')
      return [issue(path, found, 'another mark, or to replace or keep what is drawn')]
    return steel.some((each) => 'bar' in each && each.bar === mark && each.path !== undefined)
      ? [issue(path, found, 'a bar without its place: this one is drawn where it lies')]
      : []
  })
  if (issues.length > 0) throw refused(issues)
  const stay = steel.filter((each) => !('bar' in each) || !marks.has(each.bar))
  return { drawing: withSteel(drawing, [...stay, ...bars]), kept: [] }
}

/**
 * Whether the drawing has a mark: of a listed bar or one of its lapped pieces (`B1/2`), of what its own layout gives, or of a mat, whose
 * bars are `MX1`, `MX2` … as many as the yard's stock makes.
 */
function marksOf(drawing: Drawing, family: FamilyId): (mark: string) => boolean {
  const steel = drawing.steel ?? []
  const listed = new Set(steel.flatMap((each) => ('bar' in each ? [each.bar] : [])))
  const own = steel.filter((each) => !('bar' in each))
  const panel = panelOf({ ...drawing, steel: own })
  const laid = planSteel({ panel, yard: null, family: codeFamily(family) }).bars.map(({ mark }) => mark)
  const mats = new Set(laid.flatMap((mark) => /^([MT][XY])\d+$/.exec(mark)?.[1] ?? []))
  return (mark) =>
    listed.has(mark) ||
    listed.has(mark.replace(/\/\d+$/, '')) ||
    laid.includes(mark) ||
    mats.has(mark.replace(/\d+$/, ''))
}

function withSteel(drawing: Drawing, steel: NonNullable<Drawing['steel']>): Drawing {
  return parseDrawing({ ...drawing, steel }, 'drawing')
}

function issue(path: string, found: string, expected: string): InputIssue {
  return { path, found, expected }
}

function refused(issues: readonly InputIssue[]): InputError {
  return new InputError(issues, 'drawing')
}
