import { expect, test } from 'vitest';
import { channelAlone, MOST_OF_OTHER } from '../../../src/measure/checks/channel-alone.ts';
import { facts } from './facts.ts';

const flags = (values: Record<string, number>) => channelAlone.run(facts({ values }));

test('a spectrum of one channel alone with the other one in it is doubtful', () => {
  expect(MOST_OF_OTHER).toBe(12.5);
  expect(flags({ 'near-infrared-share-red': 45 })).toMatchObject([
    { severity: 'doubt', finding: { code: 'channel-not-alone', mode: 'red', other: 'near-infrared', percent: 45 } },
  ]);
  expect(flags({ 'red-share-near-infrared': 12.6 })).toHaveLength(1);
});

test('the foot of a line, and both channels on, are nothing odd', () => {
  expect(flags({ 'near-infrared-share-red': 12.5, 'red-share-near-infrared': 3 })).toEqual([]);
  expect(flags({ 'near-infrared-share-combined': 45, 'red-share-combined': 55 })).toEqual([]);
});
