import { z } from 'zod';
import { formerNames, text, webAddress } from './fields.ts';

/** content/makers/<id>.yaml: one maker of panels. */
export const makerSchema = z.strictObject({
  name: text('Name of the maker.'),
  formerly: formerNames('Names that its file had before.').optional(),
  country: text('Where it is registered.').optional(),
  website: webAddress('Its site.').optional(),
  warrantyYears: z.number().min(0).max(100).optional().describe('Warranty it promises, years.'),
  returns: text('Its terms of return, in a few words.').optional(),
  note: text('Anything worth knowing about the maker, including any connection to the tester.').optional(),
});

export type Maker = z.output<typeof makerSchema>;
