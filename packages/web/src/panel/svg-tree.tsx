import type { SvgElement } from '@castwright/documents/picture'
import { createElement, type ReactElement } from 'react'

/** Attributes that React spells otherwise. */
const REACT_NAMES: Readonly<Record<string, string>> = {
  class: 'className',
  'stroke-width': 'strokeWidth',
  'stroke-dasharray': 'strokeDasharray',
  'fill-rule': 'fillRule',
  'fill-opacity': 'fillOpacity',
  'font-size': 'fontSize',
  'font-weight': 'fontWeight',
  'text-anchor': 'textAnchor',
}

/** A tree of the picture's elements as React elements. */
export function SvgTree({ element }: { readonly element: SvgElement }): ReactElement {
  return make(element, 0)
}

function make({ tag, attributes, children }: SvgElement, key: number): ReactElement {
  const named = Object.fromEntries(
    Object.entries(attributes).map(([name, value]) => [REACT_NAMES[name] ?? name, value]),
  )
  return createElement(
    tag,
    { ...named, key },
    ...children.map((child, index) => (typeof child === 'string' ? child : make(child, index))),
  )
}
