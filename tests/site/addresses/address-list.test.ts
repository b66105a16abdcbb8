import { expect, test } from 'vitest';
import {
  type AddressList,
  addressListText,
  entryOf,
  hasAll,
  readAddressList,
  united,
} from '../../../src/site/addresses/address-list.ts';

function list(): AddressList {
  const made: AddressList = new Map();
  entryOf(made, '/plan/');
  for (const it of ['version-10', 'version-2']) entryOf(made, '/methods/rank/').parts.add(it);
  const { sessions } = entryOf(made, '/panels/tern/methodology/');
  sessions.set('2026-10-01', new Set(['led-area', 'capture', 'sound-on']));
  sessions.set('2025-01-02', new Set(['led-area']));
  entryOf(made, '/panels/tern/files/').sessions.set('2026-10-01', new Set(['warm-up-drop']));
  entryOf(made, '/panels/wren/files/').sessions.set('2026-10-02', new Set(['centroid-red', 'warm-up-drop']));
  return made;
}

const without = (text: string) => text.split('\n').filter((it) => !it.startsWith('#'));

test('a line an address, sorted, what a session has not by name', () => {
  expect(without(addressListText(list()))).toEqual([
    'metric capture',
    'metric led-area',
    'metric sound-on',
    'file-metric centroid-red',
    'file-metric warm-up-drop',
    '/methods/rank/ #version-2 #version-10',
    '/panels/tern/files/',
    '/panels/tern/files/ 2026-10-01 but centroid-red',
    '/panels/tern/methodology/',
    '/panels/tern/methodology/ 2025-01-02 but capture sound-on',
    '/panels/tern/methodology/ 2026-10-01',
    '/panels/wren/files/',
    '/panels/wren/files/ 2026-10-02',
    '/plan/',
    '',
  ]);
});

test('what is written is read as the same, with its lines', () => {
  const text = addressListText(list());
  const { list: read, problems } = readAddressList(text.replaceAll('\n', '\r\n'), 'addresses.txt');
  expect(problems).toEqual([]);
  expect(addressListText(read)).toBe(text);
  expect(text.split('\n')[(read.get('/plan/')?.line ?? 0) - 1]).toBe('/plan/');
});

test('lines that are none are named with their place', () => {
  const { problems } = readAddressList('/plan/\n<<<<<<< one\nplots\n/a/ 2026-10-01 or b\n', 'c/addresses.txt');
  expect(problems.map(({ file, line, found }) => [file, line, found])).toEqual([
    ['c/addresses.txt', 2, 'a mark of a merge'],
    ['c/addresses.txt', 3, '"plots"'],
    ['c/addresses.txt', 4, '"/a/ 2026-10-01 or b"'],
  ]);
});

test('of two lists nothing is lost, and one that has less has not all', () => {
  const more = list();
  entryOf(more, '/new/');
  entryOf(more, '/panels/tern/methodology/').sessions.get('2025-01-02')?.add('sound-on');
  const all = united(list(), more);
  expect(addressListText(all)).toBe(addressListText(united(more, list())));
  expect([hasAll(all, more), hasAll(list(), more), hasAll(more, list())]).toEqual([true, false, true]);
});
