import { unknown, type Worked } from '../../../working/worked.ts'

/**
 * Tension in bending at handling: NZS 3101.1:2006 5.2.5 gives the modulus of rupture, not what share of it a lift may
 * use; that factor is the designer's, so it stays unknown until entered.
 */
export function liftTension(): Worked<number> {
  return unknown('tension at handling: no confirmed limit; the designer’s factor on the modulus of rupture')
}
