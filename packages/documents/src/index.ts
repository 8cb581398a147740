export type { PaperSize } from './paper/paper.ts'
export { type CuttingSheetInput, cuttingSheet } from './sheets/cutting-sheet.ts'
export { makeSheet, SHEET_NAMES, type SheetName } from './sheets/make-sheet.ts'
export type { SheetInput } from './sheets/sheet.ts'
