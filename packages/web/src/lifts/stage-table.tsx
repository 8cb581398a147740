import type { LiftStageId } from '@castwright/engine/lift'
import type { Check } from '@castwright/engine/working'
import type { ReactElement } from 'react'
import { Explain, figure, fixed, VerdictMark } from '../look/index.ts'
import type { StageRow } from './stage-rows.ts'

export interface StageTableProps {
  readonly rows: readonly StageRow[]
  readonly chosen: LiftStageId
  readonly onChoose: (stage: LiftStageId) => void
}

/** Every stage of handling: tension with its factor, share of the limit, verdict. Choosing one shows its picture and its working. */
export function StageTable({ rows, chosen, onChoose }: StageTableProps): ReactElement {
  const row = rows.find(({ stage }) => stage.id === chosen)
  return (
    <>
      <table className="stage-table">
        <thead>
          <tr>
            <th scope="col">stage</th>
            <th scope="col" className="figure">
              peak, MPa
            </th>
            <th scope="col" className="figure">
              of limit
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((one) => (
            <tr key={one.stage.id} className={one.stage.id === chosen ? 'stage-chosen' : undefined}>
              <th scope="row">
                <button
                  type="button"
                  className="stage-choice"
                  aria-pressed={one.stage.id === chosen}
                  onClick={() => onChoose(one.stage.id)}
                >
                  {one.stage.name}
                </button>
                <VerdictMark verdict={one.verdict} size={20} withWord />
              </th>
              <td className="figure">
                <Peak row={one} />
              </td>
              <td className="figure">
                <span className="number">{percent(one.peak.ratio)}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {row === undefined ? null : <StageDetail row={row} />}
    </>
  )
}

function Peak({ row: { stage, peak } }: { readonly row: StageRow }): ReactElement {
  if (peak.demand === null) return <span>not known</span>
  const base = stage.factor === null || !(stage.factor > 0) ? null : peak.demand / stage.factor
  return (
    <>
      <span className="number">{fixed(peak.demand, 2)}</span>
      {base === null || stage.factor === 1 ? null : (
        <span className="stage-factor">
          {fixed(base, 2)} × {figure(stage.factor, 3)}
        </span>
      )}
    </>
  )
}

function percent(ratio: number | null): string {
  return ratio === null ? '–' : `${Math.ceil(ratio * 100 - 1e-9)} %`
}

/** The chosen stage in words, with the way to its working. */
function StageDetail({ row }: { readonly row: StageRow }): ReactElement {
  const { stage, peak, insert, averaged } = row
  return (
    <div className="stage-detail">
      <h3>{stage.name}</h3>
      <p>
        {sentence(stage.how)}
        {averaged === '' ? '' : ` Peak ${averaged}.`}
        {stage.disc === null
          ? ''
          : ` Averaged over a disc of one thickness instead: ${fixed(stage.disc.stress, 2)} MPa, for comparison only.`}
      </p>
      <CheckLine check={peak} />
      {insert === null ? null : <CheckLine check={insert} />}
    </div>
  )
}

function CheckLine({ check }: { readonly check: Check }): ReactElement {
  return (
    <div className="stage-check">
      <VerdictMark verdict={check.verdict} size={20} withWord />
      <p>
        {check.what}:{' '}
        <span className="number">
          {check.demand === null ? 'not known' : `${figure(check.demand, 3)} ${check.unit}`}
        </span>{' '}
        of {check.limit === null ? 'a limit that is not known' : `${figure(check.limit, 3)} ${check.unit}`}
      </p>
      {check.unknown === undefined ? null : <p>Missing: {check.unknown.join('; ')}.</p>}
      <Explain
        about={check.what}
        word={check.working.length > 0 ? 'how' : 'source'}
        working={check.working}
        source={check.source}
        assumed={check.assumed}
      />
    </div>
  )
}

function sentence(words: string): string {
  return words === '' ? '' : `${words.charAt(0).toUpperCase()}${words.slice(1)}.`
}
