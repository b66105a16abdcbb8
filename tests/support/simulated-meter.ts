/** A browser’s serial port that is not there: a test plugs it in and out, and says what it sends. */

/** What a test does with the port of `simulateSerial`. */
export interface SimulatedSerial {
  /** Text as it comes over the wire; any bytes may be in one piece. */
  send(text: string): void;
  /** A byte that came garbled: the stream ends, and the port has another one. */
  garble(): void;
  unplug(): void;
  /** What the port was opened with; null while it is closed. */
  settings: SerialOptions | null;
  /** How often the browser asked for a port. */
  asked: number;
  /** What the tester does when asked: choose the port, none, or one that another program has. */
  choice: 'port' | 'none' | 'busy';
}

/**
 * Puts a serial port into `navigator`, which `window.simulatedSerial` then drives. It uses nothing from outside itself:
 * `page.addInitScript(simulateSerial)` does the same to a page.
 */
export function simulateSerial(): void {
  let stream: ReadableStreamDefaultController<Uint8Array> | undefined;
  const fresh = () =>
    new ReadableStream<Uint8Array>({
      start: (it) => {
        stream = it;
      },
    });
  const port = {
    readable: null as ReadableStream<Uint8Array> | null,
    open: async (settings: SerialOptions) => {
      if (driven.choice === 'busy') throw new DOMException('Failed to open serial port.', 'NetworkError');
      driven.settings = settings;
      port.readable = fresh();
    },
    close: async () => {
      if (port.readable?.locked) throw new TypeError('The port is locked.');
      driven.settings = null;
      port.readable = null;
    },
  };
  const driven: SimulatedSerial = {
    settings: null,
    asked: 0,
    choice: 'port',
    send: (text) => stream?.enqueue(new TextEncoder().encode(text)),
    garble: () => {
      const broken = stream;
      port.readable = fresh();
      broken?.error(new DOMException('Framing error', 'FramingError'));
    },
    unplug: () => {
      port.readable = null;
      stream?.error(new DOMException('The device has been lost.', 'NetworkError'));
    },
  };
  Object.defineProperty(navigator, 'serial', {
    configurable: true,
    value: {
      requestPort: async () => {
        driven.asked++;
        if (driven.choice === 'none') throw new DOMException('No port selected by the user.', 'NotFoundError');
        return port;
      },
    },
  });
  Object.assign(globalThis, { simulatedSerial: driven });
}
