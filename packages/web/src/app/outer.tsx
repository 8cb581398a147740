import { Outlet } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { Announcer } from '../look/announce.tsx'
import { NewVersion } from './new-version.tsx'

/** Around every page, the passport check included. */
export function Outer(): ReactElement {
  return (
    <>
      <Announcer />
      <NewVersion />
      <Outlet />
    </>
  )
}
