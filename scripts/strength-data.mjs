// node scripts/strength-data.mjs [--check]: makes the table of open tests that the engine ships from the file beside it.
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { root } from './run.mjs'

const folder = join(root, 'packages/engine/src/cure/gain')
const [header, ...rows] = readFileSync(join(folder, 'strength-by-age.csv'), 'utf8').trim().split('\n')
const EXPECTED =
  'mix,cement_kg_m3,slag_kg_m3,fly_ash_kg_m3,water_kg_m3,superplasticizer_kg_m3,coarse_kg_m3,fine_kg_m3,age_days,strength_mpa'
if (header !== EXPECTED) throw new Error(`strength-by-age.csv: header ${header}, expected ${EXPECTED}`)

const mixes = new Map()
for (const row of rows) {
  const [mark, ...fields] = row.split(',')
  const numbers = fields.map(Number)
  if (numbers.length !== 9 || numbers.some((number) => !Number.isFinite(number)))
    throw new Error(`strength-by-age.csv: not nine numbers in ${row}`)
  const proportions = numbers.slice(0, 7).join(' ')
  const mix = mixes.get(mark) ?? { proportions, tests: [] }
  if (mix.proportions !== proportions)
    throw new Error(`strength-by-age.csv: ${mark} has two sets of proportions`)
  mix.tests.push(`${numbers[7]}:${numbers[8]}`)
  mixes.set(mark, mix)
}
const lines = [...mixes].map(([mark, { proportions, tests }]) => `${mark} ${proportions} ${tests.join(' ')}`)
const text = `// Made by scripts/strength-data.mjs from strength-by-age.csv: not edited by hand.
// I-C. Yeh, "Concrete Compressive Strength", UCI Machine Learning Repository, 1998, CC BY 4.0; a part of it, grouped by mix.

/** A line a mix: mark; cement, slag, fly ash, water, superplasticizer, coarse, fine, kg/m³; then tests as days:MPa. */
export const OPEN_DATA = \`
${lines.join('\n')}
\`
`
const target = join(folder, 'open-data.ts')
if (process.argv.includes('--check')) {
  if (readFileSync(target, 'utf8') !== text)
    throw new Error('open-data.ts does not match strength-by-age.csv')
} else writeFileSync(target, text)
