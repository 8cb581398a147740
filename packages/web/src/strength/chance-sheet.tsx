import { hourAtChance } from '@castwright/engine/cure'
import type { PanelFacts } from '@castwright/engine/steps'
import type { ReactElement } from 'react'
import { fixed, Sheet } from '../look/index.ts'
import type { StrengthLine } from './strength-line.ts'
import { TimeChart, type TimeChartProps } from './time-chart.tsx'

/** Probabilities whose hours are named. */
const NAMED = [0.5, 0.9, 0.95] as const

/** Probability that one test reaches the wanted strength, by the hour. */
export function ChanceSheet({
  facts,
  line,
  when,
  ticks,
}: {
  readonly facts: PanelFacts
  readonly line: StrengthLine
  readonly when: (hour: number) => string
  readonly ticks: NonNullable<TimeChartProps['xTicks']>
}): ReactElement | null {
  const { wanted, cure, age } = line
  if (wanted === null || cure.chance.length < 2) return null
  const named = NAMED.map((chance) => ({ chance, hour: hourAtChance(cure.chance, chance) }))
  const shown = inSight(cure.chance, age)
  return (
    <Sheet
      title={`Probability of ${fixed(wanted, 1)} MPa by the hour`}
      note="That one test of this pour at that hour reaches it, by the curve above. Computed; it opens no hold."
    >
      <dl className="chance-hours">
        {named.map(({ chance, hour }) => (
          <div key={chance} data-passed={hour !== null && hour <= age}>
            <dt>{percent(chance)}</dt>
            <dd>
              <strong className="chance-hour">{hour === null ? 'not in sight' : when(hour)}</strong>
              {hour === null ? null : (
                <span className="field-note">
                  {fixed(hour, 1)} h from mixing{hour <= age ? ', past' : ''}
                </span>
              )}
            </dd>
          </div>
        ))}
      </dl>
      <TimeChart
        title={`Probability that ${facts.mark} has ${fixed(wanted, 1)} MPa, by the hour`}
        unit="%"
        from={0}
        lines={[
          {
            name: 'probability of the wanted strength',
            look: 'main',
            points: shown.map(([hour, probability]) => [hour, 100 * probability]),
          },
        ]}
        levels={NAMED.filter((chance) => chance !== 0.9).map((chance) => ({
          y: 100 * chance,
          text: percent(chance),
        }))}
        marks={
          age >= (shown[0]?.[0] ?? 0) && age <= (shown.at(-1)?.[0] ?? 0)
            ? [{ x: age, text: 'now', look: 'now' }]
            : []
        }
        xText={when}
        xTicks={ticks}
        height={280}
      />
    </Sheet>
  )
}

/** From where it leaves nothing to where it is all but certain, with now where that is near. */
function inSight(chance: StrengthLine['cure']['chance'], age: number): StrengthLine['cure']['chance'] {
  const begins = chance.find(([, probability]) => probability > 0.005)?.[0] ?? chance[0]?.[0] ?? 0
  const sure = hourAtChance(chance, 0.995) ?? chance.at(-1)?.[0] ?? 0
  const reach = Math.max(3, 0.3 * (sure - begins))
  const from = age < begins && begins - age < 12 ? Math.min(age, begins - reach) : begins - reach
  const to = age > sure && age - sure < 12 ? Math.max(age + 1, sure + reach) : sure + reach
  const shown = chance.filter(([hour]) => hour >= from && hour <= to)
  return shown.length > 1 ? shown : chance
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`
}
