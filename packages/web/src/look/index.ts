export { announce } from './announce.tsx'
export { Button, type ButtonProps } from './button.tsx'
export { ColumnsField, type ColumnsFieldProps } from './columns-field.tsx'
export { AssumedList, Explain, type ExplainProps, SourceLine } from './explain.tsx'
export {
  CheckField,
  Field,
  type FieldFrameProps,
  FileField,
  NumberField,
  type NumberFieldProps,
  readNumber,
  SelectField,
  TextField,
} from './field.tsx'
export { figure, fixed, massText, sizeText, withUnit } from './figure.ts'
export { Caution, Notice, type NoticeProps, Sheet, type SheetProps } from './sheet.tsx'
export { TitleBlock, type TitleBlockProps, type TitleCell } from './title-block.tsx'
export { useTitle } from './use-title.ts'
export { VERDICT_WORD, VerdictMark, type VerdictMarkProps, VerdictShape } from './verdict-mark.tsx'
