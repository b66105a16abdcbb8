/** Results of the model of the light from one process to the next, in a file. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { unpackResult } from '../../src/ledger/optics-pack.ts';
import { workedOut } from '../../src/ledger/optics-store.ts';
import { keepResults, keyOf, releaseResults } from '../../src/ledger/result-store.ts';
import { estimatePanel } from '../../src/measure/beam/estimate.ts';
import type { OpticsInput } from '../../src/measure/beam/optics-input.ts';
import { exactBench, lightSource, opticsInput } from '../measure/beam/make.ts';

const place = vi.hoisted(() => ({ folder: '' }));
vi.mock('../../src/content/read/cache-folder.ts', () => ({ cacheFolder: () => place.folder }));
vi.mock('../../src/measure/beam/estimate.ts', { spy: true });

const input = opticsInput(exactBench(lightSource(), { grid: [3, 3] }));
const other = { ...input, seed: input.seed + 1 };
const file = () => join(place.folder, 'optics');

beforeEach(() => {
  place.folder = mkdtempSync(join(tmpdir(), 'kept-optics-'));
  releaseResults();
});
afterEach(() => {
  releaseResults();
  rmSync(place.folder, { recursive: true });
});

/** What a process of its own makes of an input, and whether it had to work it out. */
function asked(it: OpticsInput) {
  releaseResults();
  vi.mocked(estimatePanel).mockClear();
  const result = workedOut(new Map([['it', it]])).get('it');
  keepResults();
  return { result: result && unpackResult(result), isWorkedOut: vi.mocked(estimatePanel).mock.calls.length > 0 };
}

test('a result is worked out once, and comes from the file number for number', () => {
  const first = asked(input);
  const again = asked(input);
  expect([first.isWorkedOut, again.isWorkedOut]).toEqual([true, false]);
  expect(again.result).toEqual(first.result);
});

test('what another process asked for stays in the file', () => {
  const [first, second] = [asked(input), asked(other)];
  expect(readFileSync(file()).includes(keyOf(input))).toBe(true);
  expect(asked(input)).toEqual({ ...first, isWorkedOut: false });
  expect(asked(other)).toEqual({ ...second, isWorkedOut: false });
});

test('a file that is none, or not whole, is left aside and written anew', () => {
  const first = asked(input);
  const whole = readFileSync(file());
  for (const bytes of [Buffer.alloc(0), Buffer.from('no results'), whole.subarray(0, -1)]) {
    writeFileSync(file(), bytes);
    expect(asked(input)).toEqual(first);
    expect(asked(input)).toEqual({ ...first, isWorkedOut: false });
  }
});
