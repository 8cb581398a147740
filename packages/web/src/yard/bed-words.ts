import { coverResistance } from '@castwright/engine/cure/night'
import type { Yard, YardBed, YardCover } from '@castwright/engine/yard'
import { figure } from '../look/index.ts'

/** A bed as the yard's file gives it, with what lies under a panel on it. */
export function bedWords({ mark, length, width, heated, roofed, under }: YardBed): string {
  return [
    `${mark}: ${figure(length)} × ${figure(width)} mm`,
    heated ? 'heated' : '',
    roofed ? 'under a roof' : '',
    ...(under?.layers ?? []).map(
      ({ thickness, conductivity }) => `${figure(thickness)} mm of ${figure(conductivity)} W/mK below`,
    ),
    under?.insulation ? `insulation ${figure(under.insulation)} m²K/W` : '',
    under?.film === undefined ? '' : `film ${figure(under.film)} W/m²K`,
    heldWords(under?.temperature),
    under?.power === undefined
      ? ''
      : `${figure(under.power.watts)} W/m² from ${figure(under.power.from)} to ${figure(under.power.until)} h after mixing`,
    under === undefined ? 'make-up below not given' : '',
  ]
    .filter((part) => part !== '')
    .join(', ')
}

function heldWords(held: NonNullable<YardBed['under']>['temperature']): string {
  if (held === undefined) return ''
  return typeof held === 'number' ? `held at ${figure(held)} °C` : 'held along its own curve'
}

/** A cover and what it keeps in, and whether it is the usual one. */
export function coverWords(cover: YardCover, covering: Yard['covering']): string {
  const usual = covering?.cover === cover.mark
  const off = usual && covering.off !== undefined ? `, off at ${covering.off}` : ''
  return `${cover.mark}: ${figure(coverResistance(cover))} m²K/W${usual ? `, the usual one${off}` : ''}`
}
