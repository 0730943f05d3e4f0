// The drawing as elements that can be compared with those of the drawing before: only what differs is changed, so that nothing
// flickers and the focus stays where it is.
import type { VNode } from 'preact';
import { el } from '../element.ts';

/** What a seam gets here: attributes of its shapes, which are a button; of these and its names together; and its title. */
export interface Dress {
  readonly button: Readonly<Record<string, unknown>>;
  readonly whole: Readonly<Record<string, unknown>>;
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
    ...children(root, (child) => (isHeading(child) ? undefined : element(child, dress))),
  );
}

const attributesOf = (element: Element): Record<string, string> =>
  Object.fromEntries([...element.attributes].map(({ name, value }) => [name, value]));

/** The page around the drawing says what these say. */
const isHeading = ({ tagName }: Element) => tagName === 'title' || tagName === 'desc';

function children(of: Element, make: (child: Element) => VNode | undefined): (VNode | string)[] {
  return [...of.childNodes].flatMap((child): (VNode | string)[] => {
    const made = child instanceof Element ? make(child) : child.textContent;
    return made ? [made] : [];
  });
}

function element(of: Element, dress: (item: string) => Dress): VNode {
  const item = of.getAttribute('data-item');
  if (item === null) return el(of.tagName, attributesOf(of), ...children(of, (child) => element(child, dress)));
  const { button, whole, title } = dress(item);
  const parts = [...of.children].filter((child) => !isHeading(child));
  const isName = ({ tagName }: Element) => tagName === 'text';
  // The names stand beside each copy, and may be shortened: they are no part of the button, which has a name of its own.
  return el(
    'g',
    whole,
    el(
      'g',
      { ...attributesOf(of), ...button },
      el('title', {}, title),
      ...parts.filter((one) => !isName(one)).map(plain),
    ),
    ...parts.filter(isName).map((one) => el('text', { ...attributesOf(one), 'aria-hidden': 'true' }, one.textContent)),
  );
}

const plain = (of: Element): VNode => el(of.tagName, attributesOf(of), ...children(of, plain));
