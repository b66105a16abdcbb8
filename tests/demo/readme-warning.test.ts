/** The warning that the README shows is what its example panel gives when the unit of its warm-up is forgotten. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readContent } from '../../src/content/read/read-content.ts';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import { warningList } from '../../src/site/warnings/warning-list.ts';
import { warningsOf } from '../../src/site/warnings/warnings.ts';

import { DEMO_FOLDER } from '../support/demo-folder.ts';

const root = mkdtempSync(join(tmpdir(), 'panel-ledger-warning-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

test('the warning of the README is printed for its example panel', () => {
  const readme = readFileSync('README.md', 'utf8');
  const slug = /Save this as `content\/panels\/([^/]+)\/index\.md`/.exec(readme)?.[1] as string;
  const example = /```yaml\n([\s\S]*?)```/.exec(readme)?.[1] as string;
  const block = /```\n(doubt {2}content[\s\S]*?)\n```/.exec(readme)?.[1];
  const content = join(root, 'content');
  cpSync(DEMO_FOLDER, content, { recursive: true });
  // The other panels have no part in it.
  for (const it of ['panels', 'corrections.yaml', 'addresses.txt']) rmSync(join(content, it), { recursive: true });
  const guide = join(content, 'guide.yaml');
  writeFileSync(guide, readFileSync(guide, 'utf8').replace(/^withdrawn:\n(?: .*\n)+/m, ''));
  mkdirSync(join(content, 'panels', slug), { recursive: true });
  const slip = example.replace('warmUp: 30 min', 'warmUp: 30');
  expect(slip).not.toBe(example);
  writeFileSync(join(content, 'panels', slug, 'index.md'), slip);

  const read = readContent({ folder: content, today: '2026-11-25' });
  if (!read.content) throw new Error(JSON.stringify(read.problems));
  const ledger = buildLedger(read.content, { today: '2026-11-25' });
  expect(warningList(warningsOf({ content: read.content, ledger })).split('\n\n')).toContain(block);
});
