import { EditError } from './edit-error.ts';
import { type Splice, splice } from './splice.ts';

/** A content file's text, as it lies on the disk, and the YAML in it, with line ends of one kind. */
export interface ContentText {
  raw: string;
  /** The whole YAML file, or the front matter without its fences. Lines end with `\n`. */
  yaml: string;
  /** What follows the front matter, its lines as on the disk; empty for a YAML file. */
  body: string;
  /** The file's text with pieces of `yaml` replaced, and every other byte as it was. */
  with(splices: readonly Splice[]): string;
}

/**
 * Takes a content file apart. Which part is YAML is decided as `read-source.ts` does.
 *
 * @param file its name, by which YAML files are told from texts with front matter
 * @throws EditError where there is no front matter, or no end to it
 */
export function openContent(raw: string, file: string): ContentText {
  const ends = [...raw.matchAll(/\r\n?|\n/g)];
  // Where each character of the text with line ends of one kind lies in the raw one.
  const text = raw.replace(/\r\n?/g, '\n');
  const places = placesOf(raw);
  const [start, end] = yamlPart(text, file);
  const crlf = ends.filter(([it]) => it === '\r\n').length;
  const cr = ends.filter(([it]) => it === '\r').length;
  const newLine = crlf * 2 > ends.length ? '\r\n' : cr * 2 > ends.length ? '\r' : '\n';
  return {
    raw,
    yaml: text.slice(start, end),
    body: file.endsWith('.yaml') ? '' : bodyOf(raw, places(end)),
    with: (splices) =>
      splice(
        raw,
        splices.map((it) => ({
          start: places(start + it.start),
          end: places(start + it.end),
          text: it.text.replaceAll('\n', newLine),
        })),
      ),
  };
}

function placesOf(raw: string): (offset: number) => number {
  if (!raw.includes('\r')) return (offset) => offset;
  const places: number[] = [];
  for (let at = 0; at < raw.length; at++) {
    places.push(at);
    if (raw[at] === '\r' && raw[at + 1] === '\n') at++;
  }
  places.push(raw.length);
  return (offset) => places[offset] ?? raw.length;
}

/** Start and end of the YAML in a text whose lines end with `\n`; the end leaves the last line's own end out. */
function yamlPart(text: string, file: string): [start: number, end: number] {
  const mark = text.startsWith('\ufeff') ? 1 : 0;
  if (file.endsWith('.yaml')) return [mark, text.length];
  const lines = text.slice(mark).split('\n');
  const isFence = (line: string | undefined) => line?.trimEnd() === '---';
  const fence = lines.findIndex((line, i) => i > 0 && isFence(line));
  if (!isFence(lines[0]) || fence < 0) {
    throw new EditError(`${file} has no front matter between two lines of three hyphens; nothing was changed.`);
  }
  const start = mark + (lines[0]?.length ?? 0) + 1;
  const length = lines.slice(1, fence).reduce((sum, line) => sum + line.length + 1, 0);
  return [start, start + Math.max(0, length - 1)];
}

/** What follows the line with the closing fence. */
function bodyOf(raw: string, yamlEnd: number): string {
  const fence = /^(?:\r\n?|\n)?---[^\S\r\n]*(?:\r\n?|\n|$)/.exec(raw.slice(yamlEnd));
  return raw.slice(yamlEnd + (fence?.[0].length ?? 0));
}
