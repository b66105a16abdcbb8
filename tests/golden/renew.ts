/**
 * Renews the golden file: `npx node tests/golden/renew.ts`. Prints what moved and why, and refuses where a number
 * moved and nothing that was declared accounts for it. With `--list` it only prints. Never on continuous integration.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { versionOf } from '../../src/measure/method-versions.ts';
import { layDemo } from '../support/demo-folder.ts';
import { demoLedger } from '../support/demo-ledger.ts';
import { movedFigures, movedTable } from './compare.ts';
import { goldenOf, goldenText, parseGolden } from './golden.ts';
import { GOLDEN_FILE, readGolden } from './golden-file.ts';

const isList = process.argv.includes('--list');
if (process.env.CI && !isList) {
  console.error('The golden file is not written on continuous integration.');
  process.exit(1);
}
// By itself, outside a run of the tests, nobody else has put the demonstration together as it stands now.
layDemo();
const before = readGolden();
const after = goldenOf(demoLedger());
const moved = movedFigures(before.golden, after, [before.budgetVersion, versionOf('uncertainty')]);
console.log(moved.length > 0 ? movedTable(moved) : 'Nothing moved.');
const unexplained = moved.filter((it) => it.causes.length === 0);
if (isList) process.exit(0);
if (unexplained.length > 0) {
  console.error(
    `\n${unexplained.length} figures moved while their readings and the versions of their methods stood still: raise the version of the method that changed, or find out what moved them.\n${unexplained.map((it) => `  ${it.id}`).join('\n')}`,
  );
  process.exit(1);
}
const text = goldenText(after);
// What is written must be what is read back.
if (goldenText(parseGolden(text)) !== text) throw new Error('the golden file does not read back as it was written');
writeFileSync(GOLDEN_FILE, `${JSON.stringify(['budgets', versionOf('uncertainty')])}\n${text}`);
console.log(`\n${readFileSync(GOLDEN_FILE, 'utf8').split('\n').length - 1} lines written.`);
