import { lengthText, steelLayerPicture, steelParts } from '@castwright/documents/picture'
import type { CodeFamily } from '@castwright/engine/codes'
import type { Panel } from '@castwright/engine/panel'
import { type ChairLayer, planChairs } from '@castwright/engine/steel'
import { type ReactElement, useMemo, useState } from 'react'
import { fixed, Notice, NumberField, Sheet } from '../../look/index.ts'
import { PictureView } from '../../panel/picture-view.tsx'
import { CheckList } from './check-list.tsx'
import { enteredNumber } from './entered.ts'
import type { LaidProps } from './laid-page.tsx'
import { SwitchRow } from './switch-row.tsx'

const NAMES = { mould: 'Near the mould', top: 'Near the top' } as const

interface ChairsPartProps extends LaidProps {
  readonly panel: Panel
  readonly family: CodeFamily
}

/** Chairs of each layer; what the yard enters takes the place of rule and assumption. */
export function ChairsPart({ drawing, plan, panel, family }: ChairsPartProps): ReactElement {
  const { steel } = plan
  const [person, setPerson] = useState('')
  const [sag, setSag] = useState('')
  const [spacing, setSpacing] = useState('')
  const [layer, setLayer] = useState<'mould' | 'top'>('mould')
  const entered = {
    person: enteredNumber(person),
    sag: enteredNumber(sag),
    spacing: enteredNumber(spacing),
  }
  const given = `${entered.person.value} ${entered.sag.value} ${entered.spacing.value}`
  // biome-ignore lint/correctness/useExhaustiveDependencies: the three numbers stand in `given`
  const chairs = useMemo(
    () =>
      planChairs({
        panel,
        steel,
        family,
        ...(entered.person.value === null ? {} : { person: entered.person.value }),
        ...(entered.sag.value === null ? {} : { sag: entered.sag.value }),
        ...(entered.spacing.value === null ? {} : { spacing: entered.spacing.value }),
      }),
    [panel, steel, family, given],
  )
  const parts = useMemo(() => steelParts(steel), [steel])
  const shown = chairs.layers.find((one) => one.layer === layer) ?? chairs.layers[0]
  const part =
    shown === undefined ? undefined : parts.find(({ key }) => key === `${shown.layer}-${shown.direction}`)
  return (
    <Sheet
      title="Chairs"
      note="Under the bars that lie lowest in each layer, the first within half a spacing of every edge and opening."
    >
      <div className="stack">
        <div className="row steel-choice">
          <NumberField
            label="One person with tools"
            unit="kN"
            value={person}
            onText={setPerson}
            note="Empty: 1 kN is assumed."
            fault={entered.person.fault}
          />
          <NumberField
            label="Largest sag"
            unit="mm"
            value={sag}
            onText={setSag}
            note="Empty: what the family allows on the cover."
            fault={entered.sag.fault}
          />
          <NumberField
            label="Chairs apart"
            unit="mm"
            value={spacing}
            onText={setSpacing}
            note="Empty: by rule, else by sag."
            fault={entered.spacing.fault}
          />
        </div>
        {chairs.layers.map((one) => (
          <p key={one.layer}>{chairWords(one)}</p>
        ))}
        {chairs.unknown.length > 0 ? (
          <Notice kind="unknown" title="Not known">
            {chairs.unknown.join('; ')}
          </Notice>
        ) : null}
        <CheckList checks={chairs.checks} assumed={chairs.assumed} />
        {shown === undefined || part === undefined ? null : (
          <>
            {chairs.layers.length > 1 ? (
              <SwitchRow
                name="Layer of the chairs"
                chosen={shown.layer}
                onChoose={setLayer}
                choices={chairs.layers.map((one) => ({ key: one.layer, name: NAMES[one.layer] }))}
              />
            ) : null}
            <PictureView layOut={(frame) => steelLayerPicture({ drawing, part, chairs: shown, frame })} />
          </>
        )}
      </div>
    </Sheet>
  )
}

function chairWords({ layer, at, height, raise, spacing, sag, stress, yield: yields }: ChairLayer): string {
  const higher = raise > 0 ? `, ${lengthText(raise)} higher than the drawn cover` : ''
  const sags = sag === null ? '' : ` Sag under one person ${fixed(sag, 1)} mm.`
  const bent =
    stress !== null && yields !== null && stress > yields
      ? ` Stepped on between chairs, bars reach ${fixed(stress, 0)} MPa and stay bent (yield ${fixed(yields, 0)}): lay boards to walk on.`
      : ''
  return `${NAMES[layer]}: ${at.length} chairs, ${lengthText(height)} mm high${higher}, at most ${lengthText(spacing)} mm apart.${sags}${bent}`
}
