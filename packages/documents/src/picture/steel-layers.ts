import { bounds, type Drawing, type Point, type Ring } from '@castwright/engine/panel'
import type { ChairLayer, PlacedBar, PlacedLap, SteelPlan } from '@castwright/engine/steel'
import { lengthText } from './chain.ts'
import { placesAround, setText } from './labels.ts'
import type { Chains, Layout } from './layout.ts'
import { basePicture, chainsOf, finishPicture, shapeChains, sizeTitle } from './panel-picture.ts'
import type { Frame, KeyLine, Picture, Role, Shape } from './picture.ts'

/** One layer of the cage as it is laid: bars of one mat direction, or all that are no mat. */
export interface SteelPart {
  /** `mould-x`, `top-y`, `more`. */
  readonly key: string
  /** As the floor says it. Example: `near the mould, along x`. */
  readonly name: string
  readonly bars: readonly PlacedBar[]
  readonly laps: readonly PlacedLap[]
}

/** The layers of a cage from the mould up, in the order in which they are laid; listed and extra bars last. */
export function steelParts({ placed, laps }: Pick<SteelPlan, 'placed' | 'laps'>): SteelPart[] {
  const parts = new Map<string, { name: string; height: number; bars: PlacedBar[] }>()
  for (const bar of placed) {
    const [key, name] = partOf(bar)
    const part = parts.get(key) ?? {
      name,
      height: key === 'more' ? Number.POSITIVE_INFINITY : (bar.height ?? 0),
      bars: [],
    }
    part.bars.push(bar)
    parts.set(key, part)
  }
  return [...parts]
    .sort(([, a], [, b]) => a.height - b.height)
    .map(([key, { name, bars }]) => {
      const ids = new Set(bars.map(({ id }) => id))
      return { key, name, bars, laps: laps.filter((lap) => ids.has(lap.bars[0])) }
    })
}

function partOf({ use, layer, path }: PlacedBar): [key: string, name: string] {
  if (use !== 'mat') return ['more', 'edge bars, trimmers and listed bars']
  const [a, b] = [path[0] as Point, path.at(-1) as Point]
  const direction = Math.abs(b[0] - a[0]) >= Math.abs(b[1] - a[1]) ? 'x' : 'y'
  const name = layer === 'mould' ? 'near the mould' : 'near the top'
  return [`${layer}-${direction}`, `${name}, along ${direction}`]
}

export interface SteelLayerInput {
  readonly drawing: Drawing
  readonly part: SteelPart
  readonly frame: Frame
  /** Chairs to draw under it. */
  readonly chairs?: ChairLayer
}

/** One layer: its bars where they lie, laps thick and measured from the edge, chairs as rings. */
export function steelLayerPicture({ drawing, part, frame, chairs }: SteelLayerInput): Picture {
  const { bars, laps } = part
  const base = basePicture({
    drawing,
    frame,
    chains: { ...shapeChains(drawing), ...lapChains(drawing, laps) },
  })
  const named = part.key === 'more' ? nameBars(base.layout, bars) : { shapes: [], notes: [] }
  return finishPicture({
    base,
    inside: [
      ...laps.map((lap) => lapLine(base.layout, lap)),
      ...bars.map(
        (bar): Shape => ({ kind: 'line', role: roleOf(bar), points: bar.path.map(base.layout.at) }),
      ),
      ...(chairs === undefined ? [] : chairShapes(base.layout, chairs)),
    ],
    onTop: named.shapes,
    title: `${sizeTitle(drawing)}. ${capital(part.name)}: ${bars.length} bars, ${laps.length} laps.`,
    key: [...barKeys(part), ...lapKey(laps), ...(chairs === undefined ? [] : [chairKey(chairs)])],
    notes: named.notes,
  })
}

/** Where laps begin and end, above for those along x, at the right for those along y. */
function lapChains(drawing: Drawing, laps: readonly PlacedLap[]): Chains {
  const box = bounds(drawing.outline as unknown as Ring)
  const places = (direction: 'x' | 'y'): number[] =>
    laps
      .filter((lap) => lap.direction === direction)
      .flatMap(({ at, length }) => {
        const middle = at[direction === 'x' ? 0 : 1]
        return [middle - length / 2, middle + length / 2]
      })
  const [across, up] = [places('x'), places('y')]
  return {
    ...(across.length > 0 ? { top: chainsOf(across, box.left, box.right).slice(0, 1) } : {}),
    ...(up.length > 0 ? { right: chainsOf(up, box.bottom, box.top).slice(0, 1) } : {}),
  }
}

function lapLine(layout: Layout, { at: [x, y], length, direction }: PlacedLap): Shape {
  const half = length / 2
  const ends: [Point, Point] =
    direction === 'x'
      ? [
          [x - half, y],
          [x + half, y],
        ]
      : [
          [x, y - half],
          [x, y + half],
        ]
  return { kind: 'line', role: 'lap', points: ends.map(layout.at) }
}

/** The mark beside each bar, once where several bars of it lie. */
function nameBars(layout: Layout, bars: readonly PlacedBar[]): { shapes: Shape[]; notes: string[] } {
  const shapes: Shape[] = []
  const notes = new Set<string>()
  const named = new Set<string>()
  for (const { mark, path } of bars) {
    const [a, b] = [path[0], path[1]]
    if (named.has(mark) || a === undefined || b === undefined) continue
    const label = { role: 'label', text: mark, size: layout.text, backed: true } as const
    const middle = layout.at([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2])
    const set = setText(layout.labels, label, placesAround(middle, 2, label))
    if (set === null) notes.add(mark)
    else {
      shapes.push(set)
      named.add(mark)
    }
  }
  return { shapes, notes: [...notes].filter((mark) => !named.has(mark)) }
}

function roleOf({ layer }: PlacedBar): Role {
  return layer === 'top' ? 'bar-top' : 'bar-mould'
}

function barKeys({ bars, name }: SteelPart): KeyLine[] {
  const sizes = [...new Set(bars.map(({ diameter }) => lengthText(diameter)))]
  return [...new Set(bars.map(roleOf))].map((role) => ({
    role,
    text: `${name}: ${sizes.join(' and ')} mm${role === 'bar-top' && name.startsWith('edge') ? ', top' : ''}`,
  }))
}

function lapKey(laps: readonly PlacedLap[]): KeyLine[] {
  if (laps.length === 0) return []
  const lengths = [...new Set(laps.map((lap) => lengthText(lap.length)))]
  return [
    {
      role: 'lap',
      text: `${laps.length} laps of ${lengths.join(' and ')} mm, measured above or at the right`,
    },
  ]
}

/** Rings of one size, whatever the scale. */
export function chairShapes(layout: Layout, { at }: ChairLayer): Shape[] {
  const radius = Math.max(2.5, layout.text * 0.22)
  return at.map((place): Shape => ({ kind: 'circle', role: 'chair', at: layout.at(place), radius }))
}

export function chairKey({ at, height, spacing }: ChairLayer): KeyLine {
  return {
    role: 'chair',
    text: `${at.length} chairs ${lengthText(height)} mm high, at most ${lengthText(spacing)} mm apart`,
  }
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
