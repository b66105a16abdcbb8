import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { elementsIn, elementsOf, type WrittenElement } from '../read/body-elements.ts';
import { linksIn } from '../read/body-links.ts';
import type { Source } from '../read/source.ts';
import type { Problem } from '../schema/problem.ts';
import type { Rule } from './rule.ts';

/** Elements that run or load something, lead away unasked, change the page around them, or swallow the rest of it. */
const LOUD = new Set(
  'applet base body embed form frame frameset head html iframe link meta noscript object plaintext script style template textarea title xmp'.split(
    ' ',
  ),
);
/** In a drawing: what runs, and what brings a page into it. Its title and its styles are its own. */
const LOUD_IN_DRAWING = new Set('embed foreignobject handler iframe listener object script'.split(' '));
/** Attributes that load, run or send something past what is looked at in links and images; or break the pages’ policy. */
const LOUD_ATTRIBUTES = new Set(
  'action background formaction ping set:html set:text srcdoc srcset style xlink:href'.split(' '),
);

const WANTED = 'text, and elements that only show something';
const HINT = 'pages of the guide run and load nothing but their own: take it out';

/**
 * Texts whose markup does more than show: scripts, frames, forms, handlers, styles; and drawings with a script in them.
 * The pages' policy would stop most of it in a browser; here it is told of before anything is built.
 */
export const quietMarkup: Rule = {
  id: 'quiet-markup',
  run: (content) =>
    (['panels', 'methods', 'cautions'] as const).flatMap((collection) =>
      [...content[collection].values()].flatMap((source) =>
        source.isProducts ? [] : [...loudElements(source), ...loudDrawings(source)],
      ),
    ),
};

function loudElements(source: Source): Problem[] {
  return elementsIn(source).flatMap((element) => {
    const found = loudPart(element);
    return found === undefined
      ? []
      : [{ file: source.file, line: element.line, field: '', found, wanted: WANTED, hint: HINT }];
  });
}

/** What of an element does something, as it is told; components are the program's own but for their handlers. */
function loudPart({ name, attributes }: WrittenElement): string | undefined {
  if (LOUD.has(name)) return `<${name}>`;
  const loud = Object.keys(attributes).find((it) => /^on./.test(it) || LOUD_ATTRIBUTES.has(it));
  return loud === undefined ? undefined : `${loud} in <${name}>`;
}

function loudDrawings(source: Source): Problem[] {
  return linksIn(source).flatMap(({ kind, address, line }) => {
    const path = address.replace(/[?#].*$/, '');
    if (kind === 'link' || !/^[^/].*\.svg$/i.test(path)) return [];
    const found = loudInDrawing(join(dirname(source.path), decoded(path)));
    return found === undefined
      ? []
      : [
          {
            file: source.file,
            line,
            field: '',
            found: `a drawing "${address}" with ${found}`,
            wanted: 'a drawing that only shows something',
            hint: 'it would run where somebody opens it by itself: export it anew without, or as PNG',
          },
        ];
  });
}

/** What of a drawing does something; nothing of one that is not there, of which others tell. */
function loudInDrawing(path: string): string | undefined {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
  for (const { name, attributes } of elementsOf(text, { isXml: true })) {
    if (LOUD_IN_DRAWING.has(name.replace(/^.*:/, ''))) return `<${name}>`;
    const loud = Object.entries(attributes).find(
      ([key, value]) => /^on./.test(key) || (/(^|:)href$/.test(key) && !/^(#|data:image\/)/.test(value.trim())),
    );
    if (loud) return `${loud[0]} in <${name}>`;
  }
  return undefined;
}

/** A name with its signs spelt out; one that can't be is left as it is. */
function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}
