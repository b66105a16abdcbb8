import { METHODS } from '../../measure/methods.ts';
import { isMetricId } from '../../measure/metrics.ts';
import { type Field, fields, meant, problemAt, texts } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import { isBlock } from '../schema/block.ts';
import type { Problem } from '../schema/problem.ts';
import { nearest } from '../schema/suggest.ts';
import type { RawCollections, Rule } from './rule.ts';
import { isDraft } from './site-addresses.ts';

/** Figures of the panel itself; all others are a session's. */
const OF_PANEL: ReadonlySet<string> = new Set(['field-width', 'field-height', 'led-area', 'real-price']);

/** A correction is of something that the guide has, made after it was read, and told once a day. */
export const correctionsFit: Rule = {
  id: 'corrections-fit',
  run: (content, { unread }) =>
    [...content.corrections.values()].flatMap((source) => {
      const all = fields(source.data, ['corrections', '*']);
      return [...all.flatMap((it) => entryProblems(source, it, content, unread)), ...twice(source, all)];
    }),
};

function entryProblems(source: Source, { path, value }: Field, content: RawCollections, unread: ReadonlySet<string>) {
  if (!isBlock(value)) return [];
  const { panel, method } = value;
  return [
    ...(typeof panel === 'string' ? panelProblems(source, path, value, content, unread) : []),
    ...(typeof method === 'string' ? methodProblems(source, path, value) : []),
  ];
}

function panelProblems(
  source: Source,
  path: PropertyKey[],
  entry: Readonly<Record<string, unknown>>,
  { panels }: RawCollections,
  unread: ReadonlySet<string>,
): Problem[] {
  const { panel: name, session, metric, date } = entry;
  const at = (key: string, wanted: string, hint?: string) =>
    problemAt(source, { path: [...path, key], value: entry[key] }, wanted, hint);
  const panel = panels.get(String(name));
  if (!panel) {
    if ([...unread].some((it) => it.includes(`/panels/${name}/`))) return [];
    const renamed = [...panels].find(([, it]) => texts(it, 'formerly', '*').some(({ value }) => value === name));
    const hint = renamed ? `it is called "${renamed[0]}" now` : meant(nearest(String(name), [...panels.keys()]));
    return [at('panel', 'the name of a folder in panels', hint)];
  }
  if (isDraft(panel)) return [at('panel', 'a panel that is published: nobody has seen a draft')];
  const days = texts(panel, 'sessions', '*', 'date').map((it) => it.value);
  if (typeof session === 'string') {
    const problems: Problem[] = [];
    if (!days.includes(session)) {
      const hint = days.length > 0 ? `it has ${days.toSorted().join(', ')}` : 'it has none yet';
      problems.push(at('session', `the day of a session in ${panel.file}`, hint));
    }
    if (typeof date === 'string' && date < session) problems.push(at('date', `a day after the session, ${session}`));
    if (typeof metric === 'string' && OF_PANEL.has(metric)) {
      problems.push(at('session', 'no session: this figure is the panel’s own', 'take the line out'));
    }
    return problems;
  }
  const isOfSession = typeof metric === 'string' && isMetricId(metric) && !OF_PANEL.has(metric);
  return isOfSession && session === undefined
    ? [at('session', 'the day of the session whose figure it is', days.toSorted().join(', '))]
    : [];
}

function methodProblems(source: Source, path: PropertyKey[], entry: Readonly<Record<string, unknown>>): Problem[] {
  const { method: id, version } = entry;
  const at = (key: string, wanted: string, hint?: string) =>
    problemAt(source, { path: [...path, key], value: entry[key] }, wanted, hint);
  const method = METHODS.find((it) => it.id === id);
  if (!method) {
    const ids = METHODS.map((it) => it.id);
    return [at('method', 'the id of a method, as in its address', meant(nearest(String(id), ids)))];
  }
  return typeof version === 'number' && version > method.version
    ? [at('version', `a version of the method; the newest is ${method.version}`)]
    : [];
}

/** Addresses of corrections are made of day and figure. */
function twice(source: Source, all: readonly Field[]): Problem[] {
  const seen = new Set<string>();
  return all.flatMap(({ path, value }) => {
    if (!isBlock(value)) return [];
    const { date, panel, session, metric, method } = value;
    const key = JSON.stringify([date, panel, session, metric, method]);
    if (!seen.has(key)) {
      seen.add(key);
      return [];
    }
    return [
      problemAt(
        source,
        { path: [...path, 'date'], value: date },
        'one correction a day for each figure, method or text',
        'put the two together: readers see what stood there before the day, and since',
      ),
    ];
  });
}
