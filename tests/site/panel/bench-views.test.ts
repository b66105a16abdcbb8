import { beforeAll, describe, expect, test } from 'vitest';
import { channelsView } from '../../../src/site/panel/channels-view.ts';
import { fieldsView } from '../../../src/site/panel/fields-view.ts';
import { panelView } from '../../../src/site/panel/panel-view.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});
const view = (slug: string) => panelView(demo.panel(slug), demo.ledger);

describe('channels', () => {
  test('have a line for each quantity, with its unit once', () => {
    const { rows, peaks, unread } = channelsView(view('kelpwright-cormorant'));
    expect(rows.map((it) => [it.name, it.unit])).toEqual([
      ['Peak irradiance', 'mW/cm²'],
      ['Mains draw', 'W'],
      ['Efficiency', '%'],
      ['Efficiency less standby', '%'],
      ['Flicker', '%'],
      ['Flicker frequency', 'Hz'],
      ['Peak wavelength and width', 'nm'],
    ]);
    for (const { cells } of rows) {
      expect(cells).toHaveLength(3);
      for (const { figure } of cells) expect(figure?.shown?.unit ?? '').toBe('');
    }
    expect(peaks).toEqual([660, 847]);
    expect(unread).toEqual([]);
  });

  test('say once what holds for a whole line, and for several figures', () => {
    const { rows, notes } = channelsView(view('kelpwright-cormorant'));
    const frequency = rows.find((it) => it.name === 'Flicker frequency');
    expect(frequency?.absent).toMatch(/states none for the frequency/);
    expect(frequency?.cells.map((it) => it.figure?.absent)).toEqual([undefined, undefined, undefined]);
    // Of some that have none.
    const vagg = channelsView(view('ostrel-vagg')).rows.find((it) => it.name === 'Flicker frequency');
    expect(vagg?.absent).toMatch(/^no ±: .*states none for the frequency/);
    expect(vagg?.cells.map((it) => it.figure?.absent)).toEqual([undefined, undefined, undefined]);
    // A bound has no ± to miss.
    const flicker = channelsView(view('kelpwright-limpet')).rows.find((it) => it.name === 'Flicker');
    expect([flicker?.absent, ...(flicker?.cells ?? []).map((it) => it.figure?.absent)].filter(Boolean)).toEqual([]);
    expect(notes).toEqual(['scaled from both channels by the peaks']);
    // How the sweep of both channels was read is no note of a channel alone.
    expect(channelsView(view('ostrel-vagg')).notes).toEqual(['scaled from both channels by the peaks']);
  });

  test('that were not read have a sentence and no line', () => {
    const { rows, unread, standby, hour } = channelsView(view('quennick-dab'));
    expect(rows.map((it) => it.name)).toEqual(['Peak irradiance']);
    expect(unread).toContain(
      'Mains draw, flicker, flicker frequency, peak wavelength and width and standby: not measured',
    );
    expect([standby, hour]).toEqual([undefined, undefined]);
  });
});

describe('fields and sound', () => {
  test('stand with the panel off and on, the panel’s own sound with them', () => {
    const it = view('kelpwright-cormorant');
    const fields = fieldsView(it, it.limits);
    expect(fields.rows.map((row) => [row.name, row.place])).toEqual([
      ['Magnetic field', '6 in'],
      ['Electric field', '6 in'],
      ['Radio field', '6 in'],
      ['Sound', '1 m'],
    ]);
    expect(fields.alone?.metric).toBe('sound-of-panel');
    expect(fields.unread).toEqual([]);
  });

  test('that were not read are one sentence', () => {
    const it = view('quennick-dab');
    const fields = fieldsView(it, it.limits);
    expect(fields.rows).toEqual([]);
    expect(fields.alone).toBeUndefined();
    expect(fields.unread).toEqual(['Magnetic field, electric field, radio field and sound: not measured']);
  });
});
