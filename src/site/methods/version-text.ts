import { markdownToHtml } from 'satteri';
import type { MethodProse } from '../../content/schema/method.ts';
import { showDate } from '../../words/format.ts';
import { formula } from '../shared/formula.ts';
import { tablesNamed } from './wide-tables.ts';

type Version = MethodProse['versions'][number];

/** What an earlier version of a method said, as it can be shown. */
export interface VersionText {
  /** `version-1` */
  id: string;
  title: string;
  /** The version that took its place. */
  next: { version: number; date: string; change: string };
  /** Its formula, where that was another. */
  formula?: string;
  /** Its text in HTML. */
  text?: string;
}

/** The texts of earlier versions, newest first, as far as they are known. */
export function versionTexts(versions: readonly Version[]): VersionText[] {
  return versions
    .flatMap(({ version, date, was }, i): VersionText[] => {
      const next = versions[i + 1];
      if (!was || !next) return [];
      const text =
        was.text &&
        markdownToHtml(was.text, {
          features: { smartPunctuation: true },
          hastPlugins: [tablesNamed(`Table of version ${version}`)],
        });
      return [
        {
          id: `version-${version}`,
          title: `Version ${version}, from ${showDate(date)}, as its page had it`,
          next: { version: next.version, date: showDate(next.date), change: next.change },
          ...(was.formula && { formula: formula(was.formula, true) }),
          ...(text && { text: typeof text === 'string' ? text : text.html }),
        },
      ];
    })
    .toReversed();
}
