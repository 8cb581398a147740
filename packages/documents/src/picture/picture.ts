import type { Point } from '@castwright/engine/panel'

/** What a shape stands for. Each role has one look on the screen and one on paper: see `role-look.ts`. */
export type Role =
  | 'concrete'
  | 'outline'
  | 'opening'
  | 'void'
  | 'duct'
  | 'strap'
  | 'bar-mould'
  | 'bar-top'
  | 'lap'
  | 'insert'
  | 'chair'
  | 'form'
  | 'prop'
  | 'insertion'
  | 'path'
  | 'zone'
  | 'zone-mark'
  | 'dimension'
  | 'load'
  | 'centre'
  | 'measure'
  | 'defect'
  | 'label'
  | 'band-1'
  | 'band-2'
  | 'band-3'
  | 'band-4'
  | 'band-5'
  | 'band-6'
  | 'level'
  | 'peak'
  | 'timber'
  | 'picked'
  | 'unused'
  | 'sling'
  | 'beam'
  | 'plumb'
  | 'ground'
  | 'met'
  | 'wait'
  | 'now'
  | 'grid'

/** Pattern inside a polygon: hatching is work by hand, dots a window of time, cross an opening. */
export type Pattern = 'hatch' | 'dots' | 'cross'

/** Upright box in the units of the picture, y down. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Rings filled by the even-odd rule: holes are rings like the others. */
export interface PolygonShape {
  readonly kind: 'polygon'
  readonly role: Role
  readonly rings: readonly (readonly Point[])[]
  readonly pattern?: Pattern
}

export interface LineShape {
  readonly kind: 'line'
  readonly role: Role
  readonly points: readonly Point[]
  /** An arrow head at the last point. */
  readonly arrow?: boolean
}

/** A circle, with a letter or number in it where the thing has one. */
export interface CircleShape {
  readonly kind: 'circle'
  readonly role: Role
  readonly at: Point
  readonly radius: number
  readonly letter?: string
  /** Size of the letter. */
  readonly size?: number
}

export interface TextShape {
  readonly kind: 'text'
  readonly role: Role
  readonly text: string
  /** Middle of the text; with `align: 'left'` the middle of its left end. */
  readonly at: Point
  readonly align?: 'left'
  readonly size: number
  /** 0 reads to the right, −90 reads upward. */
  readonly turn: 0 | -90
  readonly bold?: boolean
  /** On a ground of its own, where it stands among lines. */
  readonly backed?: boolean
  /** Space that the text takes: no two texts of a picture share any. */
  readonly box: Box
}

export type Shape = PolygonShape | LineShape | CircleShape | TextShape

/** The space a picture may take, in its own units: px on a screen, points on paper. */
export interface Frame {
  readonly width: number
  /** Greatest height; the picture may be lower. */
  readonly height: number
  /** Size of the text. On a screen never below 12 px, whatever is asked. */
  readonly text: number
  /** Paper only: units in one mm of paper. The scale is then a round one, such as 1:50. */
  readonly paper?: number
}

/**
 * A drawing laid out in a frame: true to scale, ready to draw without any further calculation. Shapes are in the units of the
 * frame, x to the right and y down from the top left corner, in painting order. `scale` and `origin` lead back to the panel.
 */
export interface Picture {
  readonly width: number
  readonly height: number
  /** Units in one mm of the panel. */
  readonly scale: number
  /** n of the scale 1:n; null on a screen. */
  readonly ratio: number | null
  /** Where the panel's (0, 0) lies. */
  readonly origin: Point
  readonly shapes: readonly Shape[]
  /** What the picture shows, in one sentence, for those who hear it. */
  readonly title: string
  /** What the lines and marks mean, to be written under the picture with a sample of each. */
  readonly key: readonly KeyLine[]
  /** Labels that found no room, to be written under the picture. */
  readonly notes: readonly string[]
}

export interface KeyLine {
  readonly role: Role
  readonly text: string
}

/** A place on the picture, in mm of the panel. */
export function panelPoint(picture: Picture, [x, y]: Point): Point {
  return [(x - picture.origin[0]) / picture.scale, (picture.origin[1] - y) / picture.scale]
}

/** A place on the panel, in the units of the picture. */
export function picturePoint(picture: Picture, [x, y]: Point): Point {
  return [picture.origin[0] + x * picture.scale, picture.origin[1] - y * picture.scale]
}
