import { harmless, publishedPanels } from '../data-parts.ts';
import { PANEL_FIELD, REQUIRED, type Table, TO_PANEL } from './table.ts';

/** A row a dated price. */
export const PRICES_TABLE: Table<'prices'> = {
  name: 'prices',
  title: 'Prices',
  description: 'Every dated price, newest first. Prices in other currencies are converted at the rates of the package.',
  fields: [
    PANEL_FIELD,
    { name: 'date', type: 'date', description: 'Day on which it was seen or paid.', constraints: REQUIRED },
    { name: 'list', type: 'number', description: 'List price.' },
    { name: 'paid', type: 'number', description: 'What a buyer really paid that day, shipping included.' },
    {
      name: 'currency',
      type: 'string',
      description: 'Currency of the two (ISO 4217).',
      constraints: { required: true, pattern: '[A-Z]{3}' },
    },
    {
      name: 'real_price',
      type: 'number',
      description: 'What counts: paid, or the list price where nothing was paid, in the base currency.',
      constraints: REQUIRED,
    },
    { name: 'code_needed', type: 'boolean', description: 'The paid price needs a code.', constraints: REQUIRED },
    {
      name: 'tester_earns',
      type: 'boolean',
      description: 'The tester earns by the code or link.',
      constraints: REQUIRED,
    },
    { name: 'link', type: 'string', description: 'Where it was offered.' },
    { name: 'note', type: 'string', description: 'What the tester noted beside it.' },
  ],
  primaryKey: [],
  foreignKeys: [TO_PANEL],
  *rows(ledger) {
    for (const { slug, prices } of publishedPanels(ledger)) {
      for (const { price, figure } of prices) {
        yield [
          slug,
          price.date,
          price.list ?? null,
          price.paid ?? null,
          price.currency,
          figure.value,
          price.discountCode.needed,
          price.discountCode.testerEarns || price.paidLink,
          price.link ?? null,
          price.note === undefined ? null : harmless(price.note),
        ];
      }
    }
  },
};
