import { z } from 'zod';
import { prose, text } from './fields.ts';
import { source, textEdition } from './method.ts';

/** Front matter of the page of cautions, `cautions.mdx` among the product's texts or in the content folder. */
export const cautionsSchema = z.strictObject({
  ...textEdition,
  title: text('Title of the page.'),
  summary: prose('One or two sentences.'),
  sources: z.array(source).default([]).describe('Where the cautions were taken from.'),
});

export type Cautions = z.output<typeof cautionsSchema>;
