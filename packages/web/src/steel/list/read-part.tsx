import { goodBars, mapOf, readBarListMap, wholeList } from '@castwright/documents/bar-list'
import { codeFamily, type FamilyId } from '@castwright/engine/codes'
import { InputError } from '@castwright/engine/working'
import { type ReactElement, type ReactNode, useMemo, useState } from 'react'
import { AssumedList, Button, FileField, Notice, SelectField, Sheet } from '../../look/index.ts'
import { AddPart } from './add-part.tsx'
import { ColumnChoice } from './column-choice.tsx'
import { issueKey, ListPreview, Remark } from './list-preview.tsx'
import { listRows } from './list-rows.ts'
import { fileName, saveFile } from './save-file.ts'
import { type ReadList, useReadList } from './use-read-list.ts'

/** A bar list from a file, every row checked, and into a drawing. */
export function ReadPart({
  code,
  children,
}: {
  readonly code: FamilyId
  /** Stands above the choice of the file. */
  readonly children: ReactNode
}): ReactElement {
  const read = useReadList(code)
  const { table, list, faults, busy } = read
  const [over, setOver] = useState(false)
  return (
    <Sheet
      title="A list comes in"
      note="CSV or XLSX, one line a bar mark. It is read and checked on this device; nothing is recorded before you say so."
    >
      <div className="stack">
        {children}
        {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is a second way beside the field */}
        <div
          className={over ? 'list-drop list-over' : 'list-drop'}
          onDragOver={(event) => {
            event.preventDefault()
            setOver(true)
          }}
          onDragLeave={() => setOver(false)}
          onDrop={(event) => {
            event.preventDefault()
            setOver(false)
            const [file] = event.dataTransfer.files
            if (file !== undefined) read.take(file)
          }}
        >
          <FileField
            label="Bar list, CSV or XLSX"
            accept=".csv,.tsv,.txt,.xlsx,text/csv"
            note="Choose a file, or drop it here."
            onFiles={([file]) => {
              if (file !== undefined) read.take(file)
            }}
          />
        </div>
        <p role="status">
          {busy ? 'Reading the list …' : table === null || list === null ? '' : summary(read)}
        </p>
        {faults === null ? null : (
          <div role="alert">
            <Notice kind="fail" title="The file was not read">
              <ul className="plain">
                {faults.slice(0, 20).map((fault) => (
                  <li key={fault}>{fault}</li>
                ))}
              </ul>
            </Notice>
          </div>
        )}
        {table === null || list === null ? null : <Found key={read.id} read={read} code={code} />}
      </div>
    </Sheet>
  )
}

function summary({ table, list }: ReadList): string {
  if (table === null || list === null) return ''
  if (list.columns.issues.length > 0)
    return `${table.name}: no row was read, since the columns are not all known.`
  const rows = list.rows.length
  const wrong = list.rows.filter(({ bar }) => bar === null).length
  const good = `${table.name}: ${rows} ${rows === 1 ? 'row' : 'rows'} with a bar`
  if (list.errors.length === 0) return `${good}, none of them wrong.`
  return `${good}, ${wrong} wrong, ${list.errors.length} ${list.errors.length === 1 ? 'thing' : 'things'} wrong in all.`
}

function Found({ read, code }: { readonly read: ReadList; readonly code: FamilyId }): ReactElement | null {
  const { table, list, map } = read
  // It opens by itself where a column is missing, and stays open while columns are chosen.
  const [choosing, setChoosing] = useState((list?.columns.issues.length ?? 0) > 0)
  const shown = useMemo(() => (table === null || list === null ? null : listRows(table, list)), [table, list])
  if (table === null || list === null || shown === null) return null
  const { columns, panels, assumed } = list
  const grades = codeFamily(code).steel.grades.map(({ grade }) => grade)
  return (
    <>
      {table.sheets.length < 2 && panels.length < 2 ? null : (
        <div className="row steel-choice">
          <SheetChoice read={read} />
          <PanelChoice read={read} panels={panels} />
        </div>
      )}
      <details
        className="explain"
        open={choosing}
        onToggle={(event) => setChoosing(event.currentTarget.open)}
      >
        <summary>columns of the list</summary>
        <div className="explain-body">
          <ColumnChoice columns={columns} map={map} grades={grades} onMap={read.setMap} />
          {columns.unread.length === 0 ? null : (
            <p>
              Nothing reads {columns.unread.map(({ letter, name }) => `${letter} ${name}`.trim()).join(', ')}.
            </p>
          )}
          <MapFile read={read} />
        </div>
      </details>
      {shown.whole.errors.length + shown.whole.warnings.length === 0 ? null : (
        <ul className="plain" aria-label="What is to be said of the list as a whole">
          {shown.whole.errors.slice(0, 20).map((issue) => (
            <Remark key={issueKey(issue)} issue={issue} wrong />
          ))}
          {shown.whole.warnings.slice(0, 20).map((issue) => (
            <Remark key={issueKey(issue)} issue={issue} wrong={false} />
          ))}
        </ul>
      )}
      {shown.rows.length === 0 ? null : <ListPreview {...shown} />}
      {assumed.length === 0 ? null : <AssumedList assumed={assumed} />}
      <AddPart
        key={read.panel}
        code={code}
        list={list}
        whole={wholeList(list)}
        good={goodBars(list)}
        panel={read.panel || (panels.length === 1 ? (panels[0] ?? '') : '')}
      />
    </>
  )
}

function SheetChoice({ read: { table, takeSheet } }: { readonly read: ReadList }): ReactElement | null {
  if (table === null || table.sheets.length < 2) return null
  return (
    <SelectField
      label="Sheet"
      value={table.sheet ?? ''}
      onChange={({ currentTarget: { value } }) => takeSheet(value)}
    >
      {table.sheets.map((sheet) => (
        <option key={sheet}>{sheet}</option>
      ))}
    </SelectField>
  )
}

function PanelChoice({
  read: { panel, setPanel },
  panels,
}: {
  readonly read: ReadList
  readonly panels: readonly string[]
}): ReactElement | null {
  if (panels.length < 2) return null
  return (
    <SelectField
      label="Panel of the list"
      value={panel === null ? '' : `of ${panel}`}
      onChange={({ currentTarget: { value } }) => setPanel(value === '' ? null : value.slice(3))}
    >
      <option value="">choose one of {panels.length}</option>
      {panels.map((each) => (
        <option key={each} value={`of ${each}`}>
          {each === '' ? 'rows without a panel' : each}
        </option>
      ))}
    </SelectField>
  )
}

/** The map as a file, for another device or the command line. */
function MapFile({ read: { list, map, setMap } }: { readonly read: ReadList }): ReactElement | null {
  const [fault, setFault] = useState<string | null>(null)
  if (list === null) return null
  return (
    <div className="stack">
      <p>A change here is kept on this device for lists with the same names of columns.</p>
      <Button
        onClick={() =>
          saveFile(
            `${JSON.stringify(mapOf(list.columns, map), null, 2)}\n`,
            fileName('bar-list-map.json'),
            'application/json',
          )
        }
      >
        Save these columns as a file
      </Button>
      <FileField
        label="Columns from such a file"
        accept=".json,application/json"
        fault={fault}
        onFiles={([file]) => {
          if (file === undefined) return
          file.text().then(
            (text) => {
              try {
                setMap(readBarListMap(text, file.name))
                setFault(null)
              } catch (error) {
                if (!(error instanceof InputError)) throw error
                setFault(error.message)
              }
            },
            (error: unknown) => setFault(error instanceof Error ? error.message : String(error)),
          )
        }}
      />
    </div>
  )
}
