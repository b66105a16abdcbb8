import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { ADDRESS_FILE, addressProblems, addressState } from '../../src/build/address-record.ts';
import { addressLine } from '../../src/build/build-ending.ts';
import { checkCommand } from '../../src/cli/check.ts';
import { renameCommand } from '../../src/cli/rename/rename.ts';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import type { Loaded } from '../../src/ledger/load-ledger.ts';
import { runCommand } from '../cli/run-command.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const loaded = (): Loaded => {
  const read = content.content();
  return { content: read, ledger: buildLedger(read, { today: TODAY }) };
};
const stateOf = (isRecorded: boolean) => addressState(loaded(), content.folder, isRecorded).state;

test('the list is written when that is asked for, keeps what stood in it, and is whole then', () => {
  expect([stateOf(false), stateOf(true), stateOf(false)]).toEqual(['none', 'written', 'whole']);
  writeFileSync(join(content.folder, ADDRESS_FILE), '/old/\n/panels/\n');
  expect([stateOf(false), stateOf(true), stateOf(true)]).toEqual(['behind', 'written', 'whole']);
  expect(content.read(ADDRESS_FILE)).toMatch(/^\/old\/$/m);
  expect(addressProblems(loaded(), content.folder).map((it) => it.found)).toEqual([
    '/old/, which this build would drop',
  ]);
});

test('a line that can’t be read stops recording, and nothing of the list is lost', () => {
  writeFileSync(join(content.folder, ADDRESS_FILE), '<<<<<<< ours\n/old/\n');
  expect(() => stateOf(true)).toThrow('a mark of a merge');
  expect(content.read(ADDRESS_FILE)).toBe('<<<<<<< ours\n/old/\n');
});

test('after a rename the list holds as it is: old addresses lead on', async () => {
  expect(stateOf(true)).toBe('written');
  const before = content.read(ADDRESS_FILE);
  expect((await runCommand(renameCommand, ['panel', 'plover', 'grey-plover', '--yes'], content.folder)).code).toBe(0);
  expect(addressProblems(loaded(), content.folder)).toEqual([]);
  expect(stateOf(true)).toBe('written');
  for (const line of before.split('\n')) expect(content.read(ADDRESS_FILE).split('\n')).toContain(line);
  expect(content.read(ADDRESS_FILE)).toContain('/panels/grey-plover/methodology/');
});

test('check names the list, the line and what to do', async () => {
  expect(stateOf(true)).toBe('written');
  const line = content.read(ADDRESS_FILE).split('\n').indexOf('/data/compare/plover.json') + 1;
  content.remove('panels/plover');
  const said = vi.spyOn(console, 'error').mockImplementation(() => {});
  const { code } = await runCommand(checkCommand, [content.folder], content.folder);
  const error = said.mock.calls.join('\n');
  said.mockRestore();
  expect(code).toBe(1);
  expect(error).toContain(`${ADDRESS_FILE}:${line}`);
  expect(error).toContain('formerly: [plover]');
});

test('a build says what is not kept yet, and nothing where all is', () => {
  const say = (fresh: number, state: 'whole' | 'behind' | 'none' | 'written') =>
    addressLine({ file: 'content/addresses.txt', fresh, state }).join();
  expect(say(0, 'whole')).toBe('');
  expect(say(1, 'behind')).toMatch(/^1 address is new and not kept in content\/addresses\.txt yet: /);
  expect(say(0, 'behind')).toMatch(/^Parts of pages are new/);
  expect(say(3, 'none')).toMatch(/^No published address is kept: .* build --record` writes/);
  expect(say(3, 'written')).toMatch(/^3 addresses are kept in content\/addresses\.txt from now on/);
});
