import type { CodeFamily } from '../../codes/family.ts'
import type { Panel } from '../../panel/panel.ts'
import type { EnteredLimit } from '../../steps/facts.ts'
import type { Assumed } from '../../working/worked.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import type { Yard } from '../../yard/yard.ts'
import { bodiesNear } from '../bodies-near.ts'
import { type DrawnKinds, drawnKinds } from '../insert-kinds.ts'
import { rigged } from '../rigging/rigged.ts'
import type { Rigged, RiggedPick } from '../rigging/rigging-types.ts'
import { turning } from '../rigging/turning.ts'
import { riggingOf } from '../rigging-of.ts'
import { anchorModes } from './anchor-modes.ts'
import type { Arrangement } from './arrangement.ts'
import type { Bent } from './bending.ts'
import type { Side } from './lines.ts'
import type { InsertAction, StageHung, StageInsert } from './stage.ts'
import { stageFactor } from './stage-factor.ts'

export interface StageInsertsInput {
  readonly arrangement: Arrangement
  readonly panel: Panel
  readonly yard: Yard | null
  readonly family: CodeFamily
  readonly limits: Readonly<Record<string, EnteredLimit>>
  /** Bending under factor 1; null for what hangs, or where it is not known. */
  readonly bent: Omit<Bent, 'field'> | null
}

export interface StageInserts {
  readonly inserts: readonly StageInsert[]
  /** Absent where nothing hangs. */
  readonly hung?: StageHung | null
  readonly assumed: readonly Assumed[]
}

/**
 * What hangs on each insert at a stage that lifts: the worst of the legs that count, of legs of uneven length and of all angles while the panel is turned, with
 * the stage's factor for inserts and the angle of its leg. Empty where nothing hangs, and at the site, whose rigging is not known here.
 */
export function stageInserts(input: StageInsertsInput): StageInserts {
  const { arrangement, panel, yard, family, limits, bent } = input
  const { id, picks, gaps } = arrangement
  if (picks.length === 0 || id === 'erect') return { inserts: [], assumed: [] }
  const factor = stageFactor({ stage: id, panel, yard, family, limits, of: 'inserts' })
  const cases =
    gaps.length > 0 ? unknown(...gaps) : factor.known ? hungCases(input, factor.value.factor) : factor
  const kinds = drawnKinds({ drawing: panel.drawing, yard })
  const f = factor.known ? factor.value.factor : null
  const inserts = picks.map((pick, i): StageInsert => {
    const kind =
      kinds.kinds.find(({ inserts: of }) => of.some(({ mark }) => mark === pick.mark))?.kind ?? null
    const own = cases.known
      ? cases.value.map(({ angle, rigged: hung }) => ({ angle, on: hung.picks[i]! }))
      : []
    const worst = own.reduce<(typeof own)[number] | null>(
      (most, one) => (most === null || one.on.load > most.on.load ? one : most),
      null,
    )
    const actions = own.map(
      ({ angle, on }): InsertAction => ({ angle, load: on.load, tension: on.tension, shear: on.shear }),
    )
    const anchors =
      kind === null || worst === null
        ? null
        : anchorModes({
            panel,
            family,
            kind,
            pick,
            actions,
            cracked: bent === null && arrangement.on !== 'upright',
          })
    return {
      mark: pick.mark,
      at: pick.at,
      share: f === null || bent === null ? null : (bent.shares[i] ?? 0) * f,
      load: worst?.on.load ?? null,
      tension: worst?.on.tension ?? null,
      shear: worst?.on.shear ?? null,
      from: worst === null ? '' : fromWords(worst.on, worst.angle, arrangement),
      rating:
        kind === null
          ? null
          : {
              mark: kind.mark,
              rated: kind.rated,
              ratedStrength: kind.ratedStrength,
              leastStrength: kind.leastStrength,
            },
      resistance: anchors?.known ? anchors.value : null,
      gaps: [
        ...(cases.known ? [] : cases.gaps),
        ...(anchors !== null && !anchors.known && family.lift.anchor ? anchors.gaps : []),
        ...kindGaps(kinds, pick.mark, kind === null),
        ...bodiesNear({ panel, insert: pick, depth: kind?.depth }).map(
          (body) =>
            `insert ${pick.mark}: ${body} in the concrete that it pulls on, its resistance is not computed`,
        ),
      ],
      working: [
        ...(factor.known ? factor.working : []),
        ...(cases.known ? (cases.value.find(({ angle }) => angle === worst?.angle)?.working ?? []) : []),
        ...(anchors?.known ? anchors.working : []),
      ],
    }
  })
  const assumed = cases.known ? cases.value.flatMap((one) => one.assumed) : []
  return {
    inserts,
    hung: cases.known ? hungOf(arrangement, cases.value) : null,
    assumed: assumed.filter((one, i) => assumed.findIndex(({ field }) => field === one.field) === i),
  }
}

/** The case with the greatest load on a leg. */
function hungOf({ on, rigging }: Arrangement, cases: readonly HungCase[]): StageHung | null {
  const most = ({ rigged: { picks } }: HungCase): number => Math.max(...picks.map(({ load }) => load))
  const worst = cases.reduce<HungCase | null>(
    (one, next) => (one === null || most(next) > most(one) ? next : one),
    null,
  )
  if (worst === null || rigging === undefined) return null
  return { angle: worst.angle, hang: on === 'points' ? 'flat' : 'row', rigging, rigged: worst.rigged }
}

function kindGaps({ gaps }: DrawnKinds, mark: string, missing: boolean): readonly string[] {
  return missing ? gaps.filter((gap) => gap.startsWith(`insert ${mark}:`)) : []
}

function fromWords({ from }: RiggedPick, angle: number, { on }: Arrangement): string {
  return on === 'edge' && angle > 0 ? `${from}, the panel at ${Math.round(angle)}°` : from
}

interface HungCase {
  /** Panel from level, degrees. */
  readonly angle: number
  readonly rigged: Rigged
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

function hungCases(input: StageInsertsInput, factor: number): Worked<HungCase[]> {
  const { arrangement, panel, bent } = input
  const load = panel.weight * factor
  if (arrangement.on === 'points') {
    if (bent === null) return unknown('loads by the bending of the panel')
    const shares = bent.shares.map((share) => share * factor)
    return all([rigOf(input, { hang: 'flat', angle: 0, load, shares })])
  }
  if (arrangement.on === 'upright') return all([rigOf(input, { hang: 'row', angle: 90, load })])
  const turned = turningOf(input, load)
  if (!turned.known) return turned
  return all(
    turned.value.map(({ angle, force }) =>
      rigOf(input, { hang: 'row', angle, load: force, before: turned.working }),
    ),
  )
}

function all(cases: readonly Worked<HungCase>[]): Worked<HungCase[]> {
  const gaps = cases.flatMap((one) => (one.known ? [] : one.gaps))
  if (gaps.length > 0) return unknown(...new Set(gaps))
  return known(
    cases.flatMap((one) => (one.known ? [one.value] : [])),
    [],
  )
}

interface Hang {
  readonly hang: 'flat' | 'row'
  readonly angle: number
  readonly load: number
  readonly shares?: readonly number[]
  readonly before?: readonly Step[]
}

function rigOf(
  { arrangement, panel, yard }: StageInsertsInput,
  { before = [], ...hang }: Hang,
): Worked<HungCase> {
  const rigging = riggingOf(arrangement.rigging, yard?.rigging ?? [])
  if ('gap' in rigging) return unknown(rigging.gap)
  const found = rigged({
    rigging,
    picks: arrangement.picks,
    centre: panel.centre,
    thickness: panel.drawing.thickness,
    ...hang,
  })
  if (!found.known) return found
  return known(
    {
      angle: hang.angle,
      rigged: found.value,
      working: [...before, ...found.working],
      assumed: found.assumed ?? [],
    },
    [],
  )
}

const UP: Readonly<Record<Side, readonly [axis: 0 | 1, sign: 1 | -1]>> = {
  bottom: [1, 1],
  top: [1, -1],
  left: [0, 1],
  right: [0, -1],
}

/** Forces on the hook while the panel comes up about its edge. */
function turningOf({ arrangement, panel }: StageInsertsInput, load: number) {
  const { about, picks, lines } = arrangement
  const edge = lines[0]
  if (about === null || edge === undefined) return unknown('edge that the panel turns about')
  const [axis, sign] = UP[about]
  const away = (at: readonly [number, number]): number => sign * (at[axis] - edge[0][axis])
  const pick = picks.reduce((sum, { at }) => sum + away(at), 0) / picks.length
  const found = turning({
    load,
    thickness: panel.drawing.thickness,
    centre: away(panel.centre),
    pick,
    on: picks.every(({ kind }) => kind === 'edge') ? 'edge' : 'face',
  })
  return found.known ? known(found.value.cases, found.working) : found
}
