import { SURFACE_IDS, type SurfaceKind } from '@castwright/engine/steps'
import { type EntryAct, stamped } from './act.ts'

export interface SurfaceInput {
  readonly kind: SurfaceKind
  /** °C, mm, MPa, a count; true for a sheen that is gone. */
  readonly value: number | true
  /** When it was seen, UTC with milliseconds: each reading stands for itself. */
  readonly at: string
}

const UNITS: Readonly<Record<SurfaceKind, string>> = {
  temperature: '°C',
  print: 'mm',
  resistance: 'MPa',
  sheen: '',
  passes: '',
}

/** Something read or seen on the fresh surface. Nothing is judged: it moves the window. */
export const recordSurface: EntryAct<SurfaceInput> = {
  name: 'record-surface',
  label: 'Record',
  draft: (place, { kind, value, at }) => ({
    ...stamped(place),
    kind: 'value',
    step: 'finish',
    check: kind === 'passes' ? SURFACE_IDS.passes : `${SURFACE_IDS[kind]}@${at}`,
    value,
    ...(UNITS[kind] === '' ? {} : { unit: UNITS[kind] }),
  }),
}
