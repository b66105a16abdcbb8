import { z } from 'zod';
import { text } from './fields.ts';
import { source } from './method.ts';

/** Front matter of content/cautions.mdx. */
export const cautionsSchema = z.strictObject({
  title: text('Title of the page.'),
  summary: text('One or two sentences.'),
  sources: z.array(source).default([]).describe('Where the cautions were taken from.'),
});

export type Cautions = z.output<typeof cautionsSchema>;
