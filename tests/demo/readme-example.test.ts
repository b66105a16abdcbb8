/** The README's example panel, put where it says, appears in the ranking. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readContent } from '../../src/content/read/read-content.ts';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import { isFigure } from '../../src/measure/figure.ts';

import { DEMO_FOLDER } from '../support/demo-folder.ts';

const root = mkdtempSync(join(tmpdir(), 'panel-ledger-readme-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const today = '2026-11-25';

/** The README's example panel and its path, from the first of its blocks. */
function examplePanel(readme: string): { path: string; slug: string; text: string } {
  const path = /Save this as `(content\/panels\/([^/]+)\/index\.md)`/.exec(readme);
  const text = /```yaml\n([\s\S]*?)```/.exec(readme)?.[1];
  if (!path?.[1] || !path[2] || !text) throw new Error('the README has no example panel');
  return { path: path[1], slug: path[2], text };
}

/** Reads the demonstration with a panel more. */
function readWith(folder: string, path: string, text: string) {
  cpSync(DEMO_FOLDER, join(root, folder, 'content'), { recursive: true });
  mkdirSync(dirname(join(root, folder, path)), { recursive: true });
  writeFileSync(join(root, folder, path), text);
  return readContent({ folder: join(root, folder, 'content'), today });
}

test('the example panel of the README is ranked', () => {
  const readme = readFileSync('README.md', 'utf8');
  const { path, slug, text } = examplePanel(readme);
  const { content, problems } = readWith('plain', path, text);
  expect(problems).toEqual([]);
  if (!content) return;
  const panel = buildLedger(content, { today }).panels.get(slug);
  expect(panel?.rank?.place).toBeGreaterThanOrEqual(1);
  // The power that the README's sample of panels.json shows for it.
  const power = panel?.figures.get('optical-power');
  const shown = Number(/^\[0, \[([\d.]+)/m.exec(readme)?.[1]);
  expect(isFigure(power) && power.value).toBeCloseTo(shown, 2);
});

test('its optional fields fit the example panel, and rank it among panels of the other version too', () => {
  const readme = readFileSync('README.md', 'utf8');
  const { path, slug, text } = examplePanel(readme);
  const optional = /```yaml\n(leds:.*)\nsessions:\n {2}- # \.\.\.\n([\s\S]*?)```/.exec(readme);
  if (!optional?.[1] || !optional[2]) throw new Error('the README has no optional fields');
  const [leds, session] = [optional[1], optional[2]];
  const whole = text.replace('\nsessions:\n', `\n${leds}\nsessions:\n`).replace('    methodVersion: 1\n', session);
  expect(whole).not.toBe(text);
  const { content, problems } = readWith('optional', path, whole);
  expect(problems).toEqual([]);
  if (!content) return;
  expect(content.panels.get(slug)?.data.sessions[0]?.beyond).toHaveLength(6);
  const panel = buildLedger(content, { today }).panels.get(slug);
  expect(panel?.current?.conditions).toMatchObject({ methodVersion: 2, isReference: true });
  expect(panel?.rank?.of).toBeGreaterThan(1);
});
