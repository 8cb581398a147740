import { writeFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { type CutList, type CutPieces, type CutPlan, cutPlan, parseCutList } from '@castwright/engine/steel'
import { InputError } from '@castwright/engine/working'
import { numberText, textTable, type Verb } from '../verb.ts'

export const cutVerb: Verb = {
  name: 'cut',
  file: {
    name: 'CUTLIST',
    about: 'stock, offcuts, kerf, keep, together, patterns and pieces (mark, panel, machine, order) as JSON',
  },
  options: [
    { flags: '--within <seconds>', about: 'most that the search may take, s; 10 if not given' },
    { flags: '--sheet <file>', about: 'also writes the cutting sheet, a new PDF on A4: each bar to scale' },
  ],
  example: 'castwright cut docs/examples/cutlist.json --within 5',
  async run(given) {
    const within = given.optionalNumber('within', { above: 0, most: 86_400, unit: 's' })
    const list = parseCutList(await given.fileJson(), given.fileName)
    const { working, ...plan } = await cutPlan({ list, within: within ?? 10 }).catch((error: unknown) => {
      throw error instanceof InputError ? error.within(given.fileName) : error
    })
    const sheet = given.optionalText('sheet')
    if (sheet !== undefined)
      await writeSheet(sheet, { list, plan: { ...plan, working }, name: given.fileName })
    return {
      json: { ...plan },
      working,
      ...(plan.tooManyWays ? { verdict: 'fail' as const } : {}),
      assumed: [
        ...(within === undefined ? [{ field: 'within', value: 10, unit: 's', why: 'not given' }] : []),
        ...(list.kerf === undefined ? [{ field: 'kerf', value: 0, unit: 'mm', why: 'not given' }] : []),
      ],
      table: () => cutTable(plan),
    }
  },
}

async function writeSheet(
  path: string,
  { list, plan, name }: { readonly list: CutList; readonly plan: CutPlan; readonly name: string },
): Promise<void> {
  const { cuttingSheet } = await import('@castwright/documents')
  const { timeZone } = new Intl.DateTimeFormat().resolvedOptions()
  const bytes = await cuttingSheet({
    list,
    plan,
    name: basename(name),
    timezone: timeZone,
    size: 'a4',
    made: new Date().toISOString(),
  })
  try {
    await writeFile(path, bytes, { flag: 'wx' })
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    const found = code === 'EEXIST' ? `${path}, which is there already` : `${path} (${code})`
    throw new InputError(
      [{ path: '', found, expected: 'a new file in a folder that is there' }],
      'option --sheet',
    )
  }
}

function cutTable(plan: Omit<CutPlan, 'working'>): string {
  const shear = plan.bars.some(({ batches }) => batches !== undefined)
  return [
    textTable([
      ['Bars', 'Length', 'Pieces', 'Left of each', ...(shear ? ['At once'] : [])],
      ...plan.bars.map((bar) => [
        String(bar.count),
        `${bar.stock}${bar.rack === true ? ' (rack)' : ''}`,
        bar.pieces.map(piecesText).join(', '),
        `${numberText(bar.offcut)}${bar.offcutTo === undefined ? '' : ` (to ${bar.offcutTo})`}`,
        ...(shear ? [(bar.batches ?? []).map(({ bars, times }) => `${times} × ${bars}`).join(' + ')] : []),
      ]),
    ]),
    textTable([
      ['New stock', numberText(plan.stockLength)],
      ['From the rack', numberText(plan.rackLength)],
      [
        'Ways of cutting',
        `${plan.ways}${plan.tooManyWays ? ', more than wanted: none with fewer was found' : ''}`,
      ],
      ['Pieces', numberText(plan.netLength)],
      ...(plan.keptLength === undefined ? [] : [['Back to the rack', numberText(plan.keptLength)]]),
      ['No plan takes less new stock than', numberText(plan.lowerBound)],
      ['Best possible', plan.proven ? 'proven' : 'not proven'],
    ]),
  ].join('\n')
}

function piecesText({ count, length, mark, panel, machine }: CutPieces): string {
  const words = [mark, panel, machine === undefined ? undefined : `at ${machine}`]
  return [`${count} × ${length}`, ...words.filter((word) => word !== undefined)].join(' ')
}
