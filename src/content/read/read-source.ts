import { isUtf8 } from 'node:buffer';
import { readFileSync } from 'node:fs';

import type { z } from 'zod';
import type { Problem } from '../schema/problem.ts';
import { readMended } from './read-mended.ts';
import { frontMatterSource, type SourceRead, yamlSource } from './source-text.ts';

export type { SourceRead };

/** Reads a YAML file; the schema tells what was meant where a slip has hidden it. */
export function readYaml(path: string, file: string, schema: z.ZodType): SourceRead {
  const decoded = decode(path, file);
  return 'problems' in decoded ? decoded : yamlSource(decoded.text, { path, file }, schema, readMended);
}

/** Reads a Markdown or MDX file with front matter between two lines of three hyphens. */
export function readFrontMatter(path: string, file: string, schema: z.ZodType): SourceRead {
  const decoded = decode(path, file);
  return 'problems' in decoded ? decoded : frontMatterSource(decoded.text, { path, file }, schema, readMended);
}

/** The file's text, or the line with the first byte that is not UTF-8. */
function decode(path: string, file: string): { text: string } | { problems: Problem[] } {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : error;
    const found =
      code === 'EISDIR' ? 'a folder' : code === 'ENOENT' ? 'a link that leads nowhere' : `what can't be read (${code})`;
    return { problems: [{ file, field: '', found, wanted: 'a file' }] };
  }
  if (isUtf8(bytes)) return { text: bytes.toString('utf8') };
  let start = 0;
  let line = 1;
  for (;;) {
    const end = bytes.indexOf(0x0a, start);
    const part = bytes.subarray(start, end < 0 ? undefined : end);
    if (!isUtf8(part)) {
      const at = firstBadByte(part);
      return {
        problems: [
          {
            file,
            line,
            field: '',
            found: `byte ${at + 1} of the line, 0x${part[at]?.toString(16).toUpperCase().padStart(2, '0')}, which is not UTF-8 (in "${part.toString('latin1').trim().slice(0, 60)}")`,
            wanted: 'text in UTF-8',
            hint: 'save the file again with the encoding UTF-8',
          },
        ],
      };
    }
    if (end < 0) throw new Error(`${file}: bytes that are not UTF-8, but none in any line`);
    start = end + 1;
    line++;
  }
}

function firstBadByte(part: Buffer): number {
  // Longest valid start, then one further: sequences are at most four bytes, so a whole one may follow it.
  let good = 0;
  while (good < part.length) {
    const width = [1, 2, 3, 4].find((n) => good + n <= part.length && isUtf8(part.subarray(good, good + n)));
    if (!width) break;
    good += width;
  }
  return good;
}
