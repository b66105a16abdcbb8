import type { Loaded } from '../../ledger/load-ledger.ts';
import { linkAnswers } from '../stale/link-answers.ts';
import { outsideLinks, staleLinks } from '../stale/outside-links.ts';
import type { Warning } from './warning.ts';

/** Links to other sites that do not answer, or lead on: asking them takes its time. */
export async function linkWarnings(loaded: Loaded): Promise<Warning[]> {
  const links = outsideLinks(loaded);
  const answers = await linkAnswers(links.map((it) => it.address));
  return staleLinks(links, answers).map(({ state, file, line, field, text, todo }) => ({
    severity: state === 'past' ? 'doubt' : 'note',
    check: 'outside-link',
    ...{ file, line, field, text: `${text}.`, hint: todo, figures: [] },
  }));
}
