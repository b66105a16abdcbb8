import { editContent } from '../edit/edit-content.ts';
import { EditError } from '../edit/edit-error.ts';
import former from './former-texts.json' with { type: 'json' };
import type { Change, Migration } from './migration.ts';
import { textMark } from './text-mark.ts';

const TEXT = /^(?:methods\/[^/]+|cautions)\.mdx$/;

/** What each text has said while it was part of every content folder, by its path: marks, with spaces between. */
const FORMER: Readonly<Record<string, string>> = former;

/**
 * Every content folder had the pages of methods and cautions. Since format 2 they come with the program: a page that is
 * word for word what some version of it came with goes, and one that the tester has changed stands in the place of the
 * program's, which from then on has the history.
 */
export const textsOfTheProgram: Migration = {
  to: 2,
  run: (files) =>
    [...files].flatMap(([path, text]): Change[] => {
      if (!TEXT.test(path)) return [];
      if (Object.hasOwn(FORMER, path) && FORMER[path]?.split(' ').includes(textMark(text))) {
        return [{ path, after: undefined, why: 'this text comes with the program now' }];
      }
      if (!/^versions:/m.test(text)) return [];
      try {
        const after = editContent(text, path, [{ do: 'remove', field: ['versions'] }]);
        return [{ path, after, why: 'the history of a method comes with the program now; this text is your own' }];
      } catch (error) {
        // A file that can't be read is told by the check.
        if (error instanceof EditError) return [];
        throw error;
      }
    }),
};
