import type { NotCompared, SharedFigure, SharedPanel } from '../../ledger/agreement.ts';
import { listed } from '../../words/format.ts';
import { say } from '../../words/say.ts';

/** An E_n number as pages and commands print it: `−1.84`. */
export function enText(en: number): string {
  return en.toFixed(2).replace('-', '−');
}

/** Standard uncertainties beyond which an error is not thought of: 3 in 1,000 normal errors reach that far. */
const UNLIKELY = 3;

/**
 * What would explain that results are apart: of each the largest of the own errors, those that have one alike told
 * together. Nothing where they agree or the own budgets are not known.
 */
export function explanationTexts(figures: readonly SharedFigure[]): string[] {
  const byError = Map.groupBy(
    figures.flatMap((it) => (it.explanation ? [it.explanation] : [])),
    ({ component }) => lowerFirst(say(component.source.what)),
  );
  return [...byError].map(([error, all]) => {
    const times = all.map((it) => it.times);
    const [least, most] = [Math.min(...times), Math.max(...times)].map((it) => it.toFixed(it < 100 ? 1 : 0));
    const many = least === most ? least : `${least} to ${most}`;
    const verdict =
      Math.min(...times) > UNLIKELY ? ', which it hardly is: look at the setting-up, the piece, or their bench' : '';
    const which = byError.size > 1 ? ` (${all.length} of the figures)` : '';
    return `Of our errors the largest${which} is ${error}: alone it would have to be off by ${many} of its standard uncertainties${verdict}.`;
  });
}

const lowerFirst = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** How many figures of a panel agree, in a sentence. */
export function panelAgreement({ figures }: SharedPanel): string {
  const apart = figures.filter((it) => !it.agrees).length;
  const of = `${figures.length} figure${figures.length === 1 ? '' : 's'}`;
  if (figures.length === 0) return 'No figure can be compared.';
  if (apart === 0) return figures.length === 1 ? 'The one shared figure agrees.' : `All ${of} agree.`;
  return `${apart} of ${of} ${apart === 1 ? 'is' : 'are'} further apart than both intervals explain.`;
}

/** Figures that are apart since what they are made of is. */
export function followingText(names: readonly string[]): string {
  const [first = '', second, ...more] = names.map(lowerFirst);
  const rest = more.length > 0 ? ` and ${more.length} more` : '';
  return `What is made of these is apart with them: ${second === undefined ? first : `${first}, ${second}${rest}`}.`;
}

const REASONS: Readonly<Record<NotCompared, string>> = {
  'other-distance': 'read at another distance',
  price: 'prices, which are no measurement',
  'other-unit': 'in another unit',
  bound: 'only a bound here',
  'no-interval': 'without an interval here',
};

/** What both have and is not compared, with the reason: `not compared: 12 read at another distance`. */
export function leftOut({ left }: SharedPanel): string | undefined {
  const parts = [...left].map(([why, metrics]) => `${metrics.length} ${REASONS[why]}`);
  return parts.length === 0 ? undefined : `Not compared: ${listed(parts)}.`;
}

/** What E_n is, before it is read. */
export const EN_MEANS =
  'E_n is the difference over its expanded uncertainty: up to 1, either way, the two intervals explain it (ISO 13528, ISO/IEC 17043).';

/** What E_n leaves out, for the foot of all tables. */
export const EN_MISSES =
  'Two pieces of one model differ too, and meters that were calibrated against one standard share its error, which E_n does not see.';
