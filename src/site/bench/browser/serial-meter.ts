/// <reference types="w3c-web-serial" />
/** A meter on a serial port (Web Serial). */
import { feedError, type LineEnd, lineSplitter, listeners, type MeterFeed, MeterFeedError } from './meter-feed.ts';

/** How the meter sends, as its manual says. */
export interface SerialSettings {
  readonly baudRate: number;
  /** 8 where left out. */
  readonly dataBits?: 7 | 8;
  /** 1 where left out. */
  readonly stopBits?: 1 | 2;
  /** None where left out. */
  readonly parity?: 'none' | 'even' | 'odd';
  /** `any` where left out. */
  readonly lineEnd?: LineEnd;
}

/** Rates that meters usually have. */
export const BAUD_RATES = [1200, 2400, 4800, 9600, 19200, 38400, 57600, 115200] as const;

/** Whether this browser can read a serial port at all. */
export const hasSerial = (): boolean => 'serial' in navigator;

/** A feed of a port that the tester chooses when it is opened. */
export function serialMeter({ lineEnd = 'any', ...settings }: SerialSettings): MeterFeed {
  const [lines, ends] = [listeners<string>(), listeners<MeterFeedError>()];
  let port: SerialPort | undefined;
  let reader: ReadableStreamDefaultReader<Uint8Array> | undefined;
  let reading: Promise<void> | undefined;

  /** Reads until the port is closed, unplugged or lost. A garbled byte ends one stream; the port then has another. */
  async function read(from: SerialPort): Promise<void> {
    while (port === from && from.readable) {
      const splitter = lineSplitter(lineEnd, lines.tell);
      const decoder = new TextDecoder();
      reader = from.readable.getReader() as ReadableStreamDefaultReader<Uint8Array>;
      try {
        for (;;) {
          const { value, done } = await reader.read();
          if (done) break;
          splitter(decoder.decode(value, { stream: true }));
        }
      } catch (error) {
        // After a framing or parity error the port can be read on; after any other it has no stream any more.
        if (port === from && !from.readable) {
          port = undefined;
          ends.tell(new MeterFeedError('unplugged', error));
        }
      } finally {
        reader.releaseLock();
        reader = undefined;
      }
    }
  }

  return {
    open: async () => {
      if (port) return;
      if (!hasSerial()) throw new MeterFeedError('not-there');
      try {
        const chosen = await navigator.serial.requestPort();
        await chosen.open(settings);
        port = chosen;
        reading = read(chosen);
      } catch (error) {
        throw feedError(error);
      }
    },
    close: async () => {
      const closing = port;
      port = undefined;
      await reader?.cancel().catch(() => undefined);
      await reading;
      await closing?.close().catch(() => undefined);
    },
    onLine: lines.add,
    onEnd: ends.add,
  };
}
