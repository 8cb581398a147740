import '@fontsource-variable/atkinson-hyperlegible-next/index.css'
import './look/tokens.css'
import './look/base.css'
import './look/sheet.css'
import './app/app.css'
import { RouterProvider } from '@tanstack/react-router'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { followVersions } from './app/new-version.tsx'
import { router } from './app/router.tsx'

const place = document.getElementById('root')
if (place === null) throw new Error('index.html has no element #root')

createRoot(place).render(
  <StrictMode>
    <RouterProvider router={router} />
  </StrictMode>,
)
if (import.meta.env.PROD) followVersions()
