import type { Drawing } from '@castwright/engine/panel'

export type Place = readonly [number, number]

/** A panel laid on the screen: where a place of it stands, px, and back. */
export interface PanelFrame {
  readonly width: number
  readonly height: number
  /** px a mm */
  readonly scale: number
  /** Turned a quarter, so that a long panel fills a phone. */
  readonly upright: boolean
  readonly at: (place: Place) => Place
  readonly place: (px: Place) => Place
  readonly path: (ring: readonly Place[]) => string
}

/** Below this width a long panel stands upright, px: its insertions are then wide enough for a finger. */
const PHONE = 600

/** `beside`: room around the panel, px. */
export function panelFrame(
  { outline }: Pick<Drawing, 'outline'>,
  { width, most, beside }: { readonly width: number; readonly most: number; readonly beside: number },
): PanelFrame {
  const ring = outline as unknown as readonly Place[]
  const [left, right] = [Math.min(...ring.map(([x]) => x)), Math.max(...ring.map(([x]) => x))]
  const [low, high] = [Math.min(...ring.map(([, y]) => y)), Math.max(...ring.map(([, y]) => y))]
  const upright = width < PHONE && right - left > 1.2 * (high - low)
  const [across, up] = upright ? [high - low, right - left] : [right - left, high - low]
  const scale = Math.min((width - 2 * beside) / across, (most - 2 * beside) / up)
  const at = ([x, y]: Place): Place =>
    upright
      ? [beside + (y - low) * scale, beside + (x - left) * scale]
      : [beside + (x - left) * scale, beside + (high - y) * scale]
  return {
    width,
    height: up * scale + 2 * beside,
    scale,
    upright,
    at,
    place: ([px, py]) =>
      upright
        ? [left + (py - beside) / scale, low + (px - beside) / scale]
        : [left + (px - beside) / scale, high - (py - beside) / scale],
    path: (points) =>
      `${points
        .map(
          (point, index) =>
            `${index === 0 ? 'M' : 'L'}${at(point)
              .map((v) => v.toFixed(1))
              .join(' ')}`,
        )
        .join('')}Z`,
  }
}
