/// <reference types="w3c-web-hid" />
/** A meter that sends text in the reports of a HID device (Web HID). */
import { feedError, type LineEnd, lineSplitter, listeners, type MeterFeed, MeterFeedError } from './meter-feed.ts';

export interface HidSettings {
  /** `report` where every report is a line of its own, whatever it ends with; `any` where left out. */
  readonly lineEnd?: LineEnd | 'report';
}

/** Whether this browser can read HID devices at all. */
export const hasHid = (): boolean => 'hid' in navigator;

/** Codes of characters that are filling and not text. */
const isFilling = (code: number) => code === 0 || code === 0xff;

/** The text in a report: its bytes without what fills it up, or a count of bytes in front of it. */
export function reportText(report: DataView): string {
  const bytes = new Uint8Array(report.buffer, report.byteOffset, report.byteLength);
  const [first = 0, ...rest] = bytes;
  // Bridges from serial ports put the number of bytes that are used first; no text begins with such a sign.
  const isCount = first > 0 && first < 0x20 && ![9, 10, 13].includes(first) && first <= rest.length;
  const used = isCount ? bytes.subarray(1, 1 + first) : bytes;
  return new TextDecoder().decode(used.filter((it) => !isFilling(it)));
}

/** A feed of a device that the tester chooses when it is opened. */
export function hidMeter({ lineEnd = 'any' }: HidSettings = {}): MeterFeed {
  const [lines, ends] = [listeners<string>(), listeners<MeterFeedError>()];
  let device: HIDDevice | undefined;
  const lose = ({ device: lost }: HIDConnectionEvent) => {
    if (lost !== device) return;
    device = undefined;
    navigator.hid.removeEventListener('disconnect', lose);
    ends.tell(new MeterFeedError('unplugged'));
  };

  return {
    open: async () => {
      if (device) return;
      if (!hasHid()) throw new MeterFeedError('not-there');
      try {
        const [chosen] = await navigator.hid.requestDevice({ filters: [] });
        if (!chosen) throw new MeterFeedError('none-chosen');
        if (!chosen.opened) await chosen.open();
        device = chosen;
        const split = lineEnd === 'report' ? lines.tell : lineSplitter(lineEnd, lines.tell);
        chosen.oninputreport = ({ data }) => split(reportText(data));
        navigator.hid.addEventListener('disconnect', lose);
      } catch (error) {
        throw feedError(error);
      }
    },
    close: async () => {
      const closing = device;
      device = undefined;
      if (!closing) return;
      navigator.hid.removeEventListener('disconnect', lose);
      closing.oninputreport = null;
      await closing.close().catch(() => undefined);
    },
    onLine: lines.add,
    onEnd: ends.add,
  };
}
