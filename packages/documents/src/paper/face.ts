import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { unpackedFont } from './woff.ts'

const FOLDER = '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next'
const require = createRequire(import.meta.url)

/** The faces of a sheet by name. Latin and extended Latin are separate files of one typeface. */
export const FACES = {
  regular: `${FOLDER}-latin-400-normal.woff`,
  bold: `${FOLDER}-latin-700-normal.woff`,
  'regular-ext': `${FOLDER}-latin-ext-400-normal.woff`,
  'bold-ext': `${FOLDER}-latin-ext-700-normal.woff`,
} as const
export type Face = keyof typeof FACES

/** Bytes of every face, to be embedded as subsets. Read and unpacked once a process. */
export function faceFiles(): ReadonlyMap<Face, Buffer> {
  loaded ??= new Map(
    Object.entries(FACES).map(([name, path]) => [
      name as Face,
      unpackedFont(readFileSync(require.resolve(path))),
    ]),
  )
  return loaded
}

let loaded: Map<Face, Buffer> | undefined

/** Signs that the typeface lacks, in signs that it has: a sheet must not print empty boxes for what it says itself. */
const WRITTEN: Readonly<Record<string, string>> = {
  '≥': 'at least ',
  '≤': 'at most ',
  '→': 'to ',
  '⌀': 'Ø',
  '∅': 'Ø',
  '′': '\u2019',
  // The micro sign, as in µm.
  '\u00b5': 'u',
  α: 'alpha',
  β: 'beta',
  γ: 'gamma',
  δ: 'delta',
  ε: 'epsilon',
  η: 'eta',
  θ: 'theta',
  λ: 'lambda',
  μ: 'mu',
  ν: 'nu',
  π: 'pi',
  ρ: 'rho',
  σ: 'sigma',
  τ: 'tau',
  φ: 'phi',
  ψ: 'psi',
  ω: 'omega',
  Δ: 'Delta ',
  Σ: 'sum ',
  '∫': 'integral ',
  ᵢ: 'i',
  ⱼ: 'j',
  '√': 'root ',
  '\u00a0': ' ',
  '\u202f': ' ',
}

/** Powers that the typeface lacks are written out: 10⁻⁶ as 10^-6. What it has, m² and m³, stays. */
function writtenPowers(text: string): string {
  return text.replace(
    /[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]*[⁰⁴⁵⁶⁷⁸⁹⁻][⁰¹²³⁴⁵⁶⁷⁸⁹⁻]*/g,
    (power) => `^${power.normalize('NFKC').replace('−', '-')}`,
  )
}

/** A text cut into runs of one face each. A sign in neither file is printed as its code, never dropped. */
export function faceRuns(text: string, bold: boolean): { readonly face: Face; readonly text: string }[] {
  const plain: Face = bold ? 'bold' : 'regular'
  const extended: Face = bold ? 'bold-ext' : 'regular-ext'
  const runs: { face: Face; text: string }[] = []
  const add = (face: Face, part: string): void => {
    const last = runs.at(-1)
    if (last?.face === face) last.text += part
    else runs.push({ face, text: part })
  }
  for (const sign of writtenPowers(text.normalize('NFC')).replace(/([ΣΔ√∫]) /g, '$1')) {
    const code = sign.codePointAt(0) ?? 0
    const written = WRITTEN[sign]
    if (written !== undefined) add(plain, written)
    else if (isLatin(code)) add(plain, sign)
    else if (isExtended(code)) add(extended, sign)
    else add(plain, `[U+${code.toString(16).toUpperCase().padStart(4, '0')}]`)
  }
  return runs
}

function isLatin(code: number): boolean {
  return (
    (code >= 0x20 && code <= 0x7e) ||
    (code >= 0xa0 && code <= 0xff) ||
    [0x131, 0x152, 0x153, 0x2022, 0x2026, 0x20ac, 0x2122, 0x2212, 0x2191, 0x2193].includes(code) ||
    (code >= 0x2010 && code <= 0x201e)
  )
}

function isExtended(code: number): boolean {
  return code >= 0x100 && code <= 0x17f
}
