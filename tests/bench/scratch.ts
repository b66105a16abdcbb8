import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The repository's top. */
export const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

const top = mkdtempSync(join(tmpdir(), 'panel-ledger-bench-'));
process.on('exit', () => rmSync(top, { recursive: true, force: true, maxRetries: 5 }));
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => process.exit(1));

/** A new, empty folder, which goes when the benchmark ends, however it ends. */
export function scratchFolder(name: string): string {
  return mkdtempSync(join(top, `${name}-`));
}

/** Takes a folder away as soon as it has served: those of the large builds are large. */
export function discard(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
}
