/** Makes elements. Texts go in as texts and never as markup. */
import { type PieceElement, SVG_TAGS, type SvgTag } from './pieces.ts';
import { inSite } from './site-path.ts';

type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;
type Child = Node | string | undefined | false;

/** Attributes that hold an address, which is given as the guide calls it. */
const ADDRESSES: ReadonlySet<string> = new Set(['href', 'src', 'action']);

function filled<E extends Element>(element: E, attributes: Attributes, children: readonly Child[]): E {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === true) element.setAttribute(name, '');
    else if (value !== undefined && value !== false) {
      element.setAttribute(name, ADDRESSES.has(name) ? inSite(String(value)) : String(value));
    }
  }
  element.append(...children.filter((it): it is Node | string => it !== undefined && it !== false));
  return element;
}

/** An HTML element with attributes and children; attributes that are undefined or false are left out. */
export function html<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: Child[]
): HTMLElementTagNameMap[Tag] {
  return filled(document.createElement(tag), attributes, children);
}

/**
 * The name of SVG, asked of the parser: scripts of the site hold nothing that looks like an address of another host,
 * which a test of the built site sees to.
 */
const SVG = new DOMParser().parseFromString('<svg></svg>', 'text/html').querySelector('svg')?.namespaceURI ?? null;

/** The same in SVG. */
export function svg<Tag extends keyof SVGElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: Child[]
): SVGElementTagNameMap[Tag] {
  return filled(document.createElementNS(SVG, tag) as SVGElementTagNameMap[Tag], attributes, children);
}

const isSvgTag = (tag: PieceElement['tag']): tag is SvgTag => (SVG_TAGS as readonly string[]).includes(tag);

/** A piece as an element of the page. */
export function elementOf({ tag, attributes, pieces }: PieceElement): HTMLElement | SVGElement {
  const children = pieces.map((it) => (typeof it === 'string' ? it : elementOf(it)));
  return isSvgTag(tag) ? svg(tag, attributes, ...children) : html(tag, attributes, ...children);
}
