import { cutTexts } from '../../../content/read/cut-texts.ts';
import type { Loaded } from '../../../ledger/load-ledger.ts';
import { type Warning, warningAt } from '../warning.ts';

/** Texts that end where a `#` begins what YAML takes for a comment. */
export function textsCut({ content }: Loaded): Warning[] {
  const { guide, makers, instruments, standards, panels, corrections } = content;
  const entries = [guide, ...[makers, instruments, standards, panels].flatMap((it) => [...it.values()])];
  return [...entries, ...(corrections ? [corrections] : [])].flatMap(({ source }) =>
    cutTexts(source).map(({ path, kept, rest }) =>
      warningAt(source, path, {
        severity: 'doubt',
        check: 'text-cut',
        text: `The text ends after “${kept.slice(-40)}”: what follows, ${rest.slice(0, 40)}, is taken for a comment, and readers do not see it.`,
        hint: 'put the whole text between quotes; a comment has a space after its #',
      }),
    ),
  );
}
