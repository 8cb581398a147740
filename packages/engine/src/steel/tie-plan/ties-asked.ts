import type { Asked } from '../../working/asked.ts'
import type { Source } from '../../working/source.ts'
import type { TiePlan } from './tie-plan.ts'

const TIED: Source = {
  standard: 'Concrete Construction, General principles for bar placing, part III',
  clause: 'prefabricated mats',
  status: 'seen',
}

/** What is looked at before a cage leaves its bench: the ties of each layer with crossings. */
export function tiesAsked({ layers }: Pick<TiePlan, 'layers'>): Asked[] {
  return layers
    .filter(({ x }) => x.length > 0)
    .map(({ layer, rim, tied, lapX }) => ({
      id: `ties:${layer}`,
      step: 'cage',
      what: `Ties ${layer === 'mould' ? 'near the mould' : 'near the top'}: all ${rim} of the rim, ${tied - rim} inside${lapX.length > 0 ? `, ${lapX.length} ends of laps` : ''}`,
      kind: 'tick',
      unit: '',
      source: TIED,
      note: 'Every other crossing inside, staggered; the tie plan shows each.',
    }))
}
