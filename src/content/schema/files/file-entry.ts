import { z } from 'zod';
import { fileReference } from '../fields.ts';

/** A file that a session names, with what else it says of it. */
export interface FileEntry {
  /** Its name: it lies beside the panel's index. */
  file: string;
}

/** A name without a folder, with one of some endings; capitals of an ending do not count. */
function namePattern(endings: readonly string[]): string {
  const any = endings.map((it) =>
    it.replace('.', '\\.').replace(/[a-z]/g, (letter) => `[${letter}${letter.toUpperCase()}]`),
  );
  return `^[^/\\\\]*(?:${any.join('|')})$`;
}

/**
 * The name of a file beside the panel's index. What it must end in is said to editors alone: the reading of files refuses
 * another ending in its own words, when it has looked at what is in the file.
 */
export function fileName(meaning: string, example: string, endings: readonly string[]) {
  return fileReference(meaning, example).meta({ pattern: namePattern(endings) });
}

/**
 * A file that a session names: its name alone, or a block with `file` and what else is to be said of it. Either way it
 * is read to the block.
 *
 * @param more fields beside `file`, each of which can be left out
 */
export function fileEntry<Shape extends z.ZodRawShape = Record<never, never>>(
  meaning: string,
  example: string,
  endings: readonly string[],
  more: Shape = {} as Shape,
) {
  const name = () => fileName(`${meaning} ${endingsText(endings)}, beside index.md.`, example, endings);
  const block = z.strictObject({ file: name(), ...more });
  return z
    .union([name().transform((file) => ({ file })), block], {
      error: () => 'the name of a file beside this one, or {file, …}',
    })
    .transform((it) => it as z.output<typeof block>)
    .describe(
      `${meaning} The name of a file beside index.md${Object.keys(more).length > 0 ? `, or {file, ${Object.keys(more).join(', ')}}` : ''}.`,
    );
}

function endingsText(endings: readonly string[]): string {
  return `A file that ends in ${endings.join(', ')}`;
}
