export { asBuiltPicture } from './as-built-picture.ts'
export { lengthText } from './chain.ts'
export { type CuttingPictureInput, cuttingPicture } from './cutting-picture.ts'
export { formSectionPicture } from './form-section-picture.ts'
export { type HangingPictureInput, hangingPicture } from './hanging-picture.ts'
export { type HourRow, type HoursPictureInput, hoursPicture } from './hours-picture.ts'
export { type LapPictureInput, lapPicture } from './lap-picture.ts'
export { type LyingPictureInput, lyingPicture } from './lying-picture.ts'
export { type MouldMeasuredInput, mouldMeasuredPicture } from './mould-measured-picture.ts'
export { mouldPicture, spansText } from './mould-picture.ts'
export { agentText, alikeSides, PROP_RULE_WORDS } from './mould-words.ts'
export { panelPicture } from './panel-picture.ts'
export {
  type Box,
  type CircleShape,
  type Frame,
  type KeyLine,
  type LineShape,
  type Pattern,
  type Picture,
  type PolygonShape,
  panelPoint,
  picturePoint,
  type Role,
  type Shape,
  type TextShape,
} from './picture.ts'
export { placePicture } from './place-picture.ts'
export { railBowPicture } from './rail-bow-picture.ts'
export { INKS, type Ink, ROLE_LOOK, type RoleLook } from './role-look.ts'
export { setPicture } from './set-picture.ts'
export { type StageSketch, type StagesPictureInput, sketchOf, stagesPicture } from './stages-picture.ts'
export {
  type SteelLayerInput,
  type SteelPart,
  steelLayerPicture,
  steelParts,
} from './steel-layers.ts'
export { type HooksPictureInput, hooksPicture } from './steel-layers-hooks.ts'
export { type ShapePictureInput, shapePicture } from './steel-layers-shape.ts'
export { type TiePictureInput, tiePicture } from './steel-layers-ties.ts'
export { steelPicture } from './steel-picture.ts'
export { type ShownPair, type SteelSectionInput, steelSection } from './steel-section.ts'
export { type DefectMark, stepPicture, withDefects } from './step-picture.ts'
export { peakWords, type StressPictureInput, stressPicture } from './stress-picture.ts'
export { stripPicture } from './strip-picture.ts'
export { type SvgElement, svgText, toSvgElements } from './svg.ts'
export { textHeight, textWidth } from './text-width.ts'
export { type VoidSectionInput, voidSection } from './void-section.ts'
