import { relative, resolve, sep } from 'node:path';

/** On the global object: the bundler makes a copy of this module that lies elsewhere, and is asked later. */
const shared = globalThis as { panelLedgerFolder?: string };

/**
 * Where the product lies: its code, texts and public files. A guide is worked on from a folder of its own, which is the
 * same one only where the guide is kept in a checkout of the product.
 */
export function productFolder(): string {
  shared.panelLedgerFolder ??= resolve(import.meta.dirname, '..', '..', '..');
  return shared.panelLedgerFolder;
}

/** A file of the product as messages name it: from where the tester works, with forward slashes. */
export function productFile(path: string): string {
  return relative(process.cwd(), path).split(sep).join('/');
}
