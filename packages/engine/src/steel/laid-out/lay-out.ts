import type { SteelRules } from '../../codes/steel-rules.ts'
import { isEdgeBars, isListed, isMat, isStarters, isTieBars, isTrimmers } from '../../panel/drawn-steel.ts'
import type { Panel } from '../../panel/panel.ts'
import type { Yard } from '../../yard/yard.ts'
import type { ListedBar } from '../listed-bars.ts'
import type { PlannedMat } from '../mats.ts'
import type { Corner } from '../steel-plan.ts'
import { askedBeside } from './beside-check.ts'
import { edgeBars } from './edge-bars.ts'
import { type EdgeRun, edgeRuns } from './edge-runs.ts'
import { type LaidLine, type LayContext, NOTHING, roomIn } from './lay-context.ts'
import { type ListedPlace, listedPlaces } from './listed-places.ts'
import { insertsKept } from './row-obstacles.ts'
import { emptySpace, solidsOf } from './space.ts'
import { starters } from './starters.ts'
import { tieBars } from './tie-bars.ts'
import { trimmers } from './trimmers.ts'
import { websOn } from './webs.ts'

export interface LaidOut {
  /** One a line of the drawing that is no mat and no listed bar, in its order. */
  readonly lines: readonly LaidLine[]
  /** Placements of listed bars by mark, in the order of their paths. */
  readonly listed: ReadonlyMap<string, readonly ListedPlace[]>
}

export interface LayOutInput {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly rules: SteelRules
  readonly mats: readonly PlannedMat[]
  readonly listed: readonly ListedBar[]
}

/**
 * Lays out all bars but the mats: trimmers and diagonals, U-bars and hooks, listed bars, starters, ties, in that order. Each takes the height nearest its face at which it runs into no bar that lies there already.
 */
export function layOut({ panel, yard, rules, mats, listed }: LayOutInput): LaidOut {
  const others = (panel.drawing.steel ?? []).filter((steel) => !isMat(steel) && !isListed(steel))
  const placed = listed.filter(({ paths, drawn }) => paths.length > 0 && drawn.layer !== undefined)
  if (others.length === 0 && placed.length === 0) return { lines: [], listed: new Map() }
  const edgeCover = panel.drawing.cover?.edge
  const clearBeside = clearOf(panel, rules)
  const space = emptySpace(clearBeside)
  for (const mat of mats) addMat(mat, space)
  const runs: readonly EdgeRun[] = others.length > 0 ? edgeRuns(panel) : []
  const context: LayContext = {
    panel,
    rules,
    mats,
    runs,
    webs: websOn(panel, runs, rules),
    space,
    clearBeside,
    inserts: insertsKept(panel, yard),
    edgeCover: edgeCover ?? 0,
    roomFor: roomIn(panel, edgeCover ?? 0),
    stacked: { mould: [], top: [] },
  }
  const keys = keysOf(others, new Set([...listed.map(({ mark }) => mark), ...mats.map(({ key }) => key)]))
  const lines = new Map<number, LaidLine>()
  const lay = (wanted: (steel: (typeof others)[number]) => boolean): void => {
    for (const [i, steel] of others.entries()) {
      if (!wanted(steel)) continue
      const key = keys[i] as string
      lines.set(
        i,
        edgeCover === undefined
          ? { ...NOTHING, gaps: [`${key}: cover.edge: cover at edges and openings, mm`] }
          : lineOf(steel, key, context),
      )
    }
  }
  lay(isTrimmers)
  lay(isEdgeBars)
  const places = listedPlaces(placed, context)
  lay((steel) => isStarters(steel) || isTieBars(steel))
  return { lines: others.map((_, i) => lines.get(i) ?? NOTHING), listed: places }
}

/** Clear distance that the code asks beside a bar, worked out once a diameter. */
function clearOf({ drawing }: Panel, rules: SteelRules): (diameter: number) => number | null {
  const known = new Map<number, number | null>()
  return (diameter) => {
    const before = known.get(diameter)
    if (before !== undefined) return before
    const clear = askedBeside({ drawing, rules, diameter })
    const value = clear.known ? clear.value : null
    known.set(diameter, value)
    return value
  }
}

function lineOf(steel: Parameters<typeof isMat>[0], key: string, context: LayContext): LaidLine {
  if (isEdgeBars(steel)) return edgeBars(steel, key, context)
  if (isTrimmers(steel)) return trimmers(steel, key, context)
  if (isStarters(steel)) return starters(steel, key, context)
  return isTieBars(steel) ? tieBars(steel, key, context) : NOTHING
}

/** Names of the lines for checks, each once in the plan: the drawing's mark, else kind and number. */
function keysOf(others: readonly Parameters<typeof isMat>[0][], taken: Set<string>): string[] {
  return others.map((steel) => {
    const own = 'mark' in steel ? steel.mark : undefined
    const name = own ?? kindOf(steel)
    let number = 1
    let key = own ?? `${name}-1`
    while (taken.has(key)) {
      number += 1
      key = `${name}-${number}`
    }
    taken.add(key)
    return key
  })
}

function kindOf(steel: Parameters<typeof isMat>[0]): string {
  if (isEdgeBars(steel)) return 'edge'
  if (isTrimmers(steel)) return 'trimmers'
  return isStarters(steel) ? 'starters' : 'ties'
}

function addMat({ key, mat, rows, height }: PlannedMat, space: LayContext['space']): void {
  if (height === null) return
  for (const { line, cut, aside } of rows) {
    for (const [i, { from, to }] of cut.pieces.entries()) {
      const across = line.at + (aside[i] ?? 0)
      const centreline: Corner[] =
        mat.direction === 'x'
          ? [
              [from, across, height],
              [to, across, height],
            ]
          : [
              [across, from, height],
              [across, to, height],
            ]
      space.add(solidsOf({ id: `${key} ${line.row} ${from}`, centreline, diameter: mat.diameter }))
    }
  }
}
