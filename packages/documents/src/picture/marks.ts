import type { Point } from '@castwright/engine/panel'
import { boxAround, isFree, type Labels, placesAround, setText, take } from './labels.ts'
import type { Layout } from './layout.ts'
import type { Role, Shape } from './picture.ts'

/** A lettered place on the panel: an insert, a zone, a defect. */
export interface Mark {
  /** mm of the panel. */
  readonly at: Point
  readonly letter: string
  /** What stands beside the mark. */
  readonly beside?: string
}

export interface MarkShapes {
  readonly shapes: readonly Shape[]
  /** What found no room. */
  readonly notes: readonly string[]
}

/** A drawing on which marks are set: its letters, the space taken, and where a place lies. */
export type Ground = Pick<Layout, 'labels' | 'text' | 'at'>

/** A circle holds no more letters than this. */
const MOST_LETTERS = 3

/**
 * Circles with their letters, all first, so that the texts beside them keep clear of every circle. A mark too long for a
 * circle, or in a place already taken, stands beside a dot.
 */
export function markShapes(layout: Ground, role: Role, marks: readonly Mark[]): MarkShapes {
  const { labels, text: size, at } = layout
  const circles: Shape[] = []
  const texts: Shape[] = []
  const notes: string[] = []
  const beside: { place: Point; radius: number; text: string; note: string }[] = []
  for (const mark of marks) {
    const place = at(mark.at)
    const radius = size * (0.55 + 0.25 * mark.letter.length)
    const box = boxAround(place, radius + 1.5)
    const inCircle = mark.letter.length <= MOST_LETTERS && isFree(labels, within(box, labels))
    if (inCircle) {
      circles.push({
        kind: 'circle',
        role,
        at: place,
        radius,
        letter: mark.letter,
        size,
      })
      take(labels, box)
    } else {
      circles.push({ kind: 'circle', role, at: place, radius: size * 0.3 })
      take(labels, boxAround(place, size * 0.3))
    }
    const words = [inCircle ? '' : mark.letter, mark.beside ?? ''].filter((word) => word !== '').join(' ')
    const note = `${mark.letter}${mark.beside === undefined ? '' : `: ${mark.beside}`}`
    if (words !== '') beside.push({ place, radius: inCircle ? radius + 2 : size * 0.4, text: words, note })
  }
  for (const { place, radius, text, note } of beside) {
    const label = { role: role === 'insert' ? 'load' : role, text, size, backed: true } as const
    const set = setText(labels, label, placesAround(place, radius, label))
    if (set === null) notes.push(note)
    else texts.push(set)
  }
  return { shapes: [...circles, ...texts], notes }
}

/** A circle on the very edge may reach out of the space for texts. */
function within(box: ReturnType<typeof boxAround>, { bounds }: Labels): ReturnType<typeof boxAround> {
  return {
    left: Math.max(box.left, bounds.left),
    right: Math.min(box.right, bounds.right),
    top: Math.max(box.top, bounds.top),
    bottom: Math.min(box.bottom, bounds.bottom),
  }
}

/** One text beside a place; what finds no room is a note. */
export function besideShapes(layout: Ground, role: Role, at: Point, text: string, radius = 3): MarkShapes {
  const label = { role, text, size: layout.text, backed: true } as const
  const set = setText(layout.labels, label, placesAround(layout.at(at), radius, label))
  return set === null ? { shapes: [], notes: [text] } : { shapes: [set], notes: [] }
}
