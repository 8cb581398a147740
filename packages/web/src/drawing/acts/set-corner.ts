import { type DraftAct, type RingAt, ringName, withCorners } from './act.ts'

export interface SetCornerInput {
  readonly ring: RingAt
  readonly corner: number
  readonly axis: 'x' | 'y'
  readonly text: string
}

export const setCorner: DraftAct<SetCornerInput> = {
  name: 'set-corner',
  label: 'typing',
  next: (draft, { ring, corner, axis, text }) =>
    withCorners(draft, ring, (corners) =>
      corners.map((old, index) => (index === corner ? { ...old, [axis]: text } : old)),
    ),
  merge: ({ ring, corner, axis }) => `${ringName(ring)} ${corner} ${axis}`,
}
