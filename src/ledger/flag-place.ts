import { type CarriedName, carriedBlock, carriedOf } from '../content/schema/carried.ts';
import type { Panel } from '../content/schema/panel.ts';
import type { FigureMap } from '../measure/figure.ts';
import { type Figure, type Flag, isFigure } from '../measure/figure.ts';
import { isMetricId } from '../measure/metrics.ts';
import type { SessionEntry } from './ledger.ts';

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
  if (flag.at?.[0] === 'session') return [...sessionPath(context, readOn(context, flag.at[1])), ...flag.at.slice(1)];
  if (flag.at) return [...flag.at];
  const byId = new Map([...context.figures.values()].filter(isFigure).map((it) => [it.id, it]));
  for (const metric of flag.concerns) {
    const figure = isMetricId(metric) ? context.figures.get(metric) : undefined;
    if (!isFigure(figure)) continue;
    const path = readingOf(figure, byId, context, new Set());
    if (path) return path;
  }
  return session;
}

/** The day of the session in which a field of the one that was checked stands: an earlier one where it was carried over. */
function readOn({ session }: Context, field: PropertyKey | undefined): string | undefined {
  if (!session || (field !== undefined && Object.hasOwn(session.readings, field))) return session?.date;
  const carried = carriedOf(session.readings);
  const isIn = (name: CarriedName) => carriedBlock(name).fields.includes(String(field));
  // The warm-up and the distance are those of the light.
  return (carried.find(({ name }) => isIn(name)) ?? carried.find(({ name }) => name === 'light'))?.from ?? session.date;
}

function sessionPath({ data, session }: Context, day = session?.date): PropertyKey[] {
  const index = data.sessions.findIndex((it) => it.date === day);
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
  // Of this session, or of an earlier one that a reading was carried over from.
  const index = data.sessions.findIndex((it) => rest.startsWith(`${it.date}/`));
  if (session && index >= 0) return ['sessions', index, ...rest.slice(session.date.length + 1).split('.')];
  return rest.includes('/') ? undefined : rest.split('.');
}
