import { type Drawing, type DrawnSteel, isListed, isMat } from '@castwright/engine/panel'
import { type DraftHandling, EMPTY_HANDLING, handlingDraft } from './handling-draft.ts'
import { type DraftLaid, laidDraft } from './laid-draft.ts'

/** A corner as typed, mm. */
export interface DraftCorner {
  readonly x: string
  readonly y: string
}

export interface DraftOpening {
  readonly mark: string
  /** `box` by place and size, `corners` one by one. */
  readonly form: 'box' | 'corners'
  readonly x: string
  readonly y: string
  readonly width: string
  readonly height: string
  readonly corners: readonly DraftCorner[]
}

/** Depth, heights, mass and section of a void former beside its shape. */
export interface DraftVoid extends DraftOpening {
  readonly depth: string
  readonly above: string
  readonly mass: string
  readonly density: string
  readonly section: string
}

export interface DraftDuct {
  readonly mark: string
  readonly diameter: string
  readonly height: string
  readonly mass: string
  /** Points of its axis. */
  readonly corners: readonly DraftCorner[]
}

export interface DraftMat {
  readonly kind: 'mat'
  readonly layer: string
  readonly direction: string
  readonly diameter: string
  readonly grade: string
  readonly spacing: string
  /** Steel provided over steel required. */
  readonly spare?: string
}

export interface DraftBar {
  readonly kind: 'bar'
  readonly bar: string
  readonly layer: string
  readonly role: string
  readonly diameter: string
  readonly grade: string
  readonly form: 'path' | 'legs'
  readonly corners: readonly DraftCorner[]
  /** Outside lengths and turns, parted by spaces. */
  readonly legs: string
  readonly turns: string
  readonly inside: string
  readonly count: string
  /** Whether it is tied to bars that it lies against: `yes`, `no`, or not said. */
  readonly tied: string
}

export interface DraftInsert {
  readonly mark: string
  readonly x: string
  readonly y: string
  readonly kind: string
  readonly type: string
}

/** A drawing as it is being typed: every number is the text that the person wrote. */
export interface Draft {
  readonly job: string
  readonly mark: string
  readonly revision: string
  readonly code: string
  readonly edition: string
  readonly form: 'box' | 'corners'
  readonly length: string
  readonly width: string
  readonly corners: readonly DraftCorner[]
  readonly thickness: string
  readonly strength: string
  readonly density: string
  readonly aggregate: string
  readonly coverMould: string
  readonly coverTop: string
  readonly coverEdge: string
  readonly openings: readonly DraftOpening[]
  readonly voids: readonly DraftVoid[]
  readonly ducts: readonly DraftDuct[]
  readonly steel: readonly (DraftMat | DraftBar | DraftLaid)[]
  readonly lap: string
  readonly inserts: readonly DraftInsert[]
  readonly rigging: string
  readonly liftStrength: string
  readonly liftLoad: string
  readonly liftReference: string
  readonly liftBy: string
  readonly handling: DraftHandling
  /** Close steel as the drawing file says it: kept as it is, this form has no fields for it. */
  readonly congested: NonNullable<Drawing['congested']>
}

export const EMPTY_DRAFT: Draft = {
  job: '',
  mark: '',
  revision: 'A',
  code: '',
  edition: '',
  form: 'box',
  length: '',
  width: '',
  corners: [],
  thickness: '',
  strength: '',
  density: '',
  aggregate: '',
  coverMould: '',
  coverTop: '',
  coverEdge: '',
  openings: [],
  voids: [],
  ducts: [],
  steel: [],
  lap: '',
  inserts: [],
  rigging: '',
  liftStrength: '',
  liftLoad: '',
  liftReference: '',
  liftBy: '',
  handling: EMPTY_HANDLING,
  congested: [],
}

type Ring = readonly (readonly [number, number])[]

/** A drawing as text to go on typing at. */
export function draftOf(drawing: Drawing): Draft {
  const outline: Ring = drawing.outline
  const box = boxOf(outline)
  const whole = box !== null && box.x === 0 && box.y === 0
  return {
    job: drawing.job ?? '',
    mark: drawing.mark,
    revision: drawing.revision ?? 'A',
    code: drawing.code ?? '',
    edition: drawing.edition ?? '',
    form: whole ? 'box' : 'corners',
    length: whole ? String(box.width) : '',
    width: whole ? String(box.height) : '',
    corners: cornersOf(outline),
    thickness: String(drawing.thickness),
    strength: String(drawing.concrete.strength),
    density: text(drawing.concrete.density),
    aggregate: text(drawing.concrete.aggregate),
    coverMould: text(drawing.cover?.mould),
    coverTop: text(drawing.cover?.top),
    coverEdge: text(drawing.cover?.edge),
    openings: (drawing.openings ?? []).map((opening) => openingDraft(opening.mark, opening.outline)),
    voids: (drawing.voids ?? []).map((former) => ({
      ...openingDraft(former.mark, former.outline),
      depth: String(former.depth),
      above: String(former.above),
      mass: text(former.mass),
      density: text(former.density),
      section: text(former.section),
    })),
    ducts: (drawing.ducts ?? []).map((duct) => ({
      mark: duct.mark,
      diameter: String(duct.diameter),
      height: String(duct.height),
      mass: text(duct.mass),
      corners: cornersOf(duct.line),
    })),
    steel: (drawing.steel ?? []).map(steelDraft),
    lap: text(drawing.lap?.length),
    inserts: (drawing.inserts ?? []).map(({ mark, at, kind, type }) => ({
      mark,
      x: String(at[0]),
      y: String(at[1]),
      kind,
      type: type ?? '',
    })),
    rigging: drawing.rigging ?? '',
    liftStrength: text(drawing.lifting?.strength),
    liftLoad: text(drawing.lifting?.load),
    liftReference: drawing.lifting?.reference ?? '',
    liftBy: drawing.lifting?.by ?? '',
    handling: handlingDraft(drawing.handling),
    congested: drawing.congested ?? [],
  }
}

function openingDraft(mark: string, ring: Ring): DraftOpening {
  const box = boxOf(ring)
  return {
    mark,
    form: box === null ? 'corners' : 'box',
    x: text(box?.x),
    y: text(box?.y),
    width: text(box?.width),
    height: text(box?.height),
    corners: cornersOf(ring),
  }
}

function steelDraft(steel: DrawnSteel): DraftMat | DraftBar | DraftLaid {
  if (isMat(steel)) {
    return {
      kind: 'mat',
      layer: steel.layer,
      direction: steel.direction,
      diameter: String(steel.diameter),
      grade: steel.grade,
      spacing: String(steel.spacing),
      ...(steel.spare === undefined ? {} : { spare: String(steel.spare) }),
    }
  }
  if (!isListed(steel)) return laidDraft(steel)
  return {
    kind: 'bar',
    bar: steel.bar,
    layer: steel.layer ?? '',
    role: steel.role ?? '',
    diameter: String(steel.diameter),
    grade: steel.grade,
    form: steel.path ? 'path' : 'legs',
    corners: cornersOf(steel.path ?? []),
    legs: (steel.legs ?? []).join(' '),
    turns: (steel.turns ?? []).join(' '),
    inside: text(steel.inside),
    count: text(steel.count),
    tied: steel.tied === undefined ? '' : steel.tied ? 'yes' : 'no',
  }
}

/** Place and size of a ring that is an upright rectangle, from its lower left corner; null of any other. */
export function boxOf(
  ring: Ring,
): { readonly x: number; readonly y: number; readonly width: number; readonly height: number } | null {
  if (ring.length !== 4) return null
  const [xs, ys] = [ring.map(([x]) => x), ring.map(([, y]) => y)]
  const [x, y] = [Math.min(...xs), Math.min(...ys)]
  const [right, top] = [Math.max(...xs), Math.max(...ys)]
  const corners = new Set(ring.map(([px, py]) => `${px} ${py}`))
  const upright = [
    [x, y],
    [right, y],
    [right, top],
    [x, top],
  ].every(([px, py]) => corners.has(`${px} ${py}`))
  const sides = ring.every(([px, py], index) => {
    const [nx, ny] = ring[(index + 1) % 4] ?? [px, py]
    return (px === nx) !== (py === ny)
  })
  return upright && sides ? { x, y, width: right - x, height: top - y } : null
}

function cornersOf(ring: Ring): DraftCorner[] {
  return ring.map(([x, y]) => ({ x: String(x), y: String(y) }))
}

function text(value: number | undefined): string {
  return value === undefined ? '' : String(value)
}
