import type { Card } from '@castwright/engine/steps'
import type { ReactElement } from 'react'
import { CastForm } from './cast-form.tsx'
import { CureNight } from './cure-night.tsx'
import { DesignForm } from './design-form.tsx'
import { DocketForm } from './docket-form.tsx'
import { FinishSurface } from './finish-surface.tsx'
import { GearForm } from './gear-form.tsx'
import { HandOverForm } from './hand-over-form.tsx'
import { HoldDownPart } from './hold-down-part.tsx'
import { MouldPart } from './mould-part.tsx'
import { OpenLaid } from './open-laid.tsx'
import { OpenLift } from './open-lift.tsx'
import { PlaceForm } from './place-form.tsx'
import { PlacingHere } from './placing-here.tsx'
import { SetForm } from './set-form.tsx'
import { SpecimenForm } from './specimen-form.tsx'
import { TemperatureForm } from './temperature-form.tsx'

/** What is entered at a step beside its checks: the pour, dockets, logs, results, the lifting design, the place. */
export function StepExtras({ card }: { readonly card: Card }): ReactElement | null {
  const { step } = card
  switch (step) {
    case 'mould':
      return <MouldPart />
    case 'cut-bend':
    case 'cage':
      return <OpenLaid />
    case 'set':
      return (
        <>
          <HoldDownPart />
          <OpenLaid />
        </>
      )
    case 'deliver':
      return (
        <>
          <CastForm />
          <DocketForm card={card} />
          <SetForm />
        </>
      )
    case 'place':
      return (
        <>
          <PlacingHere />
          <HoldDownPart />
          <CastForm />
        </>
      )
    case 'finish':
      return (
        <>
          <FinishSurface part="readings" />
          <CastForm />
        </>
      )
    case 'cure':
      return (
        <>
          <CastForm />
          <CureNight />
          <TemperatureForm card={card} />
          <SpecimenForm step={step} />
        </>
      )
    case 'strip':
      return (
        <>
          <OpenLift />
          <DesignForm />
          <GearForm />
          <SpecimenForm step={step} />
        </>
      )
    case 'store':
    case 'load':
      return <PlaceForm step={step} />
    case 'hand-over':
      return <HandOverForm />
    default:
      return null
  }
}
