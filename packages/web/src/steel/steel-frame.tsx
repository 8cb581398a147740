import './steel.css'
import { Link } from '@tanstack/react-router'
import type { ReactElement, ReactNode } from 'react'
import { useTitle } from '../look/index.ts'

const PAGES = [
  { to: '/steel/in', name: 'In' },
  { to: '/steel', name: 'Cut' },
  { to: '/steel/bend', name: 'Bend' },
  { to: '/steel/laid', name: 'Laid out' },
  { to: '/steel/list', name: 'List' },
] as const

/** The room's heading and its pages. */
export function SteelFrame({
  page,
  children,
}: {
  readonly page: (typeof PAGES)[number]['name']
  readonly children: ReactNode
}): ReactElement {
  useTitle(`Steel: ${page.toLowerCase()}`)
  return (
    <div className="room stack">
      <div className="row steel-head">
        <h1>Steel</h1>
        <nav aria-label="Pages of the room" className="row no-print">
          {PAGES.map(({ to, name }) => (
            <Link key={to} to={to} className="button" activeOptions={{ exact: true, includeSearch: false }}>
              {name}
            </Link>
          ))}
        </nav>
      </div>
      {children}
    </div>
  )
}
