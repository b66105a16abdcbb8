import { Parser } from 'htmlparser2';
import { type Body, everyNode, treeOf } from './body-links.ts';
import { perSource } from './per-source.ts';

/** An element that a body or a drawing has written out. */
export interface WrittenElement {
  /** In lower case; of components, as it is written. */
  name: string;
  /** Names in lower case. */
  attributes: Readonly<Record<string, string>>;
  /** In the file, from 1. */
  line: number;
}

/** Every element that a body writes as such, beside its Markdown; none where it can't be parsed, of which others tell. */
export const elementsIn = perSource<WrittenElement[], Body>((source) => {
  const elements: WrittenElement[] = [];
  try {
    for (const { type, value, name, attributes, position } of everyNode(treeOf(source))) {
      const line = source.bodyLine + (position?.start.line ?? 1) - 1;
      if (type === 'html') elements.push(...elementsOf(value ?? '', { line }));
      else if (type.startsWith('mdxJsx') && name) {
        const own = (attributes ?? []).map((it) => [it.name?.toLowerCase() ?? '', String(it.value ?? '')]);
        elements.push({ name, attributes: Object.fromEntries(own), line });
      }
    }
  } catch {
    return [];
  }
  return elements;
});

/**
 * The elements of a piece of markup.
 *
 * @param line on which it starts
 */
export function elementsOf(markup: string, { line = 1, isXml = false } = {}): WrittenElement[] {
  const elements: WrittenElement[] = [];
  const parser = new Parser(
    {
      onopentag: (name, attributes) => {
        const lines = markup.slice(0, parser.startIndex).split('\n').length - 1;
        const lower = Object.entries(attributes).map(([key, value]) => [key.toLowerCase(), value]);
        elements.push({ name: name.toLowerCase(), attributes: Object.fromEntries(lower), line: line + lines });
      },
    },
    { xmlMode: isXml },
  );
  // In a page a browser ends such a section at the first `>`, but for drawings; the parser here, at its own end.
  parser.end(isXml ? markup : markup.replaceAll('<![CDATA[', '<!x CDATA['));
  return elements;
}
