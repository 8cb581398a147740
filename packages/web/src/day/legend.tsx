import type { ReactElement } from 'react'
import { VerdictMark } from '../look/index.ts'

/** What the marks in the day's picture mean. */
export function Legend(): ReactElement {
  return (
    <ul className="day-legend" aria-label="What the marks mean">
      <Swatch className="day-block day-set">set up</Swatch>
      <Swatch className="day-block day-pour">pour and compact</Swatch>
      <Swatch className="day-block day-finish">float window</Swatch>
      <Swatch className="day-block day-strip">strip</Swatch>
      <li>
        <svg width="28" height="20" aria-hidden="true">
          <rect className="day-block day-strip day-to-come" x="1" y="1" width="26" height="18" />
        </svg>
        dashed: planned
      </li>
      <li>
        <svg width="32" height="20" aria-hidden="true">
          <path className="day-band" d="M1 16L31 4V12L1 19z" />
          <path className="day-curve" d="M1 17.5L31 8" />
        </svg>
        strength with its 90 % band: logged temperature where there is a log, else planned
      </li>
      <li>
        <svg width="20" height="20" aria-hidden="true">
          <path className="day-pennant" d="M3 3h14l-7 10z" />
        </svg>
        low edge meets the wanted strength
      </li>
      <li>
        <VerdictMark verdict="fail" size={20} silent /> fails
      </li>
      <li>
        <VerdictMark verdict="unknown" size={20} silent /> not known, so it stays shut
      </li>
    </ul>
  )
}

function Swatch({
  className,
  children,
}: {
  readonly className: string
  readonly children: string
}): ReactElement {
  return (
    <li>
      <svg width="28" height="20" aria-hidden="true">
        <rect className={className} x="1" y="1" width="26" height="18" />
      </svg>
      {children}
    </li>
  )
}
