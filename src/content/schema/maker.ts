import { z } from 'zod';
import { formerNames, number, prose, text, webAddress } from './fields.ts';

/** content/makers/<id>.yaml: one maker of panels. */
export const makerSchema = z.strictObject({
  name: text('Name of the maker.', 'Kelpwright'),
  formerly: formerNames('Names that its file had before.').optional(),
  country: text('Where it is registered.', 'Ireland').optional(),
  website: webAddress('Its site.', 'https://kelpwright.example').optional(),
  warrantyYears: number('Warranty it promises, years.', { min: 0, max: 100 }, 3).optional(),
  returns: prose('Its terms of return, in a few words.', '60 days, return postage paid').optional(),
  note: prose(
    'Anything worth knowing about the maker, including any connection to the tester.',
    'Sells from its own shop only',
  ).optional(),
});

export type Maker = z.output<typeof makerSchema>;
