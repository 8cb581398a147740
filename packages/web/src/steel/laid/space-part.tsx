import { lazy, type ReactElement, Suspense, useState } from 'react'
import { Button, Sheet } from '../../look/index.ts'
import type { LaidProps } from './laid-page.tsx'

/** Loaded when somebody opens it, and not before. */
const CageView = lazy(async () => ({ default: (await import('./cage-view.tsx')).CageView }))

/** The cage in space, behind a button. */
export function SpacePart({ drawing, plan }: LaidProps): ReactElement {
  const [open, setOpen] = useState(false)
  return (
    <Sheet
      title="The cage in space"
      note="Turned by the sliders or by dragging; touch a bar to read its mark."
    >
      <div className="stack">
        <div>
          <Button aria-expanded={open} onClick={() => setOpen(!open)}>
            {open ? 'Close' : 'Open the cage'}
          </Button>
        </div>
        {open ? (
          <Suspense fallback={<p role="status">Loading the view …</p>}>
            <CageView drawing={drawing} steel={plan.steel} />
          </Suspense>
        ) : null}
      </div>
    </Sheet>
  )
}
