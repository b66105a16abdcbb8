import { meant, problemAt, texts } from '../read/fields.ts';
import type { Problem } from '../schema/problem.ts';
import { nearest } from '../schema/suggest.ts';
import type { Rule } from './rule.ts';
import { siteAddresses } from './site-addresses.ts';

const SESSION = /^\/panels\/([^/]+)\/methodology\/#session-(.*)$/;

/** An address that the guide has given up is nothing of it now, stands once, and leads on to a page that is there. */
export const withdrawnAddresses: Rule = {
  id: 'withdrawn-addresses',
  run(content, { unread, drafts }) {
    const site = siteAddresses(content, unread, drafts);
    return [...content.guide.values()].flatMap((source) => {
      const seen = new Set<string>();
      const given = texts(source, 'withdrawn', '*', 'address').flatMap((field): Problem[] => {
        const { value } = field;
        const isTwice = seen.has(value);
        seen.add(value);
        if (isTwice) return [problemAt(source, field, 'an address that stands here once')];
        const moved = site.moved.get(value);
        if (moved)
          return [problemAt(source, field, `an address that leads nowhere; it leads on to ${moved}`, 'take it out')];
        if (site.pages.has(value) || site.drafts.has(value)) {
          return [problemAt(source, field, 'an address that the guide no longer has', 'take it out, or the page')];
        }
        const [, slug = '', day = ''] = SESSION.exec(value) ?? [];
        if (slug === '') {
          if (!value.includes('#')) return [];
          return [
            problemAt(source, field, 'a page, a file, or a session as /panels/<name>/methodology/#session-<day>'),
          ];
        }
        const panel = content.panels.get(slug);
        if (!panel)
          return [
            problemAt(
              source,
              field,
              'a session of a panel that the guide has',
              meant(nearest(slug, [...content.panels.keys()])),
            ),
          ];
        const days = texts(panel, 'sessions', '*', 'date').map((it) => it.value);
        return days.includes(day)
          ? [problemAt(source, field, 'a session that the panel no longer has', 'take it out, or the session')]
          : [];
      });
      const instead = texts(source, 'withdrawn', '*', 'instead').flatMap((field): Problem[] => {
        const [page = ''] = field.value.split('#');
        if (site.pages.has(page)) return [];
        return [problemAt(source, field, 'a page of the guide', meant(nearest(page, [...site.pages])))];
      });
      return [...given, ...instead];
    });
  },
};
