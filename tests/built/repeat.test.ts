import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { build, differences, fingerprints } from './build.ts';
import { CONTENT, DIST, panelsJson } from './site.ts';

const SAME = { LEDGER_CONTENT: CONTENT, LEDGER_TODAY: panelsJson().built_for };

// Whatever these builds give, the other tests look at the site that was there before.
let accepted: string;
beforeEach(async () => {
  accepted = await mkdtemp(join(tmpdir(), 'panel-ledger-site-'));
  await cp(DIST, accepted, { recursive: true });
});
afterEach(async () => {
  await rm(DIST, { recursive: true });
  await cp(accepted, DIST, { recursive: true });
  await rm(accepted, { recursive: true });
});

const first = fingerprints(DIST);

test('two builds of the same content for the same day give the same bytes', async () => {
  expect(Object.keys(first).length).toBeGreaterThan(50);
  expect(differences(first, { ...first, 'index.html': 'other', 'new.html': 'new' })).toEqual([
    'index.html',
    'new.html',
  ]);
  const { code, stderr } = await build(SAME);
  expect(code).toBe(0);
  // Nothing is said but what is odd in the content.
  expect(stderr.trim().split('\n').at(-1)).toMatch(/^$|^0 problems, \d+ warnings?: /);
  expect(differences(first, fingerprints(DIST))).toEqual([]);
});

test('so does a build in a shell that is set up for developing, in another language and time zone', async () => {
  const shell = { NODE_ENV: 'development', DEV: '1', PROD: '', TZ: 'Pacific/Auckland', LC_ALL: 'de_DE.UTF-8' };
  expect(await build({ ...SAME, ...shell })).toMatchObject({ code: 0 });
  expect(differences(first, fingerprints(DIST))).toEqual([]);
});
