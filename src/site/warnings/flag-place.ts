import type { Panel } from '../../content/schema/panel.ts';
import type { SessionEntry } from '../../ledger/ledger.ts';
import type { FigureMap } from '../../measure/figure.ts';
import { type Figure, type Flag, isFigure } from '../../measure/figure.ts';
import { isMetricId } from '../../measure/metrics.ts';

/** What is needed to say where a flag's cause stands in a panel's file. */
interface Context {
  slug: string;
  data: Panel;
  /** Undefined for a panel that was never on the bench. */
  session: SessionEntry | undefined;
  figures: FigureMap;
}

/** Path, in the panel's file, of what a flag is about: where the check says so, or the readings behind its figures. */
export function flagPlace(flag: Flag, context: Context): PropertyKey[] {
  const session = sessionPath(context);
  if (flag.at) return flag.at[0] === 'session' ? [...session, ...flag.at.slice(1)] : [...flag.at];
  const byId = new Map([...context.figures.values()].filter(isFigure).map((it) => [it.id, it]));
  for (const metric of flag.concerns) {
    const figure = isMetricId(metric) ? context.figures.get(metric) : undefined;
    if (!isFigure(figure)) continue;
    const path = readingOf(figure, byId, context, new Set());
    if (path) return path;
  }
  return session;
}

function sessionPath({ data, session }: Context): PropertyKey[] {
  const index = data.sessions.findIndex((it) => it.date === session?.date);
  return index < 0 ? [] : ['sessions', index];
}

/** The first reading that a figure was made from, straight or through other figures. */
function readingOf(
  figure: Figure,
  byId: ReadonlyMap<string, Figure>,
  context: Context,
  seen: Set<string>,
): PropertyKey[] | undefined {
  if (seen.has(figure.id)) return undefined;
  seen.add(figure.id);
  for (const input of figure.inputs) {
    const inner = byId.get(input);
    const path = inner ? readingOf(inner, byId, context, seen) : pathOf(input, context);
    if (path) return path;
  }
  return undefined;
}

/** `<panel>/<day>/peak.red`, `<panel>/prices/<day>` and `<panel>/field.width` as keys of the file. */
function pathOf(input: string, { slug, data, session }: Context): PropertyKey[] | undefined {
  if (!input.startsWith(`${slug}/`)) return undefined;
  const rest = input.slice(slug.length + 1);
  if (rest.startsWith('prices/')) {
    const index = data.prices.findIndex((it) => `prices/${it.date}` === rest);
    return index < 0 ? undefined : ['prices', index];
  }
  if (session && rest.startsWith(`${session.date}/`)) {
    return [
      ...sessionPath({ slug, data, session, figures: new Map() }),
      ...rest.slice(session.date.length + 1).split('.'),
    ];
  }
  return rest.includes('/') ? undefined : rest.split('.');
}
