import { parse } from 'yaml';
import { openContent } from '../edit/content-text.ts';
import { editContent } from '../edit/edit-content.ts';
import { YamlText } from '../edit/render.ts';
import { isBlock } from '../schema/block.ts';
import { panelSchema } from '../schema/panel.ts';
import type { RawSession } from './new-session.ts';

/** The sessions of a panel's file, days and quantities as they were typed. */
export function sessionsIn(text: string, file: string): RawSession[] {
  const data: unknown = parse(openContent(text, file).yaml, { logLevel: 'silent', schema: 'failsafe' });
  const list = isBlock(data) ? data.sessions : undefined;
  const sessions = Array.isArray(list) ? list.filter(isBlock) : [];
  return sessions.map((it) => ({ ...it, ...(it.draft !== undefined && { draft: it.draft === 'true' }) }));
}

/**
 * Puts a session into a panel's file, in the style of the file: at the side of the list on which the newest one stands.
 *
 * @param session as YAML
 * @throws EditError where the file is written in a way that can't be added to
 */
export function addSession(text: string, file: string, session: string): string {
  const days = sessionsIn(text, file).map((it) => String(it.date));
  const isNewestFirst = days.length > 1 && (days[0] ?? '') > (days.at(-1) ?? '');
  return editContent(text, file, [
    {
      do: 'insert',
      list: ['sessions'],
      item: new YamlText(session),
      at: isNewestFirst ? 0 : 'end',
      order: Object.keys(panelSchema.shape),
    },
  ]);
}

/**
 * Puts a session in the place of that of a day. What is written beside its lines goes with them.
 *
 * @param session as YAML
 * @throws EditError where the file has no session of that day, or is written in a way that can't be changed
 */
export function replaceSession(text: string, file: string, day: string, session: string): string {
  const at = sessionsIn(text, file).findIndex((it) => String(it.date) === day);
  return editContent(text, file, [{ do: 'replace', list: ['sessions'], at, item: new YamlText(session) }]);
}
