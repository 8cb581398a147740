import { type Check, compare } from '../working/check.ts'
import { enteredBy } from '../working/source.ts'
import type { Assumed } from '../working/worked.ts'
import type { YardForm } from '../yard/yard.ts'
import { formPlate } from './form-plate.ts'
import type { MouldPlate } from './mould-plan.ts'
import { ASSUMED_BOW_LIMIT, BOW_LIMIT_SOURCE } from './side-form.ts'

const HELD_WORDS = {
  foot: 'It stands fixed at the bed and free above.',
  both: 'It is held at the bed and at its top edge.',
} as const

export interface PlannedPlate {
  readonly plate: MouldPlate | null
  readonly checks: readonly Check[]
}

/** The upright plate of a side form under the triangle of pressure, its stress and bow; nothing where the yard does not say its plate. */
export function planPlate(form: YardForm, thickness: number, weight: number | undefined): PlannedPlate {
  const { plate } = form
  if (plate === undefined) return { plate: null, checks: [] }
  const held = plate.held ?? 'foot'
  const found = formPlate({ thickness, plate: plate.thickness, modulus: plate.modulus, held, weight })
  const standing: Assumed[] =
    plate.held === undefined
      ? [{ field: 'plate', value: 'free above', unit: '', why: 'the yard does not say how it is held' }]
      : []
  const rest = {
    step: 'mould',
    sense: 'at most',
    assumed: [...(found.known ? (found.assumed ?? []) : []), ...standing],
    missing: found.known ? [] : found.gaps,
  } as const
  const steps = (leftOut: string) =>
    found.known ? found.working.filter(({ symbol }) => symbol !== leftOut) : []
  const checks = [
    compare({
      ...rest,
      id: 'form-plate-bow',
      what: 'Bow of the form plate between bed and top edge',
      demand: found.known ? found.value.bow : null,
      limit: ASSUMED_BOW_LIMIT,
      unit: 'mm',
      source: BOW_LIMIT_SOURCE,
      working: steps('σ'),
      note: `${HELD_WORDS[held]} The bow of the rail between props comes on top.`,
    }),
    compare({
      ...rest,
      id: 'form-plate-stress',
      what: 'Bending of the form plate',
      demand: found.known ? found.value.stress : null,
      limit: plate.bending ?? null,
      unit: 'MPa',
      source: enteredBy('yard: forms'),
      missing: [
        ...rest.missing,
        ...(plate.bending === undefined ? ['yard.forms.plate.bending: stress allowed at work, MPa'] : []),
      ],
      working: steps('δ'),
      note: HELD_WORDS[held],
    }),
  ]
  return { plate: found.known ? { held, thickness: plate.thickness, ...found.value } : null, checks }
}
