import { readFileSync } from 'node:fs';
import { join, posix } from 'node:path';

/** A page of a built site with the files that it cannot do without. */
export interface BuiltPage {
  html: string;
  /** Addresses from the site's root. */
  styles: string[];
  /** Its modules, and all that those import when they load. */
  scripts: string[];
}

/** Reads a page and finds its style sheets and scripts. @throws where one of them is not there */
export function builtPage(site: string, path: string): BuiltPage {
  const html = readFileSync(join(site, path), 'utf8');
  const addresses = (pattern: RegExp) => [...html.matchAll(pattern)].map((match) => match[1] as string);
  const scripts = new Set<string>();
  const add = (address: string) => {
    if (scripts.has(address)) return;
    scripts.add(address);
    // Static imports only: `import"./a.js"` and `from"./a.js"`; `import(…)` loads when a reader asks for it.
    for (const match of readFileSync(join(site, address), 'utf8').matchAll(/(?:from|import)\s*["']([^"']+)["']/g)) {
      add(posix.join(posix.dirname(address), match[1] as string));
    }
  };
  for (const address of addresses(/<script\b[^>]*\bsrc="([^"]+)"/g)) add(address);
  return { html, styles: addresses(/<link\b[^>]*\brel="stylesheet"[^>]*\bhref="([^"]+)"/g), scripts: [...scripts] };
}
