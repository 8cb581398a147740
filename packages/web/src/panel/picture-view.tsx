import { type Frame, type Picture, panelPoint, ROLE_LOOK, toSvgElements } from '@castwright/documents/picture'
import { type MouseEvent, type ReactElement, useEffect, useId, useRef, useState } from 'react'
import { Button } from '../look/index.ts'
import { SvgTree } from './svg-tree.tsx'

export interface PictureViewProps {
  /** Lays the picture out for the width that there is. */
  readonly layOut: (frame: Frame) => Picture
  /** A place tapped, mm of the panel. */
  readonly onPlace?: ((place: readonly [number, number]) => void) | undefined
  /** Greatest height, px. */
  readonly height?: number
}

/** The picture grows to this when somebody wants it larger, px. */
const LARGE = { width: 1100, height: 760, text: 16 }
const TEXT = 14

/** A drawing to scale in the width that there is, with its key and what found no room; larger at one tap. */
export function PictureView({ layOut, onPlace, height = 420 }: PictureViewProps): ReactElement {
  const id = useId().replace(/[^a-zA-Z0-9-]/g, '')
  const box = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(0)
  const [large, setLarge] = useState(false)
  useEffect(() => {
    const node = box.current
    if (node === null) return
    const watch = new ResizeObserver(() => setWidth(Math.floor(node.clientWidth)))
    watch.observe(node)
    return () => watch.disconnect()
  }, [])
  const picture =
    width < 80
      ? null
      : layOut(large ? { ...LARGE, width: Math.max(LARGE.width, width) } : { width, height, text: TEXT })
  const tapped = (event: MouseEvent<HTMLElement>): void => {
    const drawn = event.currentTarget.querySelector('svg')?.getBoundingClientRect()
    if (picture === null || drawn === undefined) return
    onPlace?.(panelPoint(picture, [event.clientX - drawn.left, event.clientY - drawn.top]))
  }
  return (
    <div className="picture">
      <div
        ref={box}
        className="picture-box"
        {...(large ? { tabIndex: 0, role: 'group', 'aria-label': 'Larger picture' } : {})}
      >
        {picture === null ? null : (
          // biome-ignore lint/a11y/noStaticElementInteractions lint/a11y/useKeyWithClickEvents: a place can be typed as well
          <div
            className={onPlace ? 'picture-paper picture-tap' : 'picture-paper'}
            onClick={onPlace ? tapped : undefined}
          >
            <SvgTree element={toSvgElements(picture, `p${id}`)} />
          </div>
        )}
      </div>
      <div className="picture-foot">
        <ul className="picture-key">
          {(picture?.key ?? []).map((line) => (
            <li key={line.text}>
              <svg width="26" height="14" aria-hidden="true">
                <KeySample role={line.role} />
              </svg>
              {line.text}
            </li>
          ))}
          {picture !== null && picture.notes.length > 0 ? (
            <li>Not on the picture: {picture.notes.join('; ')}</li>
          ) : null}
        </ul>
        <Button look="plain" className="no-print" aria-pressed={large} onClick={() => setLarge(!large)}>
          {large ? 'smaller' : 'larger'}
        </Button>
      </div>
    </div>
  )
}

function KeySample({ role }: { readonly role: Picture['key'][number]['role'] }): ReactElement {
  const look = ROLE_LOOK[role]
  const line = {
    stroke: `var(--${look.line ?? 'quiet'})`,
    strokeWidth: look.width,
    fill: look.fill === null ? 'none' : `var(--${look.fill})`,
    ...(look.dash ? { strokeDasharray: look.dash.join(' ') } : {}),
  }
  const round = ['insert', 'chair', 'prop', 'insertion', 'centre', 'defect'].includes(role)
  if (round) return <circle cx="13" cy="7" r="5" {...line} />
  if (look.fill === null) return <path d="M1 7H25" {...line} />
  return <rect x="1" y="2" width="24" height="10" {...line} />
}
