import type { DrawnInsert, Lying } from '../../panel/drawing.ts'
import type { Panel } from '../../panel/panel.ts'
import { distance, type Point } from '../../panel/point.ts'
import type { Piece } from '../../panel/region.ts'
import type { StepId } from '../../steps/steps.ts'
import type { Assumed } from '../../working/worked.ts'
import { inOneLine } from '../supports.ts'
import { type Axis, partsOnLine, partsOnSide, type Side } from './lines.ts'
import type { LiftStageId } from './stage.ts'

/** What carries the panel at a stage, before anything is computed. */
export interface Arrangement {
  readonly id: LiftStageId
  readonly step: StepId
  readonly name: string
  readonly how: string
  /** `points`: hangs flat on inserts. `edge`: rests on an edge, picked at inserts. `lines`: lies on timbers. `upright`: stands or hangs. */
  readonly on: 'points' | 'edge' | 'lines' | 'upright'
  readonly picks: readonly DrawnInsert[]
  readonly lines: readonly (readonly [Point, Point])[]
  /** Edge that the panel turns about. */
  readonly about: Side | null
  /** Mark of the rigging; undefined where the drawing names none. */
  readonly rigging: string | undefined
  /** From plumb, degrees: what leans in a rack. */
  readonly lean: number | null
  readonly assumed: readonly Assumed[]
  readonly gaps: readonly string[]
}

const NAMES: Readonly<Record<LiftStageId, readonly [name: string, step: StepId]>> = {
  release: ['Leaves the mould', 'strip'],
  turn: ['Turned about its edge', 'strip'],
  hang: ['Hangs upright', 'strip'],
  store: ['Stored', 'store'],
  travel: ['On the trailer', 'load'],
  erect: ['Set at the site', 'hand-over'],
}

/** Timbers of a panel stored flat where nobody says it: the places that keep sagging and hogging alike, of the length. */
const TIMBER_SHARE = (Math.SQRT2 - 1) / 2

/** Lean in a rack where nobody says it, degrees. */
const LEAN = 8

interface Found {
  readonly panel: Panel
  readonly piece: Piece
  readonly face: readonly DrawnInsert[]
  readonly turn: Turn | null
}

interface Turn {
  readonly about: Side
  readonly picks: readonly DrawnInsert[]
  readonly rigging: string | undefined
  readonly assumed: readonly Assumed[]
  readonly gaps: readonly string[]
}

const NOT_TURNED: Assumed = {
  field: 'handling.turn',
  value: 'not turned',
  unit: '',
  why: 'neither edge inserts nor handling.turn on the drawing: it is moved flat',
}

/**
 * How the panel is carried at each stage: by the drawing's `handling`, else by its inserts. A panel with edge inserts is turned up
 * about the edge opposite to them; one with face inserts only is moved flat and not turned, unless the drawing says so. Stages that a
 * panel does not go through are left out.
 */
export function arrangements(panel: Panel): Arrangement[] {
  const piece = panel.region[0]
  if (piece === undefined) return []
  const inserts = panel.drawing.inserts ?? []
  const face = inserts.filter(({ kind }) => kind === 'face')
  const found: Found = { panel, piece, face, turn: turnOf(panel, piece) }
  return [
    { ...release(found), ...(found.turn === null ? { assumed: [NOT_TURNED] } : {}) },
    ...(found.turn === null ? [] : [turning('turn', found, found.turn), hanging(found.turn)]),
    lying('store', found, panel.drawing.handling?.store),
    lying('travel', found, panel.drawing.handling?.travel ?? panel.drawing.handling?.store),
    atSite(found.turn === null ? flat('erect', found) : turning('erect', found, found.turn)),
  ]
}

function base(
  id: LiftStageId,
): Pick<Arrangement, 'id' | 'name' | 'step' | 'lines' | 'about' | 'rigging' | 'lean' | 'assumed' | 'gaps'> {
  const [name, step] = NAMES[id]
  return { id, name, step, lines: [], about: null, rigging: undefined, lean: null, assumed: [], gaps: [] }
}

function count(inserts: number): string {
  return `${inserts} face insert${inserts === 1 ? '' : 's'}`
}

/** The rigging of the site is not known here: the panel bends as it does on these points, what hangs on each insert is the site's to work out. */
function atSite(arrangement: Arrangement): Arrangement {
  return { ...arrangement, rigging: undefined, how: `${arrangement.how}, by the rigging of the site` }
}

function flat(id: LiftStageId, { face, panel }: Found): Arrangement {
  const gaps = flatGaps(face, panel.centre)
  const { rigging } = panel.drawing
  return { ...base(id), how: `flat on ${count(face.length)}`, on: 'points', picks: face, rigging, gaps }
}

/** Three or more carry a panel flat; two where the centre of gravity lies on their line, free to swing about it. */
function flatGaps(face: readonly DrawnInsert[], centre: Point): string[] {
  const points = face.map(({ at }) => at)
  const [a, b] = points
  if (a !== undefined && b !== undefined && points.length === 2) {
    return inOneLine([a, b, centre]) && distance(a, b) > 1
      ? []
      : ['face inserts: the centre of gravity is not on the line of the two']
  }
  if (face.length < 3)
    return [`face inserts: three or more carry a panel flat, the drawing has ${face.length}`]
  return inOneLine(points) ? ['face inserts: all in one line do not carry a panel flat'] : []
}

function release(found: Found): Arrangement {
  const { face, turn } = found
  // Edge inserts alone pitch the panel off the mould about the other edge.
  if (face.length < 3 && turn !== null) {
    return { ...turning('release', found, turn), how: `pitched off the mould about its ${turn.about} edge` }
  }
  return flat('release', found)
}

const OPPOSITE: Readonly<Record<Side, Side>> = { bottom: 'top', top: 'bottom', left: 'right', right: 'left' }

function turnOf({ drawing }: Panel, piece: Piece): Turn | null {
  const drawn = drawing.handling?.turn
  const inserts = drawing.inserts ?? []
  if (drawn !== undefined) {
    const named = inserts.filter(({ mark }) => drawn.inserts?.includes(mark) ?? false)
    const picks = drawn.inserts === undefined ? farthest(inserts, drawn.about) : named
    const gaps = picks.length === 0 ? ['handling.turn: no insert to turn it by'] : []
    const value = picks.map(({ mark }) => mark).join(', ')
    const why = 'the drawing names none: those farthest from the edge that it turns about'
    const assumed: Assumed[] =
      drawn.inserts === undefined && picks.length > 0
        ? [{ field: 'handling.turn.inserts', value, unit: '', why }]
        : []
    return { about: drawn.about, picks, rigging: drawn.rigging ?? drawing.rigging, assumed, gaps }
  }
  const edge = inserts.filter(({ kind }) => kind === 'edge')
  if (edge.length === 0) return null
  const side = (['top', 'bottom', 'right', 'left'] as const).find((one) =>
    edge.every(({ at }) => partsOnSide(piece, one).some(([a, b]) => between(at, a, b))),
  )
  if (side === undefined) {
    const gaps = [
      'edge inserts: not all on one outer edge; the drawing’s handling.turn says how it is turned',
    ]
    return { about: 'bottom', picks: edge, rigging: drawing.rigging, assumed: [], gaps }
  }
  const about = OPPOSITE[side]
  const why = 'the drawing has no handling.turn: opposite to its edge inserts'
  return {
    about,
    picks: edge,
    rigging: drawing.rigging,
    assumed: [{ field: 'handling.turn.about', value: about, unit: '', why }],
    gaps: [],
  }
}

function between([x, y]: Point, a: Point, b: Point): boolean {
  const slack = 1
  return (
    x >= Math.min(a[0], b[0]) - slack &&
    x <= Math.max(a[0], b[0]) + slack &&
    y >= Math.min(a[1], b[1]) - slack &&
    y <= Math.max(a[1], b[1]) + slack
  )
}

/** The inserts that stand farthest from the edge that a panel turns about, in one row. */
function farthest(inserts: readonly DrawnInsert[], about: Side): readonly DrawnInsert[] {
  const away = ({ at }: DrawnInsert): number =>
    about === 'bottom' ? at[1] : about === 'top' ? -at[1] : about === 'left' ? at[0] : -at[0]
  const most = Math.max(...inserts.map(away))
  return inserts.filter((insert) => most - away(insert) <= ROW)
}

/** Inserts within this of the farthest belong to its row, mm. */
const ROW = 50

function turning(
  id: LiftStageId,
  { piece }: Found,
  { about, picks, rigging, assumed, gaps }: Turn,
): Arrangement {
  const lines = partsOnSide(piece, about)
  return {
    ...base(id),
    how: `on its ${about} edge, picked at ${picks.map(({ mark }) => mark).join(', ')}`,
    on: 'edge',
    picks,
    lines,
    about,
    rigging,
    assumed,
    gaps: lines.length > 0 ? gaps : [...gaps, `${about} edge: a corner only, nothing to turn on`],
  }
}

function hanging({ about, picks, rigging, gaps }: Turn): Arrangement {
  return {
    ...base('hang'),
    how: `hanging from ${picks.map(({ mark }) => mark).join(', ')}`,
    on: 'upright',
    picks,
    about,
    rigging,
    gaps,
  }
}

function lying(
  id: 'store' | 'travel',
  { panel, piece, face, turn }: Found,
  drawn: Lying | undefined,
): Arrangement {
  const assumed: Assumed[] = []
  const field = `handling.${id}`
  const as = drawn?.as ?? (face.length < 3 && turn !== null ? 'upright' : 'flat')
  if (drawn === undefined) {
    assumed.push({
      field: `${field}.as`,
      value: as,
      unit: '',
      why: 'the drawing does not say how it is kept',
    })
  }
  if (as === 'upright') return standing(id, { panel, piece, turn }, drawn, assumed)
  const longer = panel.length >= panel.width ? 'x' : 'y'
  const across = drawn?.across ?? (drawn?.lines === undefined ? firmAxis(panel, piece, face, longer) : longer)
  if (drawn !== undefined && drawn.across === undefined) {
    assumed.push({
      field: `${field}.across`,
      value: across,
      unit: '',
      why: 'the drawing does not say along which axis: the longer side, unless it tips there',
    })
  }
  const places = drawn?.lines ?? timbersOf(panel, face, across)
  if (drawn?.lines === undefined) {
    const value = places.map((at) => `${Math.round(at)}`).join(' and ')
    assumed.push({
      field: `${field}.lines`,
      value,
      unit: 'mm',
      why: 'timbers under the picks, or where sag and hog are alike',
    })
  }
  const lines = places.flatMap((at) => partsOnLine(piece, across, at))
  const gaps = places.flatMap((at) =>
    partsOnLine(piece, across, at).length > 0
      ? []
      : [`${field}: no concrete over the timber at ${across} ${Math.round(at)} mm`],
  )
  const how = `flat on two timbers at ${across} ${places.map((at) => Math.round(at)).join(' and ')} mm`
  return { ...base(id), how, on: 'lines', picks: [], lines, assumed, gaps }
}

function standing(
  id: 'store' | 'travel',
  { piece, turn }: { readonly panel: Panel; readonly piece: Piece; readonly turn: Turn | null },
  drawn: Lying | undefined,
  assumed: Assumed[],
): Arrangement {
  const about = turn?.about ?? 'bottom'
  const lean = drawn?.lean ?? LEAN
  if (drawn?.lean === undefined) {
    assumed.push({
      field: `handling.${id}.lean`,
      value: lean,
      unit: '°',
      why: 'frames usually lean 5 to 10°: common practice, no source',
    })
  }
  const lines = [...partsOnSide(piece, about), ...partsOnSide(piece, OPPOSITE[about])]
  const gaps = lines.length >= 2 ? [] : ['stands upright: its lower and upper edge must both be straight']
  const how = `standing on its ${about} edge, leaning ${lean}° against the upper`
  return { ...base(id), how, on: 'lines', picks: [], lines, lean, about, assumed, gaps }
}

/** Outermost rows of the face inserts along the axis; where they are too near each other the places of equal sag and hog. */
function timbersOf(panel: Panel, face: readonly DrawnInsert[], axis: Axis): readonly [number, number] {
  const [from, size] = axis === 'x' ? [panel.left, panel.length] : [panel.bottom, panel.width]
  const along = face.map(({ at }) => at[axis === 'x' ? 0 : 1])
  const [first, last] = [Math.min(...along), Math.max(...along)]
  return face.length >= 3 && last - first > size / 3
    ? [first, last]
    : [from + TIMBER_SHARE * size, from + (1 - TIMBER_SHARE) * size]
}

/** The longer way, unless the panel would tip off timbers across it and not off those across the other. */
function firmAxis(panel: Panel, piece: Piece, face: readonly DrawnInsert[], longer: Axis): Axis {
  const firm = (axis: Axis): boolean => {
    const [along, free] = axis === 'x' ? ([0, 1] as const) : ([1, 0] as const)
    const places = timbersOf(panel, face, axis)
    return (
      places[0] < panel.centre[along] &&
      panel.centre[along] < places[1] &&
      places.every((at) => {
        const ends = partsOnLine(piece, axis, at)
          .flat()
          .map((end) => end[free])
        return Math.min(...ends) < panel.centre[free] && panel.centre[free] < Math.max(...ends)
      })
    )
  }
  const other = longer === 'x' ? 'y' : 'x'
  return !firm(longer) && firm(other) ? other : longer
}
