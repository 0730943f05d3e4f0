import { type ComponentChildren, h, type VNode } from 'preact';

/** An element of the page; attributes are those of HTML and SVG, handlers as `onClick`. */
export const el = (
  tag: string,
  attributes: Readonly<Record<string, unknown>>,
  ...content: ComponentChildren[]
): VNode => h(tag, attributes as object, ...content) as VNode;
