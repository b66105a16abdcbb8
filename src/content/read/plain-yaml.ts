import { CORE_SCHEMA, load } from 'js-yaml';
import { lineFinder, type YamlData } from './parse-yaml.ts';

/** Whatever is no sign that one sees, but spaces and ends of lines. */
const UNSEEN = /(?![ \n])[\p{C}\p{Z}]/u;

/** A field's name that is a text to every reader: "true" and "null" would be none. */
const NAME = '(?!(?:[Tt]rue|TRUE|[Ff]alse|FALSE|[Nn]ull|NULL)[ :])[A-Za-z][A-Za-z0-9]*';

/** Numbers as hands write them: no 007, 1_000, 5e3 or -0, which readers take for different things. */
const NUMBER = '(?!-0(?:\\.0+)?(?![.0-9]))-?(?:0|[1-9][0-9]{0,14})(?:\\.[0-9]{1,15})?';

/** Begins with a letter, or is a day, a bound, or a number with something behind it; has no mark of YAML's in it. */
const words = (marks: string) => {
  const other = `[^ :#${marks}\\n]`;
  const start = `[A-Za-z/]|[0-9]{4}-[0-9]{2}-[0-9]{2}(?![0-9])|<${NUMBER}|${NUMBER} (?=${other})`;
  return `(?:${start})(?:${other}|:(?=${other})| (?=${other}))*`;
};

const QUOTED = `"[^"\\\\\\n]*"|'[^'\\n]*'`;

/** A value, or a list or a block of values in brackets, on one line; deeper ones are left to the other reader. */
const listOf = (value: string) => `\\[ ?(?:(?:${value})(?:, ?(?! ?\\])|(?= ?\\])))+ ?\\]`;
const blockOf = (value: string) => `\\{ ?(?:${NAME}: (?:${value})(?:, ?(?=[A-Za-z])|(?= ?\\})))+ ?\\}`;
const SINGLE = `${NUMBER}|${words(',\\[\\]{}')}|${QUOTED}`;
const IN_BRACKETS = `${SINGLE}|${listOf(SINGLE)}|${blockOf(SINGLE)}`;
const VALUE = `${words('')}|${NUMBER}|${QUOTED}|${listOf(IN_BRACKETS)}|${blockOf(IN_BRACKETS)}`;

/** A line that is empty, a comment, or a field or (a further line of) a value, which may begin an entry. */
const LINE = ` *(?:- +)*(?:${NAME}:(?= |$) *)?(?:(?:${VALUE}) *)?(?:(?<=^|[ ])#.*)?`;
/** Lines of another kind, and entries of nothing. */
const OTHER_LINE = new RegExp(`^(?!${LINE}$)|^ *(?:- *)+(?:#.*)?$`, 'm');

/** A text that a field leads in by `>-` or the like: lines that stand equally deep, deeper than the field. */
const TEXT_LINE = '[^ #\\n].*\\n';
const TEXT_BLOCK = new RegExp(`^( *)${NAME}: [>|]-?\\n(\\1 +)${TEXT_LINE}(?:\\2${TEXT_LINE})*`, 'gm');

/**
 * The data of a text that is written plainly, as nearly all files are: fields, entries and values in which no reader of
 * YAML sees anything else than another one. It is read by one that takes a tenth of the time of `parseYaml` and knows no
 * places, so that these are found only once they are asked for. Undefined for any other text, and for one with a slip in
 * it: of that the other reader has more to tell.
 */
export function plainYaml(text: string): YamlData | undefined {
  if (UNSEEN.test(text) || OTHER_LINE.test(text.replace(TEXT_BLOCK, ''))) return undefined;
  try {
    return { data: load(text, { schema: CORE_SCHEMA }), lineOf: lineFinder(text) };
  } catch {
    return undefined;
  }
}
