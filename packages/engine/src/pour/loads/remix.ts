import type { CodeFamily } from '../../codes/family.ts'
import { compare } from '../../working/check.ts'
import type { Assumed } from '../../working/worked.ts'
import type { Load } from './load.ts'
import { type LoadRow, loadRowId, loadRowTitle, rowOfCheck, saidBy } from './load-row.ts'

/**
 * Mixing again after water or admixture was added on site, by the family: so many turns, or so many minutes for each m³. No row where nothing was added; not
 * known where the family has no confirmed value.
 *
 * Example (EN 206:2013+A2 7.5, from memory): 6 m³ ask for 6 min, 3 m³ for 5 min at mixing speed.
 */
export function remixRow({ load, family }: { readonly load: Load; readonly family: CodeFamily }): LoadRow[] {
  const { waterAdded = 0, admixtureAdded = 0, remixTurns, remixMinutes, volume } = load
  if (waterAdded === 0 && admixtureAdded === 0) return []
  const { turns, minutes, source, gap } = family.pour.remix
  const byTurns = turns !== null
  const least =
    minutes === null || volume === undefined ? null : Math.max(minutes.least, minutes.perCubicMetre * volume)
  const id = loadRowId(load.number, 'remix')
  const found = byTurns ? remixTurns : remixMinutes
  const assumed: Assumed[] = [
    ...(load.waterAdded === undefined
      ? [{ field: 'water added on site', value: 0, unit: 'L', why: 'only admixture was entered' }]
      : []),
  ]
  const check = compare({
    id,
    step: 'deliver',
    what: loadRowTitle(id) ?? id,
    demand: found,
    limit: byTurns ? turns : least,
    unit: byTurns ? 'turns' : 'min',
    sense: 'at least',
    source,
    assumed,
    missing: [
      ...(gap === undefined ? [] : [gap]),
      ...(gap === undefined && found === undefined
        ? [
            byTurns
              ? 'turns at mixing speed after the addition'
              : 'minutes at mixing speed after the addition',
          ]
        : []),
      ...(minutes !== null && volume === undefined ? ['volume of the load, m³'] : []),
    ],
    note: 'At mixing speed, before discharge.',
    working:
      minutes === null || least === null || volume === undefined
        ? []
        : [
            {
              symbol: 't_m',
              formula: 'max(a, b V)',
              given: { a: minutes.least, b: minutes.perCubicMetre, V: volume },
              result: least,
              unit: 'min',
              source,
            },
          ],
  })
  const fields = ['waterAdded', 'admixtureAdded', 'remixTurns', 'remixMinutes', 'volume'] as const
  return [rowOfCheck(check, saidBy([load], fields))]
}
