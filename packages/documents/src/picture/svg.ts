import type { CircleShape, LineShape, Picture, PolygonShape, Shape, TextShape } from './picture.ts'
import { INKS, type Ink, ROLE_LOOK } from './role-look.ts'
import { textHeight } from './text-width.ts'

/** An element without any library behind it: React, a file or a test makes of it what it needs. */
export interface SvgElement {
  readonly tag: 'svg' | 'g' | 'defs' | 'pattern' | 'path' | 'circle' | 'text' | 'title' | 'rect'
  readonly attributes: Readonly<Record<string, string | number>>
  readonly children: readonly (SvgElement | string)[]
}

/** The colour follows the style sheet's scheme; without one it is the day value. */
function ink(name: Ink | null): string {
  return name === null ? 'none' : `var(--${name}, ${INKS[name]})`
}

function tenth(value: number): number {
  const rounded = Math.round(value * 10) / 10
  return rounded === 0 ? 0 : rounded
}

function element(
  tag: SvgElement['tag'],
  attributes: SvgElement['attributes'],
  children: SvgElement['children'] = [],
): SvgElement {
  return { tag, attributes, children }
}

/**
 * The picture as a tree of SVG elements. `id` keeps apart the patterns of pictures on one page: letters, digits and
 * dashes only.
 */
export function toSvgElements(picture: Picture, id = 'picture'): SvgElement {
  const patterns = new Set(
    picture.shapes.flatMap((shape) => (shape.kind === 'polygon' && shape.pattern ? [shape.pattern] : [])),
  )
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${tenth(picture.width)} ${tenth(picture.height)}`,
      width: tenth(picture.width),
      height: tenth(picture.height),
      role: 'img',
      'aria-label': picture.title,
    },
    [
      ...(patterns.size === 0
        ? []
        : [
            element(
              'defs',
              {},
              [...patterns].map((name) => patternOf(name, id)),
            ),
          ]),
      ...picture.shapes.flatMap((shape) => shapeElements(shape, id)),
    ],
  )
}

function patternOf(name: 'hatch' | 'dots' | 'cross', id: string): SvgElement {
  const tile = { id: `${id}-${name}`, width: 10, height: 10, patternUnits: 'userSpaceOnUse' }
  const line = { stroke: ink('quiet'), 'stroke-width': 1, fill: 'none' }
  switch (name) {
    case 'hatch':
      return element('pattern', tile, [element('path', { d: 'M0 10L10 0M-2 2L2 -2M8 12L12 8', ...line })])
    case 'dots':
      return element('pattern', tile, [element('circle', { cx: 5, cy: 5, r: 1.4, fill: ink('accent') })])
    case 'cross':
      return element('pattern', { ...tile, width: 14, height: 14 }, [
        element('path', { d: 'M4 4L10 10M10 4L4 10', ...line, 'stroke-width': 0.75 }),
      ])
  }
}

function shapeElements(shape: Shape, id: string): SvgElement[] {
  switch (shape.kind) {
    case 'polygon':
      return polygonElements(shape, id)
    case 'line':
      return lineElements(shape)
    case 'circle':
      return circleElements(shape)
    case 'text':
      return textElements(shape)
  }
}

function lineLook(role: Shape['role']): Record<string, string | number> {
  const look = ROLE_LOOK[role]
  if (look.line === null) return { stroke: 'none' }
  return {
    stroke: ink(look.line),
    'stroke-width': look.width,
    ...(look.dash ? { 'stroke-dasharray': look.dash.join(' ') } : {}),
  }
}

function polygonElements({ role, rings, pattern }: PolygonShape, id: string): SvgElement[] {
  const d = rings.map((ring) => `${pathOf(ring)}Z`).join('')
  const plain = element('path', {
    class: `pic-${role}`,
    d,
    fill: ink(ROLE_LOOK[role].fill),
    'fill-rule': 'evenodd',
    ...lineLook(role),
  })
  if (pattern === undefined) return [plain]
  return [plain, element('path', { d, fill: `url(#${id}-${pattern})`, 'fill-rule': 'evenodd' })]
}

function lineElements({ role, points, arrow }: LineShape): SvgElement[] {
  const attributes = { class: `pic-${role}`, d: pathOf(points), fill: 'none', ...lineLook(role) }
  const head = arrow === true ? arrowHead(points) : null
  return head === null
    ? [element('path', attributes)]
    : [element('path', attributes), element('path', { d: head, fill: ink(ROLE_LOOK[role].line) })]
}

function arrowHead(points: LineShape['points']): string | null {
  const [from, tip] = points.slice(-2)
  if (!from || !tip) return null
  const long = Math.hypot(tip[0] - from[0], tip[1] - from[1])
  if (!(long > 0)) return null
  const [ux, uy] = [(tip[0] - from[0]) / long, (tip[1] - from[1]) / long]
  const back = (side: number): string =>
    `${tenth(tip[0] - 8 * ux - side * 3.5 * uy)} ${tenth(tip[1] - 8 * uy + side * 3.5 * ux)}`
  return `M${tenth(tip[0])} ${tenth(tip[1])}L${back(1)}L${back(-1)}Z`
}

function circleElements({ role, at, radius, letter, size }: CircleShape): SvgElement[] {
  const look = ROLE_LOOK[role]
  const circle = element('circle', {
    class: `pic-${role}`,
    cx: tenth(at[0]),
    cy: tenth(at[1]),
    r: tenth(radius),
    fill: ink(look.fill),
    ...lineLook(role),
  })
  if (letter === undefined || size === undefined) return [circle]
  return [circle, word(letter, at, size, look.text, { bold: true })]
}

function textElements({ text, at, size, turn, bold, role, backed, box, align }: TextShape): SvgElement[] {
  const letters = word(text, at, size, ROLE_LOOK[role].text, { bold: bold === true, turn, align })
  if (backed !== true) return [letters]
  const ground = element('rect', {
    x: tenth(box.left),
    y: tenth(box.top),
    width: tenth(box.right - box.left),
    height: tenth(box.bottom - box.top),
    fill: ink('sheet'),
    'fill-opacity': 0.85,
  })
  return [ground, letters]
}

function word(
  text: string,
  at: readonly [number, number],
  size: number,
  colour: Ink,
  { bold, turn = 0, align }: { bold: boolean; turn?: number; align?: 'left' | undefined },
): SvgElement {
  const [x, y] = [tenth(at[0]), tenth(at[1])]
  // Letters stand on a line a third of their height below the middle.
  const baseline = tenth(textHeight(size) * 0.32)
  return element(
    'text',
    {
      x,
      y,
      dy: baseline,
      'font-size': tenth(size),
      'text-anchor': align === 'left' ? 'start' : 'middle',
      fill: ink(colour),
      ...(bold ? { 'font-weight': 700 } : {}),
      ...(turn === 0 ? {} : { transform: `rotate(${turn} ${x} ${y})` }),
    },
    [text],
  )
}

function pathOf(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${tenth(x)} ${tenth(y)}`).join('')
}

/** The tree as text: one element a line, so that two versions can be compared by eye. */
export function svgText(root: SvgElement, indent = ''): string {
  const attributes = Object.entries(root.attributes)
    .map(([name, value]) => ` ${name}="${escapeXml(String(value))}"`)
    .join('')
  if (root.children.length === 0) return `${indent}<${root.tag}${attributes}/>\n`
  if (root.children.every((child) => typeof child === 'string')) {
    return `${indent}<${root.tag}${attributes}>${escapeXml(root.children.join(''))}</${root.tag}>\n`
  }
  const inside = root.children
    .map((child) => (typeof child === 'string' ? escapeXml(child) : svgText(child, `${indent}  `)))
    .join('')
  return `${indent}<${root.tag}${attributes}>\n${inside}${indent}</${root.tag}>\n`
}

function escapeXml(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;')
}
