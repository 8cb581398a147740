import { type Check, compare } from '../../working/check.ts'
import { STATICS } from '../../working/source.ts'
import type { LiftStagesInput } from './lift-stages.ts'
import type { LiftStage } from './stage.ts'
import { stageFactor } from './stage-factor.ts'

/** A drawing that asks for a factor is held to the family's: one below it fails, whatever else it says. */
export function factorChecks({
  panel,
  yard,
  family,
  limits = {},
  stages,
}: LiftStagesInput & { readonly stages: readonly LiftStage[] }): Check[] {
  return stages.flatMap(({ id, step, name }): Check[] => {
    const drawn = panel.drawing.handling?.factors?.[id]
    if (drawn === undefined) return []
    const found = stageFactor({ stage: id, panel, yard, family, limits, of: 'bending' })
    return [
      compare({
        id: `lift-factor:${id}`,
        step,
        what: `Load factor that the drawing asks for: ${name.charAt(0).toLowerCase()}${name.slice(1)}`,
        demand: drawn,
        limit: found.known ? found.value.floor : null,
        unit: '',
        sense: 'at least',
        source: (found.known && found.working[0]?.source) || STATICS,
        working: found.known ? found.working : [],
        missing: found.known
          ? found.value.floor === null
            ? [`load factor: no confirmed value for ${family.id}`]
            : []
          : found.gaps,
        note: 'Below the family’s factor nobody can go.',
      }),
    ]
  })
}
