/** Schemas of others, by which libxml2 judges what is published as XML. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { RelaxNGValidator, XmlDocument, XmlValidateError, XsdValidator } from 'libxml2-wasm';

/** RFC 4287, appendix B. */
export const ATOM_SCHEMA = fileURLToPath(new URL('../references/atom.rng', import.meta.url));
/** sitemaps.org, protocol 0.9, of 2008-03-26, as a library that writes sitemaps ships it. */
export const SITEMAP_SCHEMA = fileURLToPath(new URL('schema/sitemap.xsd', import.meta.resolve('sitemap/package.json')));

/**
 * What a schema refuses of a document, each with its line; nothing where it fits.
 *
 * @param schema RELAX NG (`.rng`) or XML Schema (`.xsd`)
 * @throws Error where the document is no well-formed XML
 */
export function schemaFaults(schema: string, xml: string): string[] {
  using rules = XmlDocument.fromBuffer(readFileSync(schema));
  using document = XmlDocument.fromString(xml);
  using validator = schema.endsWith('.rng') ? RelaxNGValidator.fromDoc(rules) : XsdValidator.fromDoc(rules);
  try {
    validator.validate(document);
    return [];
  } catch (error) {
    if (!(error instanceof XmlValidateError)) throw error;
    return error.details.map((it) => `line ${it.line}: ${it.message.trim()}`);
  }
}
