/** The pad's own file of a run, by which runs go from one tester to another and to the command line. */
import { z } from 'zod';
import type { RunLog } from './run.ts';

/** Goes up when a file of before is read otherwise. */
export const PAD_FORMAT = 1;
const KIND = 'bench run';

/** A file that is none of the pad's, or is broken: where, and what is wanted there. */
export class PadFileError extends Error {
  readonly field: string;
  readonly wanted: string;

  constructor(field: string, wanted: string) {
    super(`${field || 'the file'}: ${wanted}`);
    this.field = field;
    this.wanted = wanted;
  }
}

const texts = z.record(z.string(), z.string());
const day = z.iso.date({ error: () => 'a day as YYYY-MM-DD' });
const grid = z.object({ rows: z.int().min(1).max(100), columns: z.int().min(1).max(100), inset: z.string() });
const panel = z.object({
  slug: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, { error: () => 'lower-case letters, digits and single hyphens' }),
  isNew: z.boolean(),
  maker: z.string(),
  model: z.string(),
});
const photo = z.object({
  // It becomes the name of a file beside the panel's.
  file: z.string().regex(/^[^/\\]+$/, { error: () => 'a name without a folder' }),
  shows: z.string(),
  by: z.string().exactOptional(),
});
const entry = z.object({
  id: z.int().positive(),
  path: z.string().max(200),
  written: z.string().max(500),
  at: z.string(),
  struck: z.string().exactOptional(),
  accepted: z.string().exactOptional(),
});
const run = z.object({
  id: z.string(),
  panel,
  date: day,
  methodVersion: z.int().positive(),
  instruments: texts,
  grid,
  settings: texts,
  carried: texts,
  entries: z.array(entry),
  texts,
  photos: z.array(photo),
  isFinished: z.boolean(),
});
const id = z.int().positive();
const act = z.union([
  z.object({ kind: z.literal('enter'), path: z.string(), written: z.string(), at: z.string() }),
  z.object({ kind: z.literal('strike'), id, reason: z.string() }),
  z.object({ kind: z.literal('unstrike'), id }),
  z.object({ kind: z.literal('correct'), id, written: z.string(), reason: z.string(), at: z.string() }),
  z.object({ kind: z.literal('accept'), id, reason: z.string() }),
  z.object({ kind: z.literal('set'), field: z.literal('date'), value: day }),
  z.object({ kind: z.literal('set'), field: z.literal('grid'), value: grid }),
  z.object({ kind: z.literal('set'), field: z.literal('finished'), value: z.boolean() }),
  z.object({ kind: z.literal('set'), field: z.literal('panel'), value: panel }),
  z.object({
    kind: z.literal('set'),
    field: z.enum(['instruments', 'settings', 'carried', 'texts']),
    key: z.string(),
    value: z.string(),
  }),
  z.object({ kind: z.literal('photo'), file: photo.shape.file, shows: z.string() }),
  z.object({ kind: z.literal('unphoto'), file: z.string() }),
]);
const padFile = z.object({
  kind: z.literal(KIND, { error: () => `"${KIND}"` }),
  format: z.literal(PAD_FORMAT, { error: () => `${PAD_FORMAT}; another version of the program wrote it` }),
  start: run,
  acts: z.array(act),
  undone: z.array(act),
});

/** A run with all that was done, as text. */
export function exportRun({ start, acts, undone }: RunLog): string {
  return `${JSON.stringify({ kind: KIND, format: PAD_FORMAT, start, acts, undone }, null, 1)}\n`;
}

/**
 * The run in a pad's file.
 *
 * @throws PadFileError where it is none: the field, and what is wanted there
 */
export function importRun(text: string): RunLog {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw new PadFileError('', 'a file that the bench pad or `bench write` has made');
  }
  const read = padFile.safeParse(data);
  if (!read.success) {
    const [issue] = read.error.issues;
    throw new PadFileError((issue?.path ?? []).join('.'), issue?.message ?? '');
  }
  const { start, acts, undone } = read.data;
  return { start, acts, undone };
}

/** The name that a pad's file is saved under. */
export const padFileName = ({ start }: RunLog) => `${start.panel.slug}-${start.date}.bench.json`;
