import type { FinishNow } from '@castwright/engine/steps'
import type { ReactElement } from 'react'
import { AssumedList, Explain, fixed, Notice, Sheet } from '../look/index.ts'
import { dryingText, rough } from './finish-words.ts'

/** Colder than this the surface wants warmth more than anything, °C: common practice. */
const COLD = 10

/** Drying now by both formulas, and what helps here, the most helpful first. */
export function DryingPart({ found }: { readonly found: FinishNow }): ReactElement {
  const { drying, advice, celsius, weatherFaults } = found
  return (
    <Sheet
      title="Drying"
      level={3}
      note={drying === null ? 'not known' : 'an estimate within 40 % at best: the mix and the eye decide'}
    >
      <div className="stack">
        {drying === null ? (
          <p>Read air, humidity and wind at the panel: enter them below.</p>
        ) : (
          <>
            <p className="finish-rate">
              about {drying.rate <= 0 ? '0' : rough(Math.max(drying.rate, drying.other))}
              <span> kg/m²/h</span>
            </p>
            <dl className="finish-two">
              <div>
                <dt>Uno 1998</dt>
                <dd>{fixed(drying.rate, 2)}</dd>
              </div>
              <div>
                <dt>Menzel</dt>
                <dd>{fixed(drying.other, 2)}</dd>
              </div>
              <div>
                <dt>Surface, about</dt>
                <dd>{fixed(celsius, 0)} °C</dd>
              </div>
            </dl>
            {drying.rate <= 0 || drying.against === 'under' ? (
              <p>{dryingText(drying)}</p>
            ) : (
              <Notice
                kind={drying.against === 'over' ? 'fail' : 'unknown'}
                title={drying.against === 'over' ? 'Dries too fast' : 'Near the line'}
              >
                {dryingText(drying)}
              </Notice>
            )}
          </>
        )}
        {drying === null || advice.length === 0 ? null : drying.against === 'under' ? (
          <Explain word="If it dries faster: what helps here" about="drying" working={[]}>
            <Advice advice={advice} />
          </Explain>
        ) : (
          <div>
            <strong>What helps here</strong>
            <Advice advice={advice} />
          </div>
        )}
        {celsius !== null && celsius < COLD ? (
          <Notice title="Cold surface">
            It sets late. A cover on a frame with warm air under it brings the window forward; exhaust gas
            stays outside, away from people and from the fresh face.
          </Notice>
        ) : null}
        <p>
          <strong>Never finish bleed water in, never sprinkle water or dust cement to go on.</strong>
        </p>
        {weatherFaults.length === 0 ? null : (
          <Notice kind="unknown" title="Weather left out">
            <ul className="plain-list">
              {weatherFaults.slice(0, 8).map(({ path, found: came, expected }) => (
                <li key={path}>
                  {path}: found {came}, expected {expected}
                </li>
              ))}
            </ul>
          </Notice>
        )}
        {drying === null ? null : (
          <Explain about="drying now" working={drying.check.working} source={drying.check.source}>
            <AssumedList
              assumed={[
                { field: 'wind break', value: 3, unit: 'km/h', why: 'what a break is taken to leave' },
                { field: 'shade', value: 5, unit: 'K', why: 'what it is taken to cool the surface' },
                { field: 'fog', value: 95, unit: '%', why: 'air under it' },
                {
                  field: 'evaporation retarder',
                  value: 50,
                  unit: '%',
                  why: 'of the rate; its sheet decides',
                },
              ]}
            />
          </Explain>
        )}
      </div>
    </Sheet>
  )
}

function Advice({ advice }: Pick<FinishNow, 'advice'>): ReactElement {
  return (
    <ol className="finish-advice">
      {advice.map(({ id, act, rate, note }) => (
        <li key={id}>
          <span>
            <strong>{act}</strong>: {rate <= 0.005 ? 'nothing dries' : `about ${fixed(rate, 2)} kg/m²/h`}
          </span>
          <span className="quiet">{note}</span>
        </li>
      ))}
    </ol>
  )
}
