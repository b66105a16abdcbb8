import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hasHid, hidMeter, reportText } from '../../../../src/site/bench/browser/hid-meter.ts';
import { lineSplitter, type MeterFeedError } from '../../../../src/site/bench/browser/meter-feed.ts';
import { hasSerial, serialMeter } from '../../../../src/site/bench/browser/serial-meter.ts';
import { type SimulatedSerial, simulateSerial } from '../../../support/simulated-meter.ts';

/** Lets everything that waits run. */
const settled = () => new Promise<void>((resolve) => setTimeout(resolve));

describe('lines out of pieces', () => {
  const linesOf = (end: Parameters<typeof lineSplitter>[0], ...pieces: string[]) => {
    const lines: string[] = [];
    const split = lineSplitter(end, (it) => lines.push(it));
    for (const it of pieces) split(it);
    return lines;
  };

  test.each([
    ['any', ['41.2\r', '\n41.3\n41.4\r41'], ['41.2', '41.3', '41.4']],
    ['lf', ['4', '1.2\n', '\n'], ['41.2', '']],
    ['cr', ['41.2\r41.3\r4'], ['41.2', '41.3']],
    ['crlf', ['41.2\r', '\n41.3\n\r\n'], ['41.2', '41.3\n']],
  ] as const)('%s', (end, pieces, lines) => {
    expect(linesOf(end, ...pieces)).toEqual(lines);
  });

  test('however it is cut, the lines are the same', () => {
    const lines = fc.array(fc.stringMatching(/^[0-9a-z. ]{1,9}$/), { minLength: 1 });
    fc.assert(
      fc.property(lines, fc.constantFrom('\n', '\r', '\r\n'), fc.integer({ min: 1, max: 5 }), (all, end, length) => {
        const text = all.map((it) => it + end).join('');
        const pieces = text.match(new RegExp(`[^]{1,${length}}`, 'g')) ?? [];
        // Whether a line feed follows the last return is not known yet.
        expect(linesOf('any', ...pieces, 'x')).toEqual(all);
      }),
    );
  });
});

describe('a serial port', () => {
  const port = () => (globalThis as unknown as { simulatedSerial: SimulatedSerial }).simulatedSerial;
  beforeEach(simulateSerial);
  afterEach(() => {
    Reflect.deleteProperty(navigator, 'serial');
    Reflect.deleteProperty(globalThis, 'simulatedSerial');
  });

  function heardFrom(feed: ReturnType<typeof serialMeter>) {
    const [lines, ends] = [[] as string[], [] as string[]];
    feed.onLine((it) => lines.push(it));
    feed.onEnd((it: MeterFeedError) => ends.push(it.fault));
    return { lines, ends };
  }

  test('asks only when it is opened, and hands on the settings of the meter', async () => {
    const feed = serialMeter({ baudRate: 9600, parity: 'even', dataBits: 7 });
    const { lines } = heardFrom(feed);
    expect(port().asked).toBe(0);
    await feed.open();
    expect(port()).toMatchObject({ asked: 1, settings: { baudRate: 9600, parity: 'even', dataBits: 7 } });
    port().send('41.2 mW');
    port().send('/cm2\r\n41');
    await settled();
    expect(lines).toEqual(['41.2 mW/cm2']);
    await feed.close();
    expect(port().settings).toBeNull();
  });

  test('a garbled byte ends nothing, an unplugged meter is told of once', async () => {
    const feed = serialMeter({ baudRate: 9600 });
    const { lines, ends } = heardFrom(feed);
    await feed.open();
    port().send('41.2\n4');
    await settled();
    port().garble();
    await settled();
    port().send('41.3\n');
    await settled();
    expect(lines).toEqual(['41.2', '41.3']);
    expect(ends).toEqual([]);
    port().unplug();
    await settled();
    expect(ends).toEqual(['unplugged']);
    await feed.close();
    await feed.close();
  });

  test('is heard again when it is opened again', async () => {
    const feed = serialMeter({ baudRate: 9600 });
    const { lines, ends } = heardFrom(feed);
    for (const line of ['1', '2']) {
      await feed.open();
      port().send(`${line}\n`);
      await settled();
      await feed.close();
    }
    expect(lines).toEqual(['1', '2']);
    expect(ends).toEqual([]);
  });

  test('says why it does not open', async () => {
    port().choice = 'none';
    await expect(serialMeter({ baudRate: 9600 }).open()).rejects.toMatchObject({ fault: 'none-chosen' });
    port().choice = 'busy';
    await expect(serialMeter({ baudRate: 9600 }).open()).rejects.toMatchObject({ fault: 'busy' });
    Reflect.deleteProperty(navigator, 'serial');
    expect(hasSerial()).toBe(false);
    await expect(serialMeter({ baudRate: 9600 }).open()).rejects.toMatchObject({ fault: 'not-there' });
  });
});

describe('a HID device', () => {
  const viewOf = (text: string, length = 64) => {
    const bytes = new Uint8Array(length);
    bytes.set(new TextEncoder().encode(text));
    return new DataView(bytes.buffer);
  };

  test.each([
    ['41.2 W\r\n', '41.2 W\r\n'],
    ['\u00064 1.2\r', '4 1.2\r'],
    ['\u000241.2', '41'],
    ['\r\n', '\r\n'],
  ])('text of a report %j', (sent, text) => {
    expect(reportText(viewOf(sent))).toBe(text);
  });

  test('reports are put together to lines, and its end is told', async () => {
    let device: { oninputreport: ((event: { data: DataView }) => void) | null };
    const heard = new Map<string, (event: unknown) => void>();
    const chosen: unknown[] = [];
    Object.defineProperty(navigator, 'hid', {
      configurable: true,
      value: {
        requestDevice: async () => chosen,
        addEventListener: (kind: string, it: (event: unknown) => void) => heard.set(kind, it),
        removeEventListener: (kind: string) => heard.delete(kind),
      },
    });
    try {
      const feed = hidMeter();
      const [lines, ends] = [[] as string[], [] as string[]];
      feed.onLine((it) => lines.push(it));
      feed.onEnd((it) => ends.push(it.fault));
      await expect(feed.open()).rejects.toMatchObject({ fault: 'none-chosen' });
      device = { oninputreport: null, ...{ opened: false, open: async () => {}, close: async () => {} } };
      chosen.push(device);
      await feed.open();
      for (const it of ['41.', '2 W\n']) device.oninputreport?.({ data: viewOf(it, 8) });
      expect(lines).toEqual(['41.2 W']);
      heard.get('disconnect')?.({ device });
      expect(ends).toEqual(['unplugged']);
      expect(heard.size).toBe(0);
    } finally {
      Reflect.deleteProperty(navigator, 'hid');
    }
    expect(hasHid()).toBe(false);
    await expect(hidMeter().open()).rejects.toMatchObject({ fault: 'not-there' });
  });
});
