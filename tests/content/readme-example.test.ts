/** The README's example panel, put where it says, appears in the ranking. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import { readContent } from '../../src/ledger/read-content.ts';
import { isFigure } from '../../src/measure/figure.ts';

const root = mkdtempSync(join(tmpdir(), 'panel-ledger-readme-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

test('the example panel of the README is ranked', () => {
  const readme = readFileSync('README.md', 'utf8');
  const path = /Save this as `(content\/panels\/([^/]+)\/index\.md)`/.exec(readme);
  const example = /```yaml\n([\s\S]*?)```/.exec(readme)?.[1];
  if (!path?.[1] || !path[2] || !example) throw new Error('the README has no example panel');
  cpSync('content', join(root, 'content'), { recursive: true });
  mkdirSync(dirname(join(root, path[1])), { recursive: true });
  writeFileSync(join(root, path[1]), example);

  const today = '2026-11-25';
  const { content, problems } = readContent({ folder: join(root, 'content'), today });
  expect(problems).toEqual([]);
  if (!content) return;
  const panel = buildLedger(content, { today }).panels.get(path[2]);
  expect(panel?.rank?.place).toBeGreaterThanOrEqual(1);
  // The power that the README's sample of panels.json shows for it.
  const power = panel?.figures.get('optical-power');
  const shown = Number(/"optical-power": \{[^}]*"value": ([\d.]+)/.exec(readme)?.[1]);
  expect(isFigure(power) && power.value).toBeCloseTo(shown, 2);
});
