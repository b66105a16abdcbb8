import type { CheckValue } from './check-value.ts';

const hash = (text: string, expected: number): CheckValue<string> => ({
  label: `FNV-1a of "${text}"`,
  arguments: text,
  expected,
  tolerance: 0,
  because: 'a hash is right or wrong',
  source: 'test vectors of the 32-bit FNV-1a hash (from memory), repeated with whole numbers of any size',
  verified: 'computed',
});

/** Texts and their 32-bit FNV-1a hashes, unsigned. */
export const FNV_1A: readonly CheckValue<string>[] = [
  hash('', 0x811c9dc5),
  hash('a', 0xe40c292c),
  hash('foobar', 0xbf9cf968),
];
