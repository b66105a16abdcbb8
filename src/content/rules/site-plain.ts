import { problemAt, texts } from '../read/fields.ts';
import type { Rule } from './rule.ts';

/** The guide's own address is one that others can be put together from: a host and, at most, a path. */
export const sitePlain: Rule = {
  id: 'site-plain',
  run: ({ guide }) =>
    [...guide.values()].flatMap((source) =>
      texts(source, 'site').flatMap((field) => {
        // That it is a web address at all is its schema's.
        if (!/^https?:/i.test(field.value) || !URL.canParse(field.value)) return [];
        const { search, hash, username, password, pathname, origin } = new URL(field.value);
        const isPlain = search + hash + username + password === '' && /^[\w./~-]*$/.test(pathname);
        const path = pathname.split('/').filter((it) => /^[\w.~-]+$/.test(it));
        return isPlain
          ? []
          : [
              problemAt(
                source,
                field,
                'an address of a host and, at most, a path of letters, digits, hyphens and slashes',
                `write ${[origin, ...path].join('/')}`,
              ),
            ];
      }),
    ),
};
