import { z } from 'zod';
import { curly } from './curly.ts';
import { isoDate } from './fields.ts';

/**
 * Where a fact was taken from and how far that was checked: `read` the source itself or a page quoting it,
 * `secondary` only a code, script or textbook that cites it, `memory` neither, `practice` a habit of the
 * trade without a source, `computed` arithmetic repeated independently.
 */
export const sourceStanding = z.enum(['read', 'secondary', 'memory', 'practice', 'computed']);

/** Text that is printed as it stands here, with the quotes that the pages’ Markdown has. */
const printed = (least: number) => z.string().min(least).overwrite(curly);

export const source = z.strictObject({
  text: printed(3).describe('The source: title, edition, clause; or the habit of the trade.'),
  standing: sourceStanding.describe(
    'read: seen itself or quoted; secondary: seen only in something that cites it; memory: from memory; practice: common practice, no source; computed: arithmetic repeated independently',
  ),
});

/**
 * Which text a page is. The product's counts its editions; a tester's own, which takes its place, says which of them it was
 * written for.
 */
export const textEdition = {
  edition: z
    .int()
    .positive()
    .optional()
    .describe(
      'Of the product’s own text: counted up whenever what it says has changed. Left out in a text of your own.',
    ),
  standsFor: z
    .int()
    .positive()
    .optional()
    .describe('In a text of your own: the edition of the product’s text in whose place it stands.'),
};

/**
 * Front matter of the page of a method, `methods/<metric>.mdx` among the product's texts or in the content folder. The
 * formula and the version come from the registry in the code.
 */
export const methodSchema = z.strictObject({
  ...textEdition,
  summary: printed(20).describe('One or two sentences: what the figure says.'),
  goodFor: z.array(printed(0)).min(1).describe('What the figure is good for, one point a line.'),
  hides: z.array(printed(0)).min(1).describe('What the figure hides, one point a line.'),
  sources: z.array(source).min(1).describe('Published sources and habits of the trade behind it.'),
  versions: z
    .array(
      z.strictObject({
        version: z.int().positive().describe('Version of the method, counted from 1.'),
        date: isoDate('Day from which figures carry this version.'),
        was: z
          .strictObject({
            formula: z.string().min(3).optional().describe('Its formula in TeX, where that was another.'),
            text: z.string().min(20).optional().describe('What its page said of it, in Markdown.'),
          })
          .optional()
          .describe('Of a version that has been replaced: how it worked, kept to be read at its address.'),
        change: printed(3).describe('What changed, and whether published numbers moved.'),
      }),
    )
    .default([])
    .describe(
      'History, oldest first; the last must be the version that the code computes. Left out in a text of your own, where the product’s stands.',
    ),
  related: z.array(z.string()).default([]).describe('Ids of methods worth reading next.'),
});

export type MethodProse = z.output<typeof methodSchema>;
