import { codeFamily } from '@castwright/engine/codes'
import { panelOf } from '@castwright/engine/panel'
import { type ChairLayer, type ChairPlan, cageMass, planChairs, tiePlan } from '@castwright/engine/steel'
import { shown } from '@castwright/engine/working'
import { type Paper, POINTS_PER_MM } from '../paper/paper.ts'
import { type SteelPart, steelLayerPicture, steelParts } from '../picture/steel-layers.ts'
import { tiePicture } from '../picture/steel-layers-ties.ts'
import { steelSection } from '../picture/steel-section.ts'
import { cautions, openSheet, type SheetInput, sourceText } from './sheet.ts'

const NAMES = { mould: 'near the mould', top: 'near the top' } as const

/** Where the cage is tied and what it stands on: ties and chairs of each layer to scale, and a section with every bar's height. */
export async function tiePlanSheet(input: SheetInput): Promise<Uint8Array> {
  const { plan, drawing } = input
  const { steel } = plan
  const ties = tiePlan(steel)
  const paper = openSheet(input, 'Tie plan', 'cage')
  const weight = cageMass(steel)
  paper.cells([
    ['Crossings', String(ties.crossings)],
    ['To tie', `${ties.tied}, and ${ties.lapTies} ends of laps`],
    ['Tying wire', shown(steel.wire, 'kg')],
    ['Cage', shown(weight.mass, 'kg')],
  ])
  paper.paragraph(
    'Every crossing of the rim and of openings is tied, every other inside, laps at both ends. Edge bars, trimmers and listed bars are tied wherever they cross. Ties hold bars in place and carry nothing.',
    { bold: true },
  )
  for (const layer of ties.layers) {
    paper.picture(tiePicture({ drawing, steel, ties: layer, frame: frameOf(paper, 250) }))
    const left = layer.x.length - layer.tied
    paper.paragraph(
      `Ties ${NAMES[layer.layer]}: dots black on the rim (${layer.rim}), blue-green inside (${layer.tied - layer.rim}), ${left} crossings left; strokes at ${layer.lapX.length} ends of laps.`,
    )
  }
  section(paper, input)
  chairs(paper, input)
  for (const gap of steel.unknown) paper.paragraph(`Not known: ${gap}.`)
  cautions(paper, ['cage', 'set'])
  paper.signatures(['Tied by', 'Cage checked by'])
  return paper.finish()
}

function frameOf(
  paper: Paper,
  height: number,
): { width: number; height: number; text: number; paper: number } {
  return { width: paper.width, height, text: 8.5, paper: POINTS_PER_MM }
}

function section(paper: Paper, { plan, drawing }: SheetInput): void {
  const picture = steelSection({ drawing, steel: plan.steel, frame: frameOf(paper, 190), along: 'x' })
  paper.need((picture?.height ?? 0) + 60)
  paper.heading('Section, mould face below')
  if (picture === null) {
    paper.paragraph('Not known: cover.mould and cover.top set the heights of the bars.')
    return
  }
  paper.picture(picture)
  paper.paragraph(picture.title)
}

function chairs(paper: Paper, { plan, drawing }: SheetInput): void {
  const { steel } = plan
  const planned = planChairs({ panel: panelOf(drawing), steel, family: codeFamily(plan.family) })
  paper.need(300)
  paper.heading('Chairs')
  const parts = steelParts(steel)
  for (const layer of planned.layers) {
    const part = carriedPart(parts, layer)
    if (part !== undefined) {
      paper.picture(steelLayerPicture({ drawing, part, chairs: layer, frame: frameOf(paper, 230) }))
    }
    paper.paragraph(chairText(layer))
  }
  for (const { field, value, unit, why } of planned.assumed)
    paper.paragraph(`Assumed: ${field} ${value} ${unit}: ${why}.`)
  for (const gap of planned.unknown) paper.paragraph(`Not known: ${gap}.`)
  if (planned.layers.length === 0 && planned.unknown.length === 0)
    paper.paragraph('No mat to stand on chairs.')
  failed(paper, planned)
}

function carriedPart(parts: readonly SteelPart[], { layer, direction }: ChairLayer): SteelPart | undefined {
  return parts.find(({ key }) => key === `${layer}-${direction}`)
}

function chairText(layer: ChairLayer): string {
  const { at, height, spacing, spacingSource, sag, raise, diameter, direction } = layer
  const higher = raise > 0 ? `, ${shown(raise, 'mm')} higher than the drawn cover` : ''
  const sags = sag === null ? '' : ` The mat sags ${shown(sag, 'mm')} between them under one person.`
  return `${at.length} chairs ${NAMES[layer.layer]}, ${shown(height, 'mm')} high${higher}, under the ${shown(diameter)} mm bars along ${direction}, at most ${shown(spacing, 'mm')} apart both ways (${sourceText(spacingSource)}); the first within half of that from each edge and opening.${sags}${staysBent(layer)}`
}

function staysBent({ stress, yield: yields }: ChairLayer): string {
  return stress !== null && yields !== null && stress > yields
    ? ' Bars that are stepped on between chairs stay bent: lay boards to walk on.'
    : ''
}

function failed(paper: Paper, { checks }: ChairPlan): void {
  for (const check of checks) {
    if (check.verdict === 'fail')
      paper.paragraph(
        `FAILS: ${check.what}, ${shown(check.demand, check.unit)}, limit ${shown(check.limit, check.unit)}.`,
        {
          bold: true,
        },
      )
  }
}
