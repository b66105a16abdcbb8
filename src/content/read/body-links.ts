import Slugger from 'github-slugger';
import { defineHastPlugin, htmlToHast, markdownToHtml, markdownToMdast, mdxToJs, mdxToMdast } from 'satteri';
import { perSource } from './per-source.ts';
import type { Source } from './source.ts';

/** An address in a body. An image's file is taken into the guide; what `src` names elsewhere has to be there. */
export interface BodyLink {
  kind: 'link' | 'image' | 'import';
  address: string;
  /** In the file, from 1. */
  line: number;
}

/** The parts of the two trees of the Markdown parser that are looked at. */
interface Node {
  type: string;
  /** Of an element. */
  name?: string;
  url?: string;
  value?: string;
  identifier?: string;
  children?: Node[];
  attributes?: Array<{ type: string; name?: string; value?: unknown }>;
  properties?: Record<string, unknown>;
  position?: { start: { line: number } };
}

/** Of elements written as such: attributes that hold an address. */
const ADDRESSES = new Set(['href', 'src', 'poster']);

/** Headings need what Astro renders with: its typographic quotes and dashes are part of their ids. */
const FEATURES = { gfm: true, smartPunctuation: true, frontmatter: false };

/** A body, and what is needed to name places in it. */
export type Body = Pick<Source, 'file' | 'body' | 'bodyLine'>;

const isMdx = (source: Body) => source.file.endsWith('.mdx');

/** Every address in a body, in its order; none where the body can't be parsed, of which others tell. */
export const linksIn = perSource<BodyLink[], Body>((source) => {
  let tree: Node;
  try {
    tree = treeOf(source);
  } catch {
    return [];
  }
  const links: BodyLink[] = [];
  const nodes = [...everyNode(tree)];
  const pictured = new Set(nodes.filter((it) => it.type === 'imageReference').map((it) => it.identifier));
  for (const node of nodes) {
    const line = source.bodyLine + (node.position?.start.line ?? 1) - 1;
    const add = (kind: BodyLink['kind'], address: unknown) => {
      if (typeof address === 'string') links.push({ kind, address, line: line + linesBefore(node.value, address) });
    };
    if (node.type === 'link') add('link', node.url);
    else if (node.type === 'image') add('image', node.url);
    else if (node.type === 'definition') add(pictured.has(node.identifier) ? 'image' : 'link', node.url);
    else if (node.type === 'html') {
      for (const it of everyNode(htmlTree(node.value ?? ''))) {
        for (const [name, value] of Object.entries(it.properties ?? {})) if (ADDRESSES.has(name)) add('link', value);
      }
    } else if (node.type === 'mdxjsEsm') {
      // Nothing but imports and exports stands here.
      for (const [, , from] of (node.value ?? '').matchAll(/\b(?:from|import)\s*\(?\s*(['"])(.+?)\1/g))
        add('import', from);
    }
    for (const { name = '', value } of node.attributes ?? []) if (ADDRESSES.has(name)) add('link', value);
  }
  return links;
});

/** The ids that a body's headings and elements get in the page. */
export const idsIn = perSource<string[], Body>((source) => {
  const ids: string[] = [];
  const slugger = new Slugger();
  const headings = defineHastPlugin({
    name: 'heading-ids',
    element: {
      filter: ['h1', 'h2', 'h3', 'h4', 'h5', 'h6'],
      visit: (node, context) => {
        const own = node.properties?.id;
        ids.push(typeof own === 'string' ? own : slugger.slug(context.textContent(node)));
      },
    },
  });
  try {
    const options = { hastPlugins: [headings], features: FEATURES };
    if (isMdx(source)) mdxToJs(source.body, options);
    else markdownToHtml(source.body, options);
    for (const node of everyNode(treeOf(source))) {
      for (const { name, value } of node.attributes ?? []) if (name === 'id') ids.push(String(value));
      if (node.type !== 'html') continue;
      for (const { properties } of everyNode(htmlTree(node.value ?? ''))) {
        if (properties?.id) ids.push(String(properties.id));
      }
    }
  } catch {
    // A body that can't be parsed has a problem of its own.
  }
  return ids;
});

/**
 * A body's tree.
 *
 * @throws where it can't be parsed
 */
export function treeOf(source: Body): Node {
  const parse = isMdx(source) ? mdxToMdast : markdownToMdast;
  return parse(source.body, { features: { frontmatter: false } }) as Node;
}

const htmlTree = (html: string) => htmlToHast(html, { fragment: true }) as Node;

/** A node, and all below it. */
export function* everyNode(node: Node): Generator<Node> {
  yield node;
  for (const child of node.children ?? []) yield* everyNode(child);
}

/** Lines of a block of source text before an address in it. */
function linesBefore(text: string | undefined, address: string): number {
  const at = text?.indexOf(address) ?? -1;
  return at < 0 ? 0 : (text?.slice(0, at).split('\n').length ?? 1) - 1;
}
