/**
 * Raises the edition of each of the product's texts that says something else than its golden mark, and renews the marks:
 *
 *     npx node tests/golden/renew-editions.ts
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { textsFolder } from '../../src/content/read/product-texts.ts';
import { EDITIONS_FILE, type Editions, format, goldenEditions, presentEditions } from '../support/text-editions.ts';

const golden = goldenEditions();
const renewed: Editions = {};
for (const [path, { edition, mark }] of Object.entries(presentEditions())) {
  const before = golden[path];
  const raised = before && before.mark !== mark ? Math.max(edition, before.edition + 1) : edition;
  renewed[path] = { edition: raised, mark };
  if (raised === edition) continue;
  const file = join(textsFolder(), path);
  writeFileSync(file, readFileSync(file, 'utf8').replace(/^edition: .*$/m, `edition: ${raised}`));
  console.log(`${path}: edition ${raised}`);
}
writeFileSync(EDITIONS_FILE, format(renewed));
