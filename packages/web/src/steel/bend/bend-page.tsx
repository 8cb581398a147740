import { codeFamily } from '@castwright/engine/codes'
import { type BendReading, bendGauge, measuredBend } from '@castwright/engine/steel'
import { type ReactElement, useMemo, useState } from 'react'
import {
  AssumedList,
  Button,
  Caution,
  CheckField,
  Explain,
  fixed,
  Notice,
  NumberField,
  readNumber,
  SelectField,
  Sheet,
  VERDICT_WORD,
  VerdictMark,
} from '../../look/index.ts'
import { useYardState } from '../../record/index.ts'
import { SteelFrame } from '../steel-frame.tsx'
import { KeepBend, PanelField, useBentBars } from './bent-bars.tsx'
import { CARD, keepTrueSize, readTrueSize, riseOf } from './true-size.ts'

/** Least inside diameters of the yard's family: discs of true size on this screen, and a bend judged from what was measured on it. */
export function BendPage(): ReactElement {
  const { yard } = useYardState()
  const code = yard.yard?.code
  if (code === undefined) {
    return (
      <SteelFrame page="Bend">
        <Notice kind="unknown" title="No bend is judged yet">
          The yard names no code family.
        </Notice>
      </SteelFrame>
    )
  }
  return (
    <SteelFrame page="Bend">
      <Measured code={code} />
      <ScreenGauge code={code} />
      <Caution
        order="Too tight is scrap."
        text="A bar bent tighter than the rule goes to quarantine. It is not bent back, and nobody straightens it on the bed. The drawing and the engineer’s schedule outrank these values."
      />
    </SteelFrame>
  )
}

type Code = Parameters<typeof codeFamily>[0]

function useUses(code: Code) {
  return useMemo(
    () =>
      bendGauge(codeFamily(code)).discs.flatMap(({ diameter, uses }) =>
        uses.map((use) => ({
          disc: diameter,
          use,
          words: `${use.size} ${use.role === 'main' ? 'main bar' : 'stirrup or tie'}${use.plain ? ', plain' : ''} (${use.grades.join(', ')})`,
        })),
      ),
    [code],
  )
}

function Measured({ code }: { readonly code: Code }): ReactElement {
  const uses = useUses(code)
  const sorted = useMemo(
    () => [...uses].sort((a, b) => a.use.diameter - b.use.diameter || a.disc - b.disc),
    [uses],
  )
  const [words, setWords] = useState(sorted[0]?.words ?? '')
  const [panel, setPanel] = useState('')
  const [mark, setMark] = useState('')
  const [by, setBy] = useState<'inside' | 'in-chord' | 'out-chord' | 'outside'>('inside')
  const [first, setFirst] = useState('')
  const [second, setSecond] = useState('')
  const [error, setError] = useState('1')
  const [temperature, setTemperature] = useState('')
  const [galvanised, setGalvanised] = useState(false)
  const bent = useBentBars(panel)
  const drawn = bent?.bars.find((bar) => bar.mark === mark) ?? null
  const chosen = sorted.find((each) => each.words === words)
  const bar =
    panel === ''
      ? chosen === undefined
        ? null
        : { ...chosen.use, grade: chosen.use.grades[0] ?? '' }
      : drawn === null
        ? null
        : { ...drawn, plain: false }
  const degrees = temperature.trim() === '' ? null : readNumber(temperature)
  const reading = readingOf(by, readNumber(first), readNumber(second), readNumber(error))
  const found =
    bar === null || reading === null
      ? null
      : measuredBend({
          rules: codeFamily(code).steel,
          diameter: bar.diameter,
          grade: bar.grade,
          role: bar.role,
          plain: bar.plain,
          galvanised,
          temperature: degrees,
          reading,
        })
  const chord = by === 'in-chord' || by === 'out-chord'
  return (
    <Sheet
      title="A bend that was measured"
      note="Against the least inside diameter of the yard’s code family."
    >
      <div className="row steel-choice">
        <PanelField value={panel} onPanel={(next) => [setPanel(next), setMark('')]} />
        {panel === '' ? (
          <SelectField label="Bar" value={words} onChange={(event) => setWords(event.currentTarget.value)}>
            {sorted.map((each) => (
              <option key={each.words}>{each.words}</option>
            ))}
          </SelectField>
        ) : (
          <SelectField label="Bar mark" value={mark} onChange={(event) => setMark(event.currentTarget.value)}>
            <option value="">choose</option>
            {(bent?.bars ?? []).map((each) => (
              <option key={each.mark} value={each.mark}>
                {each.mark}, {each.diameter} mm {each.grade}
              </option>
            ))}
          </SelectField>
        )}
        <SelectField
          label="Measured"
          value={by}
          onChange={(event) => setBy(event.currentTarget.value as typeof by)}
        >
          <option value="inside">inside diameter</option>
          <option value="in-chord">chord and rise inside the curve</option>
          <option value="out-chord">chord and rise over the curve</option>
          <option value="outside">over both legs of a half turn</option>
        </SelectField>
        <NumberField label={chord ? 'Chord' : 'Reading'} unit="mm" value={first} onText={setFirst} />
        {chord ? <NumberField label="Rise" unit="mm" value={second} onText={setSecond} /> : null}
        <NumberField label="May be off by" unit="mm" value={error} onText={setError} note="Either way." />
        <NumberField
          label="Bar temperature at bending"
          unit="°C"
          value={temperature}
          onText={setTemperature}
          fault={temperature.trim() !== '' && degrees === null ? 'A number, or empty.' : null}
        />
        <CheckField
          label="galvanised"
          checked={galvanised}
          onChange={(event) => setGalvanised(event.currentTarget.checked)}
        />
      </div>
      {bent !== null && bent.bars.length === 0 && bent.ready ? <p>This panel has no bent bars.</p> : null}
      <div role="status" className="stack">
        {found === null ? null : (
          <>
            <p>
              <VerdictMark verdict={found.verdict} withWord />
            </p>
            <p>
              {found.inside === null || found.least === null
                ? found.unknown.join('; ')
                : `Inside diameter ${fixed(found.inside, 1)} mm, between ${fixed(found.least, 1)} and ${found.most === null ? 'any' : fixed(found.most, 1)} mm; at least ${found.limit === null ? 'not known' : `${fixed(found.limit, 1)} mm`}.`}
            </p>
            {found.cold === null ? null : (
              <p>
                Bar at {fixed(found.cold.temperature, 0)} °C, not below {fixed(found.cold.coldest, 0)} °C:{' '}
                {VERDICT_WORD[found.cold.verdict]} ({found.cold.source.standard}).
              </p>
            )}
            {found.notes.map((note) => (
              <p key={note}>{note}</p>
            ))}
            {found.assumed.length === 0 ? null : <AssumedList assumed={found.assumed} />}
            {found.source === null ? null : (
              <Explain about="least inside diameter" source={found.source} working={found.working} />
            )}
          </>
        )}
      </div>
      {bent === null || drawn === null || found?.least == null ? null : (
        <KeepBend
          key={`${panel} ${mark}`}
          bent={bent}
          mark={mark}
          least={found.least}
          temperature={degrees}
        />
      )}
    </Sheet>
  )
}

function readingOf(
  by: string,
  first: number | null,
  second: number | null,
  error: number | null,
): BendReading | null {
  if (first === null || error === null) return null
  if (by === 'inside') return { by, inside: first, error }
  if (by === 'outside') return { by, outside: first, error }
  return second === null
    ? null
    : { by: 'chord', face: by === 'in-chord' ? 'inside' : 'outside', chord: first, rise: second, error }
}

/** px in a millimetre that a screen is taken to have until it is set against a card. */
const BROWSER = 96 / 25.4

function ScreenGauge({ code }: { readonly code: Code }): ReactElement {
  const uses = useUses(code)
  const ratio = globalThis.devicePixelRatio ?? 1
  const [kept, setKept] = useState(() => readTrueSize(localStorage, ratio))
  const [scale, setScale] = useState(kept?.scale ?? BROWSER)
  const [index, setIndex] = useState(0)
  const chosen = uses[Math.min(index, uses.length - 1)]
  const room = Math.max(200, Math.min(globalThis.innerWidth, 1100) - 80)
  // A phone is narrower than a card is long: the frame stands upright there.
  const upright = CARD.wide * BROWSER > room
  const [frameWide, frameHigh] = upright ? [CARD.high, CARD.wide] : [CARD.wide, CARD.high]
  const across = chosen === undefined ? 0 : chosen.disc * scale
  const chord = 40
  const rise = chosen === undefined ? null : riseOf(chosen.disc, chord)
  return (
    <Sheet
      title="Gauge of true size on this screen"
      note={
        kept === null
          ? 'Not set on this screen yet, or its zoom has changed: lay a bank or identity card (85.60 × 53.98 mm) on the frame first.'
          : 'Set against a card on this screen. Set it again after a change of zoom.'
      }
    >
      {kept === null ? (
        <div className="stack">
          <label className="field">
            <span>Width of the frame: move until the card covers it</span>
            <input
              className="steel-range"
              type="range"
              min={2}
              max={Math.min(16, room / frameWide)}
              step={0.005}
              value={scale}
              onChange={(event) => setScale(Number(event.currentTarget.value))}
            />
          </label>
          <div className="gauge-screen">
            <svg
              width={frameWide * scale + 2}
              height={frameHigh * scale + 2}
              role="img"
              aria-label="Frame of a card of standard size"
            >
              <rect
                className="gauge-line"
                x={1}
                y={1}
                width={frameWide * scale}
                height={frameHigh * scale}
                rx={3.18 * scale}
              />
            </svg>
          </div>
          <Button
            look="main"
            onClick={() => {
              const size = { scale, ratio }
              keepTrueSize(localStorage, size)
              setKept(size)
            }}
          >
            The card fits
          </Button>
        </div>
      ) : (
        <div className="stack">
          <SelectField
            label="Disc"
            value={String(index)}
            onChange={(event) => setIndex(Number(event.currentTarget.value))}
          >
            {uses.map(({ disc, words }, at) => (
              <option key={`${disc} ${words}`} value={String(at)}>
                {fixed(disc, 0)} mm: {words}
              </option>
            ))}
          </SelectField>
          {chosen === undefined ? null : across <= room ? (
            <div className="gauge-screen">
              <svg
                width={across + 2}
                height={across + 2}
                role="img"
                aria-label={`Disc of ${fixed(chosen.disc, 1)} mm`}
              >
                <circle className="gauge-disc" cx={across / 2 + 1} cy={across / 2 + 1} r={across / 2} />
              </svg>
            </div>
          ) : (
            <p>
              The disc does not fit this screen. A straight edge of {chord} mm over the inside of the bend
              must leave at most{' '}
              <strong className="number">{rise === null ? 'not known' : `${fixed(rise, 1)} mm`}</strong> at
              its middle; more is too tight. The sheet <em>Bend gauge</em> prints it whole.
            </p>
          )}
          <p>
            Hold the bend over the disc. Where the disc touches at the crown, the bend is not tighter than the
            rule; daylight at the crown is too tight. A screen shows it, the printed gauge proves it.
          </p>
          <Button onClick={() => setKept(null)}>Set against a card again</Button>
        </div>
      )}
    </Sheet>
  )
}
