// The drawing as elements that can be compared with those of the drawing before: only what differs is changed, so that nothing
// flickers and the focus stays where it is.
import type { VNode } from 'preact';
import { el } from './element.ts';

/** What is done with the group of a seam: its attributes here, and its title. */
export interface Dress {
  readonly attributes: Readonly<Record<string, unknown>>;
  readonly title: string;
}

let before: { readonly svg: string; readonly root: Element } | undefined;

/** The drawing with each seam dressed; undefined where the text is no drawing to scale. */
export function picture(svg: string, dress: (item: string) => Dress): VNode | undefined {
  if (before?.svg !== svg) {
    before = { svg, root: new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement };
  }
  const { root } = before;
  if (root.tagName !== 'svg' || !root.hasAttribute('data-scale')) return undefined;
  const { width: _, height: __, role: ___, 'aria-labelledby': ____, ...rest } = attributesOf(root);
  return el(
    'svg',
    { ...rest, role: 'group', 'aria-label': 'Drawing, the front on the left' },
    ...children(root, dress, isHeading),
  );
}

const attributesOf = (element: Element): Record<string, string> =>
  Object.fromEntries([...element.attributes].map(({ name, value }) => [name, value]));

/** The page around the drawing says what these say. */
const isHeading = ({ tagName }: Element) => tagName === 'title' || tagName === 'desc';

function children(of: Element, dress: (item: string) => Dress, left?: (child: Element) => boolean): (VNode | string)[] {
  return [...of.childNodes].flatMap((child): (VNode | string)[] => {
    if (child instanceof Element) return left?.(child) ? [] : [element(child, dress)];
    return child.textContent ? [child.textContent] : [];
  });
}

function element(of: Element, dress: (item: string) => Dress): VNode {
  const item = of.getAttribute('data-item');
  if (item === null) return el(of.tagName, attributesOf(of), ...children(of, dress));
  const { attributes, title } = dress(item);
  return el(
    of.tagName,
    { ...attributesOf(of), ...attributes },
    el('title', {}, title),
    ...children(of, dress, isHeading),
  );
}
