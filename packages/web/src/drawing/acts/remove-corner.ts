import { type DraftAct, type RingAt, withCorners } from './act.ts'

export const removeCorner: DraftAct<{ readonly ring: RingAt; readonly corner: number }> = {
  name: 'remove-corner',
  label: 'Remove this corner',
  next: (draft, { ring, corner }) =>
    withCorners(draft, ring, (corners) => corners.filter((_, index) => index !== corner)),
}
