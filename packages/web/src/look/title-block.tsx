import type { ReactElement, ReactNode } from 'react'

export interface TitleCell {
  readonly label: string
  readonly value: ReactNode
}

export interface TitleBlockProps {
  readonly mark: string
  /** `Step 10 of 14: strip`. */
  readonly step: ReactNode
  /** Size, mass, cast when, in this order; more may follow. */
  readonly cells: readonly TitleCell[]
}

/** Mark, step, size, mass, cast when: the same order on phone, desk and paper. */
export function TitleBlock({ mark, step, cells }: TitleBlockProps): ReactElement {
  return (
    <header className="title-block">
      <div className="title-mark">
        <h1>{mark}</h1>
        <span>{step}</span>
      </div>
      <dl>
        {cells.map((cell) => (
          <div className="title-cell" key={cell.label}>
            <dt>{cell.label}</dt>
            <dd>{cell.value}</dd>
          </div>
        ))}
      </dl>
    </header>
  )
}
