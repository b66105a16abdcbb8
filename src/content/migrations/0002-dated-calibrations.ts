import { isMap, isScalar, parseDocument, type YAMLMap } from 'yaml';
import type { Change, Migration } from './migration.ts';

const INSTRUMENT = /^instruments\/[^/]+\.yaml$/;

/**
 * An instrument had one calibration, which a recalibration wrote over; and one number for oblique light, a standard
 * uncertainty in % as f2 is taken for one. Since format 2 it has a list of dated calibrations, and oblique light is told
 * by f2 or by angles.
 */
export const datedCalibrations: Migration = {
  to: 2,
  run: (files) =>
    [...files].flatMap(([path, text]): Change[] => {
      if (!INSTRUMENT.test(path)) return [];
      const listed = withCalibrations(text);
      const after = withAngularBlock(listed ?? text);
      return [
        ...(listed
          ? [{ path, after: listed, why: 'calibrations is a list now, so that earlier sessions keep theirs' }]
          : []),
        ...(after ? [{ path, after, why: 'angularResponse names what its number is: f2' }] : []),
      ];
    }),
};

/** The text with a list of one calibration; undefined where there is no single one. */
function withCalibrations(text: string): string | undefined {
  const block = blockOf(text);
  const pair = block?.items.find((it) => isScalar(it.key) && it.key.value === 'calibration');
  if (!block || !pair || block.has('calibrations') || !isScalar(pair.key) || !isMap(pair.value)) return undefined;
  const [keyStart = 0, keyEnd = 0] = pair.key.range ?? [];
  const [start = 0, end = 0] = pair.value.range ?? [];
  const renamed = (rest: string) => `${text.slice(0, keyStart)}calibrations${rest}`;
  if (pair.value.flow) return renamed(`:\n  - ${text.slice(start, end)}${text.slice(end)}`);
  const line = text.lastIndexOf('\n', start - 1) + 1;
  const [first = '', ...more] = text.slice(line, end).split('\n');
  const indent = ' '.repeat(start - line);
  const entries = [
    `${indent}- ${first.slice(indent.length)}`,
    ...more.map((it) => (it.trim() === '' ? it : `  ${it}`)),
  ];
  return renamed(`${text.slice(keyEnd, line)}${entries.join('\n')}${text.slice(end)}`);
}

/** The text with a bare number for oblique light named as f2; undefined where none stands. */
function withAngularBlock(text: string): string | undefined {
  const value = blockOf(text)?.get('angularResponse', true);
  if (!isScalar(value) || typeof value.value !== 'number') return undefined;
  const [start = 0, end = 0] = value.range ?? [];
  return `${text.slice(0, start)}{ f2: ${text.slice(start, end)} }${text.slice(end)}`;
}

/** The file's fields; undefined where it can't be read, which the check tells. */
function blockOf(text: string): YAMLMap | undefined {
  const { contents, errors } = parseDocument(text);
  return errors.length === 0 && isMap(contents) ? contents : undefined;
}
