import { type CodeFamily, codeFamily } from '@castwright/engine/codes'
import { heatsOf } from '@castwright/engine/steel/incoming'
import { type BundleFacts, panelsOfHeat } from '@castwright/record'
import { type ReactElement, type ReactNode, useEffect, useMemo, useRef, useState } from 'react'
import { Button, Caution, Field, SelectField, Sheet, VerdictMark } from '../../look/index.ts'
import { useActing } from '../../panel/acting.ts'
import { mayDo } from '../../panel/entitled.ts'
import { usePerson, useRecord, useYardState } from '../../record/index.ts'
import { sizeName } from '../size-name.ts'
import { standingOf } from '../standing-of.ts'
import { SteelFrame } from '../steel-frame.tsx'
import { recordBundle } from './acts/record-bundle.ts'
import { EMPTY_BUNDLE } from './bundle-draft.ts'
import { BundleForm } from './bundle-form.tsx'
import { BundleSheet, NoFamily, PanelLinks, STANDING } from './bundle-sheet.tsx'

/** Steel from the truck: what came, what was found, who accepted it, and which panels hold which heat. */
export function InPage(): ReactElement {
  const { yard, steel } = useYardState()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [entering, setEntering] = useState(false)
  const [open, setOpen] = useState<string | null>(null)
  const code = yard.yard?.code
  if (code === undefined) {
    return (
      <SteelFrame page="In">
        <NoFamily />
      </SteelFrame>
    )
  }
  const family = codeFamily(code)
  const shown = open === null ? undefined : steel.bundles.get(open)
  return (
    <SteelFrame page="In">
      {entering ? (
        <Arrived>
          <Sheet title="A bundle came">
            <BundleForm
              family={family}
              from={EMPTY_BUNDLE}
              taken={new Set(steel.bundles.keys())}
              correcting={false}
              busy={busy}
              fault={fault}
              onLeave={() => setEntering(false)}
              onSave={(id, bundle) =>
                void run(() => record.add(recordBundle.draft({ id, bundle }))).then((done) => {
                  if (!done) return
                  setEntering(false)
                  setOpen(id)
                })
              }
            />
          </Sheet>
        </Arrived>
      ) : mayDo(person.role, 'bundle') ? (
        <div className="row">
          <Button look="main" onClick={() => setEntering(true)}>
            A bundle came
          </Button>
        </div>
      ) : null}
      {shown === undefined ? null : (
        <Arrived key={shown.id}>
          <BundleSheet
            facts={shown}
            family={family}
            onClose={() => {
              setOpen(null)
              document.getElementById(rowId(shown.id))?.focus()
            }}
          />
        </Arrived>
      )}
      <Bundles family={family} onOpen={setOpen} />
      <Heats />
      <Caution
        order="Keep clear of the load while bundles are lifted."
        text="What is rolled on the bar decides, not the docket. A bundle that is not accepted is kept apart and not cut. The local code and the engineer decide what these findings do not."
      />
    </SteelFrame>
  )
}

/** What was asked for opens above the list: it takes the focus, and with it the screen, so that nobody looks for it. */
function Arrived({ children }: { readonly children: ReactNode }): ReactElement {
  const box = useRef<HTMLDivElement>(null)
  useEffect(() => box.current?.focus(), [])
  return (
    <div ref={box} tabIndex={-1}>
      {children}
    </div>
  )
}

function rowId(bundle: string): string {
  return `bundle-row-${bundle}`
}

/** Bundles that are listed at once. */
const MOST = 50

function Bundles({
  family,
  onOpen,
}: {
  readonly family: CodeFamily
  readonly onOpen: (id: string) => void
}): ReactElement {
  const { steel } = useYardState()
  const [which, setWhich] = useState<'all' | 'accepted' | 'waiting' | 'apart'>('all')
  const [search, setSearch] = useState('')
  const [shown, setShown] = useState(MOST)
  const listed = useMemo(
    () =>
      [...steel.bundles.values()]
        .map((facts) => ({
          facts,
          standing: standingOf(facts, family.steel).standing,
        }))
        .sort(({ facts: a }, { facts: b }) =>
          a.seen === b.seen ? (a.id < b.id ? -1 : 1) : a.seen < b.seen ? 1 : -1,
        ),
    [steel.bundles, family],
  )
  const found = useMemo(
    () =>
      listed.filter(
        ({ facts, standing }) => (which === 'all' || standing === which) && says(facts, search, family),
      ),
    [listed, which, search, family],
  )
  return (
    <Sheet title="Bundles" note={`${listed.length} on record`}>
      {listed.length === 0 ? (
        <p>None yet. When a truck comes, read the bars, weigh a piece, and record what is found.</p>
      ) : (
        <>
          <div className="row steel-choice">
            <SelectField
              label="Standing"
              value={which}
              onChange={(event) => setWhich(event.currentTarget.value as typeof which)}
            >
              <option value="all">all</option>
              <option value="waiting">wait</option>
              <option value="apart">kept apart</option>
              <option value="accepted">accepted</option>
            </SelectField>
            <Field
              label="Search"
              note="Name, size, grade, order, docket, certificate, heat."
              value={search}
              autoComplete="off"
              onChange={(event) => setSearch(event.currentTarget.value)}
            />
          </div>
          <ul className="plain-list bundle-list">
            {found.slice(0, shown).map(({ facts, standing }) => (
              <li key={facts.id} className="bundle-item">
                <button
                  type="button"
                  id={rowId(facts.id)}
                  className="bundle-row"
                  onClick={() => onOpen(facts.id)}
                >
                  <VerdictMark verdict={STANDING[standing].verdict} silent />
                  <span>
                    <strong>{facts.id}</strong>, {sizeName(family, facts.came.ordered.diameter)}{' '}
                    {facts.came.ordered.grade}
                    <span className="field-note">
                      {STANDING[standing].words}
                      {facts.came.counted === undefined ? '' : `, ${facts.came.counted} bars`}
                      {facts.cutBars === 0 ? '' : `, ${facts.cutBars} cut`}
                    </span>
                  </span>
                </button>
              </li>
            ))}
          </ul>
          {found.length > shown ? (
            <div className="row">
              <Button onClick={() => setShown(shown + MOST)}>
                Show {Math.min(MOST, found.length - shown)} more of {found.length - shown}
              </Button>
            </div>
          ) : null}
          {found.length === 0 ? <p>None like that.</p> : null}
        </>
      )}
    </Sheet>
  )
}

function says({ id, came }: BundleFacts, search: string, family: CodeFamily): boolean {
  const wanted = search.trim().toLowerCase()
  if (wanted === '') return true
  const { ordered, docket, certificate, tag } = came
  return [
    id,
    sizeName(family, ordered.diameter),
    ordered.grade,
    docket?.number,
    docket?.supplier,
    certificate?.number,
    tag?.mill,
    ordered.reference,
    ...heatsOf(came).map(({ heat }) => heat),
  ]
    .join(' ')
    .toLowerCase()
    .includes(wanted)
}

/** Which panels hold steel of a heat. */
function Heats(): ReactElement {
  const { steel } = useYardState()
  const [heat, setHeat] = useState('')
  const panels = useMemo(() => panelsOfHeat(steel, heat), [steel, heat])
  const asked = heat.trim() !== ''
  return (
    <Sheet
      title="Which panels hold steel of a heat"
      note="From certificate, tag or docket to the bundle, the bars cut from it, and the panels."
    >
      <Field
        label="Heat number"
        value={heat}
        autoComplete="off"
        onChange={(event) => setHeat(event.currentTarget.value)}
      />
      <div role="status">
        {!asked ? null : panels.length === 0 ? (
          <p>No panel on record holds it. Steel that was cut without a record is not seen here.</p>
        ) : (
          <>
            <p>
              {panels.length} {panels.length === 1 ? 'panel' : 'panels'}, from bundles{' '}
              {[...new Set(panels.flatMap(({ steel: its }) => its.map(({ bundle }) => bundle)))].join(', ')}.
            </p>
            <PanelLinks panels={panels.map(({ panel }) => panel)} />
          </>
        )}
      </div>
    </Sheet>
  )
}
