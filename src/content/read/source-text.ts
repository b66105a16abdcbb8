import type { z } from 'zod';
import type { Problem } from '../schema/problem.ts';
import { withoutGaps } from './gaps.ts';
import type { ReadYaml } from './read-as-is.ts';
import type { Source } from './source.ts';

/** A file's source where it can be read, if need be with a slip mended, and what is wrong with its YAML. */
export interface SourceRead {
  source?: Source;
  problems: Problem[];
}

/** A file as messages name it, and where it lies. */
type Place = Pick<Source, 'path' | 'file'>;

/** How YAML is read: as it stands where the program itself has laid it out, or with a slip mended (`read-mended.ts`). */
type YamlReader = (yaml: string, schema: z.ZodType) => ReadYaml;

/** The text of a YAML file as a source; the schema tells what was meant where a slip has hidden it. Touches no disk. */
export function yamlSource(text: string, place: Place, schema: z.ZodType, read: YamlReader): SourceRead {
  return parse(place, plain(text), schema, { linesBefore: 0, body: '', bodyLine: 0, read });
}

/** The same for the text of a Markdown or MDX file with front matter between two lines of three hyphens. */
export function frontMatterSource(text: string, place: Place, schema: z.ZodType, read: YamlReader): SourceRead {
  const { file } = place;
  const lines = plain(text).split('\n');
  const isFence = (line: string | undefined) => line?.trimEnd() === '---';
  if (!isFence(lines[0])) {
    return fault(
      file,
      1,
      lines[0]?.trim() ? `"${lines[0].trim().slice(0, 60)}"` : 'an empty line',
      'front matter: a line of three hyphens, the fields, and a line of three hyphens',
    );
  }
  const end = lines.findIndex((line, i) => i > 0 && isFence(line));
  if (end < 0) {
    return fault(file, lines.length, 'the end of the file', 'a line of three hyphens that ends the front matter');
  }
  const [yaml, body] = [lines.slice(1, end).join('\n'), lines.slice(end + 1).join('\n')];
  return parse(place, yaml, schema, { linesBefore: 1, body, bodyLine: end + 2, read });
}

function fault(file: string, line: number, found: string, wanted: string): { problems: Problem[] } {
  return { problems: [{ file, line, field: '', found, wanted }] };
}

/** Without a byte order mark, its lines ended in one way. */
const plain = (text: string) => text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');

interface About extends Pick<Source, 'body' | 'bodyLine'> {
  linesBefore: number;
  read: YamlReader;
}

function parse(
  place: Place,
  yaml: string,
  schema: z.ZodType,
  { linesBefore, body, bodyLine, read: how }: About,
): SourceRead {
  const { read, problems: slips } = how(yaml, schema);
  const problems = slips.map((slip) => ({ file: place.file, field: '', ...slip, line: slip.line + linesBefore }));
  if (!read) return { problems };
  const { data, kept, gaps, asWritten } = withoutGaps(read.data, schema);
  const lineInFile = (path: readonly PropertyKey[]) => read.lineOf(path) + linesBefore;
  const lineOf = (path: readonly PropertyKey[]) => lineInFile(asWritten(path));
  const source = { ...place, data, yaml, yamlLine: linesBefore + 1, body, bodyLine, lineOf };
  if (gaps.length === 0) return { source, problems };
  const marked = gaps.map((path) => ({ path, line: lineInFile(path) }));
  return { source: { ...source, unfinished: { gaps: marked, kept, lineOf: lineInFile, asWritten } }, problems };
}
