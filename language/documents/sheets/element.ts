// Elements of pages and pictures. Texts and attributes are escaped when they are written out.
import { type ComponentChildren, h, type VNode } from 'preact';

export type Element = VNode;
export type Content = ComponentChildren;

/** An element with its attributes and content. */
export function el(tag: string, attributes: Readonly<Record<string, string | number>>, ...content: Content[]): Element {
  return h(tag, attributes as object, ...content) as VNode;
}
