import type { LiftLimit } from '../../lift-rules.ts'

/** Cast-in lifting inserts of precast members other than tilt-up: at least four times the greatest intended load. */
export const INSERT_MARGIN: LiftLimit = {
  value: 4,
  source: { standard: '29 CFR 1926.704', clause: '(c)', status: 'seen' },
}

/** Tilt-up panels: at least two times the greatest intended load. */
export const TILT_UP_MARGIN: LiftLimit = {
  value: 2,
  source: { standard: '29 CFR 1926.704', clause: '(b)', status: 'seen' },
}

/** Lifting hardware: at least five times the greatest intended load. */
export const HARDWARE_MARGIN: LiftLimit = {
  value: 5,
  source: { standard: '29 CFR 1926.704', clause: '(d)', status: 'seen' },
}
