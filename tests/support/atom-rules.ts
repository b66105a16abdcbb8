/**
 * What RFC 4287 asks of a feed: by its schema, by the rules that the schema carries for a second language (Schematron),
 * and by those of its prose that neither can say. Sections are the RFC's (read, in a copy as HTML).
 */
import { readFileSync } from 'node:fs';
import { Parser } from 'htmlparser2';
import { XmlDocument, XmlElement } from 'libxml2-wasm';
import { ATOM_SCHEMA, schemaFaults } from './xml-schema.ts';

const ATOM = { atom: 'http://www.w3.org/2005/Atom' };

/** Everything that a feed has wrong; nothing where it may be published. */
export function atomFaults(xml: string): string[] {
  const schema = schemaFaults(ATOM_SCHEMA, xml);
  using document = XmlDocument.fromString(xml);
  return [...schema, ...schematronFaults(document), ...PROSE.flatMap((rule) => rule(document))];
}

/** The assertions that stand in the schema beside its patterns. */
function schematronFaults(document: XmlDocument): string[] {
  using schema = XmlDocument.fromBuffer(readFileSync(ATOM_SCHEMA));
  const rules = elements(schema, '//s:rule', { s: 'http://www.ascc.net/xml/schematron' });
  if (rules.length === 0) throw new Error('the schema carries no rule');
  return rules.flatMap((rule) => {
    const context = rule.attr('context')?.value;
    return elements(rule, '*').flatMap((assertion) => {
      const broken = elements(document, `//${context}[not(${assertion.attr('test')?.value})]`);
      return broken.length > 0 ? [assertion.content] : [];
    });
  });
}

type Rule = (document: XmlDocument) => string[];

const PROSE: readonly Rule[] = [
  // 4.2.6: an absolute IRI, which says one entry and no other.
  (it) => values(it, '//atom:id').flatMap((id) => (URL.canParse(id) ? [] : [`id "${id}" is no absolute IRI`])),
  (it) => repeated(values(it, '//atom:id')).map((id) => `id "${id}" stands twice`),
  // RFC 4151, 2.1: whom the name belongs to, on which day, and what it is.
  (it) =>
    values(it, '//atom:entry/atom:id').flatMap((id) =>
      /^tag:[a-z0-9.-]+,\d{4}(-\d\d(-\d\d)?)?:[\w\-.~!$&'()*+,;=:@/?%]+$/.test(id) ? [] : [`id "${id}" is no tag`],
    ),
  // 3.3: as RFC 3339 has it, with a capital T and Z.
  (it) =>
    values(it, '//atom:updated | //atom:published').flatMap((day) =>
      /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/.test(day) ? [] : [`"${day}" is no date of RFC 3339`],
    ),
  // 4.2.15: the feed has changed when one of its entries has. The newest one stands first, as readers show them.
  (it) => {
    const [own = ''] = values(it, '/atom:feed/atom:updated');
    const days = values(it, '//atom:entry/atom:updated');
    const newest = days.toSorted().at(-1) ?? own;
    return [
      ...(own < newest ? [`the feed is of ${own}, an entry of ${newest}`] : []),
      ...(days.join() === days.toSorted().toReversed().join() ? [] : ['entries are not newest first']),
    ];
  },
  // 4.1.1: its own address, and one alternate of a kind. 4.2.7.1 lets addresses be relative; away from the site they fail.
  (it) => (values(it, '/atom:feed/atom:link[@rel="self"]/@href').length === 1 ? [] : ['no link with rel="self"']),
  (it) =>
    elements(it, '/atom:feed | //atom:entry').flatMap((of) => {
      const alternates = values(of, 'atom:link[not(@rel) or @rel="alternate"][not(@type) and not(@hreflang)]/@href');
      return alternates.length === 1 ? [] : [`${alternates.length} alternate links of one kind`];
    }),
  (it) => values(it, '//@href | //@src | //atom:uri').flatMap(notAbsolute),
  // 3.1.1, 4.1.3.3: HTML is text with its markup escaped, and a whole fragment.
  (it) => values(it, '//*[@type="html"][*]').map(() => 'HTML with elements of its own in it'),
  (it) => values(it, '//*[@type="html"]').flatMap(htmlFaults),
];

function htmlFaults(html: string): string[] {
  const faults: string[] = [];
  const open: string[] = [];
  const parser = new Parser({
    onopentag(name, attributes) {
      open.push(name);
      // 8.1: what a careful reader takes out again.
      if (['script', 'img', 'iframe', 'object', 'embed', 'style', 'link'].includes(name)) faults.push(`<${name}>`);
      faults.push(...Object.keys(attributes).flatMap((it) => (/^on|^style$/.test(it) ? [`${name}[${it}]`] : [])));
      if (attributes.href !== undefined) faults.push(...notAbsolute(attributes.href));
    },
    onclosetag(name, isImplied) {
      if (open.pop() !== name || isImplied) faults.push(`<${name}> is not closed`);
    },
  });
  parser.end(html);
  return faults;
}

const notAbsolute = (address: string) => (/^https:\/\/[^/]+\//.test(address) ? [] : [`"${address}" is not absolute`]);

const repeated = (all: readonly string[]) => [...new Set(all.filter((it, i) => all.indexOf(it) !== i))];

/** Elements that a path of XPath leads to. */
function elements(from: XmlDocument | XmlElement, path: string, names: Record<string, string> = ATOM): XmlElement[] {
  return from.find(path, names).filter((it) => it instanceof XmlElement);
}

const values = (from: XmlDocument | XmlElement, path: string) => from.find(path, ATOM).map((it) => it.content);
