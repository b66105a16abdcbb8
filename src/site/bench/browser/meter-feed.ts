/**
 * A meter that sends lines of text by itself: the one shape that a serial port, a HID device and a simulated meter
 * have. Nothing is known of any maker's protocol: what a line means, `meter-line.ts` makes out with the tester's pattern.
 */

/** What lines end with. `any` takes a line feed, a carriage return, or both. */
export type LineEnd = 'any' | 'lf' | 'cr' | 'crlf';

/**
 * Why a feed did not open or has ended: `not-there` the browser has no way to it, `none-chosen` the tester chose no device,
 * `busy` another program or window has it, `unplugged`, `refused` the system or the browser forbids it, `failed` anything
 * else, with the browser's own words.
 */
export type FeedFault = 'not-there' | 'none-chosen' | 'busy' | 'unplugged' | 'refused' | 'failed';

export class MeterFeedError extends Error {
  readonly fault: FeedFault;
  constructor(fault: FeedFault, cause?: unknown) {
    super(cause instanceof Error ? cause.message : `meter feed: ${fault}`, { cause });
    this.fault = fault;
  }
}

export interface MeterFeed {
  /**
   * Opens it. To be called from a press: the browser then asks the tester which device it may be, and asks nothing at
   * any other time.
   *
   * @throws MeterFeedError
   */
  open(): Promise<void>;
  /** Lets go of the device. Closing twice does no harm. */
  close(): Promise<void>;
  /** Hears every line, without its end; gives back what ends that. */
  onLine(heard: (line: string) => void): () => void;
  /** Hears why a feed that was open has ended by itself, once. */
  onEnd(heard: (error: MeterFeedError) => void): () => void;
}

const ENDS: Readonly<Record<LineEnd, RegExp>> = { any: /\r\n|\r|\n/, lf: /\n/, cr: /\r/, crlf: /\r\n/ };

/** A line that never ends is cut: nothing a meter sends is so long. */
const LONGEST_UNENDED = 4096;

/** Puts pieces of text together and hands on every whole line. */
export function lineSplitter(end: LineEnd, line: (text: string) => void): (piece: string) => void {
  let rest = '';
  return (piece) => {
    rest += piece;
    // A carriage return at the end of a piece may have its line feed in the next.
    const waits = end === 'any' && rest.endsWith('\r');
    const lines = (waits ? rest.slice(0, -1) : rest).split(ENDS[end]);
    rest = (lines.pop() ?? '').slice(-LONGEST_UNENDED) + (waits ? '\r' : '');
    for (const it of lines) line(it);
  };
}

/** Those who hear something. */
export function listeners<T>() {
  const all = new Set<(it: T) => void>();
  return {
    add: (heard: (it: T) => void) => {
      all.add(heard);
      return () => {
        all.delete(heard);
      };
    },
    tell: (it: T) => {
      for (const heard of all) heard(it);
    },
  };
}

/** The browser's error in our terms. */
export function feedError(error: unknown): MeterFeedError {
  if (error instanceof MeterFeedError) return error;
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  const faults: Record<string, FeedFault> = {
    NotFoundError: 'none-chosen',
    SecurityError: 'refused',
    NotAllowedError: 'refused',
    InvalidStateError: 'busy',
    NetworkError: 'busy',
  };
  return new MeterFeedError(faults[name] ?? 'failed', error);
}
