import { expect, test } from 'vitest';
import { RecentReadings } from '../../../../src/content/read/files/recent-readings.ts';

const samples = (count: number) => ({ data: { samples: new Float64Array(count) } });

test('what was asked for longest ago goes when there is no room', () => {
  const recent = new RecentReadings<object>(100_000);
  const [one, two, three] = [samples(5000), samples(5000), samples(5000)];
  recent.set('one', one);
  recent.set('two', two);
  recent.set('one', one);
  expect([recent.get('one'), recent.get('two')]).toEqual([one, two]);
  recent.set('three', three);
  expect([recent.get('one'), recent.get('two'), recent.get('three')]).toEqual([one, undefined, three]);
});

test('one that is longer than all the room stays until the next', () => {
  const recent = new RecentReadings<object>(1000);
  const long = { times: Array.from({ length: 1000 }, (_, i) => i) };
  recent.set('long', long);
  expect(recent.get('long')).toBe(long);
  recent.set('next', {});
  expect(recent.get('long')).toBeUndefined();
});
