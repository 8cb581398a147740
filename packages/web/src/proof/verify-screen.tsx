import './proof.css'
import type { ReactElement } from 'react'
import { useTitle } from '../look/index.ts'
import { PassportCheck } from './passport-check.tsx'

/** For a stranger with a passport file: no server, no sign-in; once loaded it works without a network. */
export function VerifyScreen(): ReactElement {
  useTitle('Check a passport')
  return (
    <>
      <header className="head">
        <a className="head-name" href="/">
          Castwright
        </a>
      </header>
      <main id="main" className="narrow" tabIndex={-1}>
        <h1>A panel’s passport</h1>
        <PassportCheck />
      </main>
    </>
  )
}
