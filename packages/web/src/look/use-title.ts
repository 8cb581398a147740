import { useEffect } from 'react'

/** The window's title while a screen is shown. */
export function useTitle(title: string): void {
  useEffect(() => {
    document.title = title === '' ? 'Castwright' : `${title} · Castwright`
  }, [title])
}
