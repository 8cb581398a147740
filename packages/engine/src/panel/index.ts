export {
  DRAWING_FORMAT,
  type Drawing,
  type DrawnBar,
  type DrawnDuct,
  type DrawnEdgeBars,
  type DrawnInsert,
  type DrawnMat,
  type DrawnOpening,
  type DrawnStarters,
  type DrawnSteel,
  type DrawnTieBars,
  type DrawnTrimmers,
  type DrawnVoid,
  drawingSchema,
  isEdgeBars,
  isListed,
  isMat,
  isStarters,
  isTieBars,
  isTrimmers,
  type Layer,
  type LiftingDesign,
  parseDrawing,
  readDrawing,
} from './drawing.ts'
export { FAMILY_IDS } from './family-ids.ts'
export { drawingJsonSchema } from './json-schema.ts'
export { type NetSection, netSection, type Slot } from './net-section.ts'
export { ASSUMED_DENSITY, GRAVITY, misplacedInserts, ON_EDGE, type Panel, panelOf } from './panel.ts'
export { distance, type Point, type Ring } from './point.ts'
export {
  area,
  type Bounds,
  bounds,
  centroid,
  counterClockwise,
  distanceToRing,
  distanceToSegment,
  edges,
  nearestOnSegment,
  placeInRing,
  ringFault,
  ringsMeet,
  segmentsMeet,
  signedArea,
} from './polygon.ts'
export {
  clipRegions,
  covers,
  distanceToEdge,
  intersect,
  offset,
  type Piece,
  type Region,
  regionArea,
  ringsOf,
  subtract,
  unite,
} from './region.ts'
export { bodiesOf, ductStrip, formerMass, type VoidBody } from './void-bodies.ts'
export { alongLine, lengthOf, linesApart, parts, partsApart } from './way.ts'
