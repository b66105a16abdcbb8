import { closeSync, openSync, readSync, writeSync } from 'node:fs';
import { DefaultDeserializer, DefaultSerializer } from 'node:v8';

declare module 'node:v8' {
  interface DefaultSerializer {
    /** Node calls it for each list of numbers; the types do not say so. */
    _writeHostObject(view: NodeJS.ArrayBufferView): void;
  }
  interface DefaultDeserializer {
    _readHostObject(): unknown;
  }
}

/** Kinds of lists of numbers whose bytes stand behind the rest of a file. Their places in the list are what the file says. */
const KINDS = [Float64Array, Float32Array, Uint8Array, Uint8ClampedArray, Uint16Array, Int16Array] as const;
type Numbers = InstanceType<(typeof KINDS)[number]>;

/** Bytes from which a list stands there. Shorter ones are written as V8 writes them. */
const LONG = 64 * 1024;

const LENGTH_BYTES = 4;

class Writer extends DefaultSerializer {
  /** Long lists, in the order in which they were met. */
  readonly long: Numbers[] = [];

  override _writeHostObject(view: NodeJS.ArrayBufferView): void {
    const kind = view.byteLength < LONG ? -1 : KINDS.indexOf(view.constructor as (typeof KINDS)[number]);
    this.writeUint32(kind + 1);
    if (kind < 0) {
      super._writeHostObject(view);
      return;
    }
    const numbers = view as Numbers;
    this.writeUint32(numbers.length);
    this.long.push(numbers);
  }
}

class Reader extends DefaultDeserializer {
  readonly #file: number;

  constructor(plain: Buffer, file: number) {
    super(plain);
    this.#file = file;
  }

  override _readHostObject(): unknown {
    const Kind = KINDS[this.readUint32() - 1];
    if (!Kind) return super._readHostObject();
    const numbers = new Kind(this.readUint32());
    fill(numbers, this.#file);
    return numbers;
  }
}

/** Writes plain data with its lists of numbers, without having it in memory a second time. */
export function writeKept(path: string, data: unknown): void {
  const writer = new Writer();
  writer.writeHeader();
  writer.writeValue(data);
  const plain = writer.releaseBuffer();
  const length = Buffer.alloc(LENGTH_BYTES);
  length.writeUInt32LE(plain.length);
  const file = openSync(path, 'w');
  try {
    for (const part of [length, plain, ...writer.long]) writeWhole(part, file);
  } finally {
    closeSync(file);
  }
}

/**
 * Reads what `writeKept` has written, lists of numbers straight into their own memory.
 *
 * @throws where there is no such file, or it was written by another version of V8, or is cut short
 */
export function readKept(path: string): unknown {
  const file = openSync(path, 'r');
  try {
    const length = Buffer.alloc(LENGTH_BYTES);
    fill(length, file);
    const plain = Buffer.alloc(length.readUInt32LE());
    fill(plain, file);
    const reader = new Reader(plain, file);
    reader.readHeader();
    return reader.readValue();
  } finally {
    closeSync(file);
  }
}

const bytesOf = ({ buffer, byteOffset, byteLength }: NodeJS.ArrayBufferView) =>
  new Uint8Array(buffer, byteOffset, byteLength);

function writeWhole(part: NodeJS.ArrayBufferView, file: number): void {
  const bytes = bytesOf(part);
  for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
}

function fill(part: NodeJS.ArrayBufferView, file: number): void {
  const bytes = bytesOf(part);
  for (let at = 0; at < bytes.length; ) {
    const read = readSync(file, bytes, at, bytes.length - at, null);
    if (read === 0) throw new Error('the file is cut short');
    at += read;
  }
}
