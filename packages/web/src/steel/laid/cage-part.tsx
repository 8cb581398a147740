import { hooksPicture } from '@castwright/documents/picture'
import type { CodeFamily } from '@castwright/engine/codes'
import { type CagePlan, planCage } from '@castwright/engine/steel'
import { type ReactElement, useMemo, useState } from 'react'
import {
  Caution,
  CheckField,
  Explain,
  fixed,
  massText,
  Notice,
  NumberField,
  Sheet,
} from '../../look/index.ts'
import { PictureView } from '../../panel/picture-view.tsx'
import { CheckList } from './check-list.tsx'
import { enteredHooks, enteredNumber } from './entered.ts'
import type { LaidProps } from './laid-page.tsx'

/** Mass of the cage, where it hangs, and what it does on so many hooks. */
export function CagePart({
  drawing,
  plan,
  family,
}: LaidProps & { readonly family: CodeFamily }): ReactElement {
  const { steel } = plan
  const [sag, setSag] = useState('')
  const [hooksX, setHooksX] = useState('')
  const [hooksY, setHooksY] = useState('')
  const [hoist, setHoist] = useState('')
  const [together, setTogether] = useState(false)
  const entered = {
    sag: enteredNumber(sag),
    x: enteredHooks(hooksX),
    y: enteredHooks(hooksY),
    hoist: enteredNumber(hoist),
  }
  const given = `${entered.sag.value} ${entered.x.value} ${entered.y.value} ${entered.hoist.value} ${together}`
  const twoLayers = new Set(steel.placed.map(({ layer }) => layer)).size > 1
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was entered stands in `given`
  const cage = useMemo(
    () =>
      planCage({
        steel,
        family,
        ...(entered.sag.value === null ? {} : { sag: entered.sag.value }),
        ...(entered.x.value === null || entered.y.value === null
          ? {}
          : { picks: { x: entered.x.value, y: entered.y.value } }),
        ...(entered.hoist.value === null ? {} : { hoist: entered.hoist.value }),
        ...(together ? { together } : {}),
      }),
    [steel, family, given],
  )
  return (
    <Sheet
      title="Cage and its hooks"
      note="Hung level under a spreader, hooks in a grid. Enter what the yard allows: no rule gives it."
    >
      <div className="stack">
        <p>{massWords(cage)}</p>
        <div className="row steel-choice">
          <NumberField
            label="Largest sag of the cage"
            unit="mm"
            value={sag}
            onText={setSag}
            note="Gives the fewest hooks."
            fault={entered.sag.fault}
          />
          <NumberField
            label="Hooks along x"
            value={hooksX}
            onText={setHooksX}
            note="Empty: the fewest."
            fault={entered.x.fault}
          />
          <NumberField
            label="Hooks along y"
            value={hooksY}
            onText={setHooksY}
            note="Both, or neither."
            fault={entered.y.fault}
          />
          <NumberField
            label="Hoist starts and stops"
            unit="× weight"
            value={hoist}
            onText={setHoist}
            note="Empty: 1.5 is assumed."
            fault={entered.hoist.fault}
          />
        </div>
        {twoLayers ? (
          <CheckField
            label="Both layers are held to each other and bend together"
            checked={together}
            onChange={(event) => setTogether(event.currentTarget.checked)}
          />
        ) : null}
        <div role="status" className="stack">
          <Hung cage={cage} />
        </div>
        <CheckList checks={cage.checks} assumed={cage.assumed} />
        <PictureView layOut={(frame) => hooksPicture({ drawing, steel, cage, frame })} />
        {cage.cautions.map(({ order, text }) => (
          <Caution key={order} order={order} text={text} />
        ))}
      </div>
    </Sheet>
  )
}

function Hung({ cage }: { readonly cage: CagePlan }): ReactElement {
  const { craning, fewest, aside } = cage
  if (!craning.known) {
    return (
      <Notice kind="unknown" title="Nothing is said about hooks yet">
        {craning.gaps.join('; ')}
      </Notice>
    )
  }
  const { picks, sag, sagX, sagY, stress, pull } = craning.value
  const least = fewest.known ? ` Fewest within the sag entered: ${fewest.value.x} by ${fewest.value.y}.` : ''
  const beside =
    aside === null
      ? ''
      : ` Centre of mass ${fixed(Math.abs(aside[0]), 0)} mm along x and ${fixed(Math.abs(aside[1]), 0)} mm along y from the middle of the hooks.`
  return (
    <>
      <p>
        On {picks.x} by {picks.y} hooks: sag <span className="number">{fixed(sag, 0)} mm</span> (
        {fixed(sagX, 0)} of the bars along x, {fixed(sagY, 0)} along y), bars bent to {fixed(stress, 0)} MPa,
        at most <span className="number">{fixed(pull, 2)} kN</span> on one hook.{least}
        {beside}
      </p>
      <Explain about="Cage on its hooks" working={craning.working} assumed={cage.assumed} />
    </>
  )
}

function massWords({ mass, length, width, placedCentre, centre }: CagePlan): string {
  const weight = mass === null ? 'Mass not known' : massText(mass)
  const size = `${fixed(length / 1000, 2)} × ${fixed(width / 1000, 2)} m`
  if (placedCentre === null) return `${weight}, ${size}. Centre of mass not known: cover sets the heights.`
  const [x, y, z] = placedCentre.map((value) => fixed(value, 0))
  const at = `x ${x}, y ${y}, ${z} mm above the mould face`
  return centre.known
    ? `${weight}, ${size}. Centre of mass at ${at}.`
    : `${weight}, ${size}. Centre of mass not known: ${centre.gaps.join('; ')}. Of the bars that have a place it lies at ${at}.`
}
