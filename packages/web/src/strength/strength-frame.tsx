import { Link } from '@tanstack/react-router'
import type { ReactElement, ReactNode } from 'react'

const PAGES = [
  { to: '/strength', name: 'Tonight' },
  { to: '/strength/specimens', name: 'Specimens' },
  { to: '/strength/results', name: 'Results' },
  { to: '/weather', name: 'Weather' },
] as const

/** The room's heading and its pages. */
export function StrengthFrame({
  page,
  children,
}: {
  readonly page: (typeof PAGES)[number]['name'] | null
  readonly children: ReactNode
}): ReactElement {
  return (
    <div className="room stack" data-page={page}>
      <div className="row strength-head">
        <h1>Strength</h1>
        <nav aria-label="Pages of the room" className="row no-print">
          {PAGES.map(({ to, name }) => (
            <Link key={to} to={to} className="button" activeOptions={{ exact: true }}>
              {name}
            </Link>
          ))}
        </nav>
      </div>
      {children}
    </div>
  )
}
