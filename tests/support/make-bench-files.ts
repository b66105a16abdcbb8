/**
 * Writes the files from the bench that the demonstration's panels have, into both copies of it:
 *
 *     npx node tests/support/make-bench-files.ts
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { GENERATORS } from './bench-files/generator.ts';

const FOLDERS = ['content', 'tests/demo/content'];

let total = 0;
for (const { panel, name, bytes } of GENERATORS.flatMap((make) => make())) {
  for (const folder of FOLDERS) {
    const place = join(folder, 'panels', panel);
    mkdirSync(place, { recursive: true });
    writeFileSync(join(place, name), bytes);
  }
  const size = Buffer.byteLength(bytes);
  total += size;
  console.log(`${panel}/${name}  ${size} bytes`);
}
console.log(`${total} bytes in all`);
