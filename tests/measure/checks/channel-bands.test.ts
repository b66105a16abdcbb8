import { expect, test } from 'vitest';
import { BAND_EDGE, channelBands } from '../../../src/measure/checks/channel-bands.ts';
import { facts } from './facts.ts';

const flags = (red?: number, infrared?: number) =>
  channelBands.run(facts({ values: { 'wavelength-red': red, 'wavelength-near-infrared': infrared } }));

test('red and near-infrared the wrong way round are doubtful, each, with the slip', () => {
  expect(flags(850, 660)).toMatchObject([
    {
      severity: 'doubt',
      finding: { code: 'channel-out-of-band', channel: 'red', peak: 850, edge: BAND_EDGE },
      hint: { code: 'channels-swapped' },
    },
    { finding: { channel: 'near-infrared', peak: 660 }, hint: { code: 'channels-swapped' } },
  ]);
});

test('one of them beyond the edge is doubtful alone', () => {
  const [flag, ...more] = flags(760, 850);
  expect(flag).toMatchObject({ finding: { channel: 'red' }, concerns: ['wavelength-red'] });
  expect(flag?.hint).toBeUndefined();
  expect(more).toEqual([]);
});

test('each on its side of the edge, or not read, is nothing odd', () => {
  expect(flags(700, 700)).toEqual([]);
  expect(flags(630, 940)).toEqual([]);
  expect(flags()).toEqual([]);
});
