import type { PlacedBar } from '@castwright/engine/steel'
import type { SpaceView } from './cage-space.ts'

export interface Paint {
  readonly bars: ReadonlyMap<string, PlacedBar>
  readonly lapped: ReadonlySet<string>
  readonly mark: string
  readonly width: number
  readonly height: number
}

/** px: a bar drawn thinner than this has no light on it. */
const ROUND = 4

/** Slab edges, then each bar with a dark rim so that one crosses over the other. */
export function paint(
  canvas: HTMLCanvasElement,
  view: SpaceView,
  { bars, lapped, mark, width, height }: Paint,
): void {
  const fine = Math.min(3, window.devicePixelRatio || 1)
  canvas.width = width * fine
  canvas.height = height * fine
  canvas.style.height = `${height}px`
  const pen = canvas.getContext('2d')
  if (pen === null) return
  const ink = (name: string): string => getComputedStyle(canvas).getPropertyValue(`--${name}`).trim()
  const inks = {
    sheet: ink('sheet'),
    ink: ink('ink'),
    quiet: ink('quiet'),
    accent: ink('accent'),
    hair: ink('hair'),
  }
  pen.scale(fine, fine)
  pen.clearRect(0, 0, width, height)
  pen.lineJoin = 'round'
  pen.lineCap = 'round'
  const stroke = (
    points: readonly (readonly [number, number])[],
    closed: boolean,
    colour: string,
    wide: number,
  ): void => {
    pen.beginPath()
    for (const [x, y] of points) pen.lineTo(x, y)
    if (closed) pen.closePath()
    pen.strokeStyle = colour
    pen.lineWidth = wide
    pen.stroke()
  }
  for (const ring of view.slab) stroke(ring, true, inks.hair, 1)
  for (const { id, points, width: wide } of view.strokes) {
    const bar = bars.get(id)
    const chosen = mark !== '' && bar?.mark === mark
    const colour =
      chosen || (mark === '' && lapped.has(id)) ? inks.accent : bar?.layer === 'top' ? inks.quiet : inks.ink
    stroke(points, false, inks.sheet, wide + Math.min(3, Math.max(0.8, wide * 0.5)))
    stroke(points, false, colour, chosen ? wide + 1 : wide)
    if (wide < ROUND) continue
    // Light along the middle makes a thick line read as a round bar.
    pen.globalAlpha = 0.35
    stroke(points, false, inks.sheet, wide * 0.3)
    pen.globalAlpha = 1
  }
}
