import type { Bundle, Process, Surface } from '@castwright/engine/steel/incoming'
import { readNumber } from '../../look/field.tsx'

/** What somebody has typed of a bundle; text stays as typed until it is saved. */
export interface BundleText {
  readonly id: string
  readonly diameter: string
  readonly grade: string
  readonly length: string
  readonly count: string
  readonly reference: string
  readonly docket: 'not said' | 'none' | 'came'
  readonly docketNumber: string
  readonly docketSupplier: string
  readonly docketDiameter: string
  readonly docketGrade: string
  readonly docketLength: string
  readonly docketCount: string
  readonly docketHeat: string
  readonly tag: 'not said' | 'none' | 'there'
  readonly tagMill: string
  readonly tagHeat: string
  readonly certificate: 'not said' | 'none' | 'there'
  readonly certificateNumber: string
  readonly certificateHeat: string
  readonly certificateGrade: string
  readonly certificateDiameter: string
  readonly certificateProcess: '' | Process
  readonly seen: string
  readonly barsRead: string
  /** One piece a line: length in mm, mass in kg. */
  readonly weighed: string
  /** Lengths in mm, with spaces between. */
  readonly lengths: string
  readonly counted: string
  readonly surface: readonly Surface[]
  readonly galvanised: '' | 'yes' | 'no'
  /** One test a line: reference, yield, strength, elongation at greatest force, elongation after fracture; `-` where it was not measured. */
  readonly tests: string
}

export const EMPTY_BUNDLE: BundleText = {
  id: '',
  diameter: '',
  grade: '',
  length: '',
  count: '',
  reference: '',
  docket: 'not said',
  docketNumber: '',
  docketSupplier: '',
  docketDiameter: '',
  docketGrade: '',
  docketLength: '',
  docketCount: '',
  docketHeat: '',
  tag: 'not said',
  tagMill: '',
  tagHeat: '',
  certificate: 'not said',
  certificateNumber: '',
  certificateHeat: '',
  certificateGrade: '',
  certificateDiameter: '',
  certificateProcess: '',
  seen: '',
  barsRead: '',
  weighed: '',
  lengths: '',
  counted: '',
  surface: [],
  galvanised: '',
  tests: '',
}

export type BundleFaults = Readonly<Partial<Record<keyof BundleText, string>>>

export interface ReadBundle {
  /** Null where size or grade ordered are not there yet. */
  readonly bundle: Bundle | null
  readonly faults: BundleFaults
}

/** The bundle that the text says so far, with a fault at each field that cannot be read. */
export function readBundle(text: BundleText): ReadBundle {
  const faults: Partial<Record<keyof BundleText, string>> = {}
  const above = (field: keyof BundleText, whole = false): number | undefined => {
    const typed = text[field] as string
    if (typed.trim() === '') return undefined
    const value = readNumber(typed)
    if (value !== null && value > 0 && (!whole || Number.isInteger(value))) return value
    faults[field] = whole ? 'A whole number above 0.' : 'A number above 0.'
    return undefined
  }
  const said = (field: keyof BundleText): string | undefined => {
    const typed = (text[field] as string).trim()
    return typed === '' ? undefined : typed
  }
  const diameter = above('diameter')
  const grade = said('grade')
  const rest = {
    ...paper(text, { above, said, faults }),
    seen: words(text.seen),
    barsRead: above('barsRead', true),
    weighed: weighedOf(text.weighed, faults),
    lengths: lengthsOf(text.lengths, faults),
    counted: above('counted', true),
    surface: text.surface.length > 0 ? [...text.surface] : undefined,
    galvanised: text.galvanised === '' ? undefined : text.galvanised === 'yes',
    tests: testsOf(text.tests, faults),
  }
  const ordered = { length: above('length'), count: above('count', true), reference: said('reference') }
  if (diameter === undefined || grade === undefined) return { bundle: null, faults }
  return { bundle: given({ ordered: given({ diameter, grade, ...ordered }), ...rest }), faults }
}

interface Reader {
  readonly above: (field: keyof BundleText, whole?: boolean) => number | undefined
  readonly said: (field: keyof BundleText) => string | undefined
  readonly faults: Partial<Record<keyof BundleText, string>>
}

function paper(
  text: BundleText,
  { above, said, faults }: Reader,
): Pick<Bundle, 'docket' | 'tag' | 'certificate'> {
  const number = said('docketNumber')
  const certificateNumber = said('certificateNumber')
  if (text.docket === 'came' && number === undefined) faults.docketNumber = 'The number on the docket.'
  if (text.certificate === 'there' && certificateNumber === undefined) {
    faults.certificateNumber = 'The number of the certificate.'
  }
  return given({
    docket:
      text.docket === 'none'
        ? null
        : text.docket === 'came' && number !== undefined
          ? given({
              number,
              supplier: said('docketSupplier'),
              diameter: above('docketDiameter'),
              grade: said('docketGrade'),
              length: above('docketLength'),
              count: above('docketCount', true),
              heat: said('docketHeat'),
            })
          : undefined,
    tag:
      text.tag === 'none'
        ? null
        : text.tag === 'there'
          ? given({ mill: said('tagMill'), heat: said('tagHeat') })
          : undefined,
    certificate:
      text.certificate === 'none'
        ? null
        : text.certificate === 'there' && certificateNumber !== undefined
          ? given({
              number: certificateNumber,
              heat: said('certificateHeat'),
              grade: said('certificateGrade'),
              diameter: above('certificateDiameter'),
              process: text.certificateProcess === '' ? undefined : text.certificateProcess,
            })
          : undefined,
  })
}

function words(text: string): string[] | undefined {
  const found = text.split(/\s+/).filter((word) => word !== '')
  return found.length > 0 ? found : undefined
}

function weighedOf(text: string, faults: Partial<Record<keyof BundleText, string>>): Bundle['weighed'] {
  const pieces = lines(text).map((line) => numbersIn(line))
  if (pieces.some((numbers) => numbers?.length !== 2)) {
    faults.weighed = 'A line a piece: length in mm, then mass in kg. Example: 1000 0.89'
    return undefined
  }
  const read = pieces.map((numbers) => ({ length: numbers?.[0] ?? 0, mass: numbers?.[1] ?? 0 }))
  return read.length > 0 ? read : undefined
}

function lengthsOf(text: string, faults: Partial<Record<keyof BundleText, string>>): number[] | undefined {
  const numbers = numbersIn(text)
  if (numbers === null) {
    faults.lengths = 'Lengths in mm with spaces between. Example: 5995 6000'
    return undefined
  }
  return numbers.length > 0 ? numbers : undefined
}

function testsOf(text: string, faults: Partial<Record<keyof BundleText, string>>): Bundle['tests'] {
  const tests = lines(text).map((line) => {
    const [, quoted, plain, rest = ''] = TEST_LINE.exec(line) ?? []
    const words = rest.split(/\s+/).filter((word) => word !== '')
    const values = words.map((word) => (/^[-–—]$/.test(word) ? undefined : (readNumber(word) ?? 0)))
    const [yieldStress, strength, uniform, elongation] = values
    // An elongation over what a bar can have is a word of the reference that slipped in.
    const wrong =
      values.length > 4 ||
      values.some((value) => value !== undefined && value <= 0) ||
      [uniform, elongation].some((value) => value !== undefined && value > 60)
    return wrong || yieldStress === undefined || strength === undefined
      ? null
      : given({ reference: quoted ?? plain ?? '', yield: yieldStress, strength, uniform, elongation })
  })
  if (tests.includes(null)) {
    faults.tests =
      'A line a test: reference without spaces or in quotes, yield and strength in MPa, one or two elongations in %. Example: L-7 540 650 11'
    return undefined
  }
  return tests.length > 0 ? (tests as NonNullable<Bundle['tests']>) : undefined
}

/** Reference, in quotes where it has spaces, then the values. */
const TEST_LINE = /^(?:"([^"]+)"|([^\s"]+))\s+(.*)$/

function lines(text: string): string[] {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
}

/** Numbers above 0 with spaces between; null where anything else stands there. */
function numbersIn(text: string): number[] | null {
  const read = text
    .split(/[\s;×x]+/)
    .filter((word) => word !== '')
    .map((word) => readNumber(word))
  return read.every((value) => value !== null && value > 0) ? (read as number[]) : null
}

/** An object without its undefined fields: an entry holds only what was said. */
function given<T extends object>(value: { [K in keyof T]: T[K] | undefined }): T {
  return Object.fromEntries(Object.entries(value).filter(([, field]) => field !== undefined)) as T
}

/** A saved bundle as text again, to be corrected. */
export function bundleText(id: string, bundle: Bundle): BundleText {
  const { ordered, docket, tag, certificate } = bundle
  const text = (value: number | string | undefined): string => (value === undefined ? '' : String(value))
  return {
    ...EMPTY_BUNDLE,
    id,
    diameter: text(ordered.diameter),
    grade: ordered.grade,
    length: text(ordered.length),
    count: text(ordered.count),
    reference: text(ordered.reference),
    docket: docket === undefined ? 'not said' : docket === null ? 'none' : 'came',
    docketNumber: text(docket?.number),
    docketSupplier: text(docket?.supplier),
    docketDiameter: text(docket?.diameter),
    docketGrade: text(docket?.grade),
    docketLength: text(docket?.length),
    docketCount: text(docket?.count),
    docketHeat: text(docket?.heat),
    tag: tag === undefined ? 'not said' : tag === null ? 'none' : 'there',
    tagMill: text(tag?.mill),
    tagHeat: text(tag?.heat),
    certificate: certificate === undefined ? 'not said' : certificate === null ? 'none' : 'there',
    certificateNumber: text(certificate?.number),
    certificateHeat: text(certificate?.heat),
    certificateGrade: text(certificate?.grade),
    certificateDiameter: text(certificate?.diameter),
    certificateProcess: certificate?.process ?? '',
    seen: (bundle.seen ?? []).join(' '),
    barsRead: text(bundle.barsRead),
    weighed: (bundle.weighed ?? []).map(({ length, mass }) => `${length} ${mass}`).join('\n'),
    lengths: (bundle.lengths ?? []).join(' '),
    counted: text(bundle.counted),
    surface: bundle.surface ?? [],
    galvanised: bundle.galvanised === undefined ? '' : bundle.galvanised ? 'yes' : 'no',
    tests: (bundle.tests ?? []).map(testText).join('\n'),
  }
}

function testText(test: NonNullable<Bundle['tests']>[number]): string {
  const { reference, uniform, elongation } = test
  const name = /\s/.test(reference) ? `"${reference.replaceAll('"', "'")}"` : reference
  const elongations = elongation === undefined ? [uniform ?? ''] : [uniform ?? '-', elongation]
  return [name, test.yield, test.strength, ...elongations].join(' ').trim()
}
