import { isBlock } from '../../schema/block.ts';
import type { FileEntry } from '../../schema/files/file-entry.ts';
import { sessionSchema } from '../../schema/session.ts';
import { type Field, fields } from '../fields.ts';
import type { Source } from '../source.ts';
import type { AnyFileReader } from './file-kind.ts';
import { FILE_READERS } from './readers.ts';

/** A file that a session names. */
export interface NamedFile {
  reader: AnyFileReader;
  /** Day of the session. */
  date: string;
  /** Where the session names it: `['spectra', 'red']`. */
  field: readonly PropertyKey[];
  /** As the schema reads it. */
  entry: FileEntry;
  /** The field of the front matter that holds its name. */
  at: Field;
}

/**
 * All files that a panel's sessions name, in the order of sessions and kinds. A block that its schema refuses names none:
 * what is wrong with it is told already.
 */
export function namedFiles(source: Source, readers: readonly AnyFileReader[] = FILE_READERS): NamedFile[] {
  return fields(source.data, ['sessions', '*']).flatMap(({ value: session, path }) => {
    if (!isBlock(session)) return [];
    const { date } = session;
    const day = date instanceof Date ? date.toISOString().slice(0, 10) : String(date);
    return readers.flatMap((reader) =>
      reader.places.flatMap(({ path: [top = '', ...inner] }) => {
        const parsed = blockOf(top, session[top]);
        return fields(parsed, inner, [top]).flatMap(({ value: entry, path: field }): NamedFile[] => {
          if (!isEntry(entry)) return [];
          return [{ reader, date: day, field, entry, at: nameField(session, path, field, entry) }];
        });
      }),
    );
  });
}

/** A block of a session as its schema reads it; undefined where it is not there, or is refused. */
function blockOf(top: string, value: unknown): unknown {
  if (value === undefined || !Object.hasOwn(sessionSchema.shape, top)) return undefined;
  return sessionSchema.shape[top as keyof typeof sessionSchema.shape].safeParse(value).data;
}

const isEntry = (it: unknown): it is FileEntry => isBlock(it) && typeof it.file === 'string';

/** The field in which a file's name stands: the entry itself, or `file` in it. */
function nameField(
  session: unknown,
  path: readonly PropertyKey[],
  field: readonly PropertyKey[],
  { file }: FileEntry,
): Field {
  const written = valueAt(session, field);
  return { path: [...path, ...field, ...(isBlock(written) ? ['file'] : [])], value: file };
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let value = data;
  for (const key of path) value = (value as Record<PropertyKey, unknown> | undefined)?.[key];
  return value;
}
