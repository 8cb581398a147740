export { type AddBarsInput, type AddedBars, addBars } from './add-bars.ts'
export { type BarList, type BarRow, type BarsInput, barsOf, goodBars, wholeList } from './bars-of.ts'
export {
  type BarListMap,
  type ColumnRef,
  EMPTY_MAP,
  MAP_FORMAT,
  parseBarListMap,
  readBarListMap,
} from './column-map.ts'
export { type ColumnAt, type Columns, findColumns } from './columns.ts'
export { FIELD_WORD, FIELDS, type Field } from './fields.ts'
export { mapOf } from './map-of.ts'
export { MOST_FILE, readTable, type TableInput } from './read-table.ts'
export { issuePlace, listError, type RowIssue } from './row-issue.ts'
export { type PanelSchedule, type ScheduleTable, scheduleTable } from './schedule-table.ts'
export { type Cell, cellText, columnLetter, type DecimalSign, type Table } from './table.ts'
export { type WriteCsvOptions, writeCsv } from './write-csv.ts'
export { writeXlsx } from './write-xlsx.ts'
