/**
 * What calculates with other prices and sums, what asks for them and what shows what they lead to: one file, which is loaded
 * when somebody asks.
 */
export { clearAnswer, paintAnswer } from './budget-answer.ts';
export { paintFrontier, stepUpWords } from './own-price-cells.ts';
export { paintRows } from './own-price-rows.ts';
export { calculate, loadOffers } from './own-prices.ts';
export { ownPricesForm } from './own-prices-form.ts';
