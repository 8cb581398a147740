import type { Bundle } from './bundle.ts'

/** A bundle that nothing speaks against, for tests: 12 mm 500E as ordered, marked, weighed and with its papers. */
export const EXAMPLE_BUNDLE: Bundle = {
  ordered: { diameter: 12, grade: '500E', length: 6000, count: 120, reference: 'P-118' },
  docket: { number: '40071', supplier: 'Harbour Steel', diameter: 12, grade: '500E', count: 120 },
  tag: { heat: 'H 40-22' },
  certificate: { number: 'C-9', heat: 'H4022', grade: '500E', diameter: 12, process: 'micro-alloyed' },
  seen: ['500E'],
  barsRead: 3,
  weighed: [{ length: 1000, mass: 0.89 }],
  lengths: [5990, 6000],
  counted: 120,
  surface: ['light rust'],
}
