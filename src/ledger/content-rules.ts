import { METHODS } from '../measure/methods.ts';
import type { Cautions } from '../schema/cautions.ts';
import type { Guide } from '../schema/guide.ts';
import { INSTRUMENT_KINDS, type Instrument } from '../schema/instrument.ts';
import type { Maker } from '../schema/maker.ts';
import type { MethodProse } from '../schema/method.ts';
import type { Panel } from '../schema/panel.ts';
import { fieldPath, type Problem, shown } from '../schema/problem.ts';
import { nearest } from '../schema/suggest.ts';
import { QUANTITIES } from '../schema/units.ts';
import type { Entry } from './content.ts';
import { instrumentUnit, METER_QUANTITY } from './meters.ts';

interface Collections {
  guide: ReadonlyMap<string, Entry<Guide>>;
  instruments: ReadonlyMap<string, Entry<Instrument>>;
  makers: ReadonlyMap<string, Entry<Maker>>;
  panels: ReadonlyMap<string, Entry<Panel>>;
  methods: ReadonlyMap<string, Entry<MethodProse>>;
  cautions: ReadonlyMap<string, Entry<Cautions>>;
}

interface Surroundings {
  today: string;
  shownAs: string;
  /** Files that have problems of their own; a reference to one of them is not a problem more. */
  unread: ReadonlySet<string>;
}

type Rule = (content: Collections, around: Surroundings) => Problem[];

/** Everything that one file says of another, or of today. */
export function contentRules(content: Collections, around: Surroundings): Problem[] {
  return RULES.flatMap((rule) => rule(content, around));
}

function problemAt(
  entry: Entry<unknown>,
  path: readonly PropertyKey[],
  value: unknown,
  wanted: string,
  hint?: string,
): Problem {
  return {
    file: entry.source.file,
    line: entry.source.lineOf(path),
    field: fieldPath(path),
    found: shown(value),
    wanted,
    ...(hint && { hint }),
  };
}

const guideAndCautions: Rule = ({ guide, cautions }, { shownAs, unread }) =>
  (
    [
      [guide, 'guide.yaml', 'the file with title, currency, tariff and size classes'],
      [cautions, 'cautions.mdx', 'the page of cautions'],
    ] as const
  ).flatMap(([entries, name, wanted]) => {
    const file = `${shownAs}/${name}`;
    return entries.size > 0 || unread.has(file) ? [] : [{ file, field: '', found: 'no such file', wanted }];
  });

const makers: Rule = (content, { shownAs, unread }) =>
  [...content.panels.values()].flatMap((panel) => {
    const id = panel.data.maker;
    if (content.makers.has(id) || unread.has(`${shownAs}/makers/${id}.yaml`)) return [];
    const near = nearest(id, [...content.makers.keys()]);
    return [
      problemAt(
        panel,
        ['maker'],
        id,
        `a maker that has a file in ${shownAs}/makers: ${[...content.makers.keys()].join(', ') || 'there is none yet'}`,
        near ? `did you mean "${near}"?` : `write ${shownAs}/makers/${id}.yaml`,
      ),
    ];
  });

const instruments: Rule = (content, { shownAs, unread }) =>
  [...content.panels.values()].flatMap((panel) =>
    panel.data.sessions.flatMap((session, index) =>
      INSTRUMENT_KINDS.flatMap((kind) => {
        const id = session.instruments[kind];
        if (id === undefined || unread.has(`${shownAs}/instruments/${id}.yaml`)) return [];
        const path = ['sessions', index, 'instruments', kind];
        const fitting = [...content.instruments.values()].filter((it) => it.data.measures === kind).map((it) => it.id);
        const instrument = content.instruments.get(id);
        const wanted = `an instrument for ${kind} that has a file in ${shownAs}/instruments: ${fitting.join(', ') || 'there is none yet'}`;
        if (!instrument) {
          const near = nearest(id, [...content.instruments.keys()]);
          return [
            problemAt(
              panel,
              path,
              id,
              wanted,
              near ? `did you mean "${near}"?` : `write ${shownAs}/instruments/${id}.yaml`,
            ),
          ];
        }
        if (instrument.data.measures !== kind) {
          return [problemAt(panel, path, id, wanted, `"${id}" measures ${instrument.data.measures}`)];
        }
        return [];
      }),
    ),
  );

const instrumentUnits: Rule = (content) =>
  [...content.instruments.values()].flatMap((entry) => {
    if (instrumentUnit(entry.data)) return [];
    const units = Object.keys(QUANTITIES[METER_QUANTITY[entry.data.measures]].units);
    const near = nearest(entry.data.unit, units);
    return [
      problemAt(
        entry,
        ['unit'],
        entry.data.unit,
        `a unit of what it measures: ${units.join(', ')}`,
        near && `did you mean "${near}"?`,
      ),
    ];
  });

/** Every dated field of the content, with the reason why it can't lie ahead. */
const datesNotAhead: Rule = (content, { today }) => {
  const dated: Array<[Entry<unknown>, PropertyKey[], string]> = [];
  for (const panel of content.panels.values()) {
    panel.data.prices.forEach((price, i) => {
      dated.push([panel, ['prices', i, 'date'], price.date]);
    });
    panel.data.sessions.forEach((session, i) => {
      dated.push([panel, ['sessions', i, 'date'], session.date]);
    });
  }
  for (const instrument of content.instruments.values())
    dated.push([instrument, ['calibration', 'date'], instrument.data.calibration.date]);
  for (const guide of content.guide.values()) {
    dated.push([guide, ['tariff', 'date'], guide.data.tariff.date]);
    guide.data.rates.forEach((rate, i) => {
      dated.push([guide, ['rates', i, 'date'], rate.date]);
    });
  }
  for (const method of content.methods.values()) {
    method.data.versions.forEach((version, i) => {
      dated.push([method, ['versions', i, 'date'], version.date]);
    });
  }
  return dated
    .filter(([, , date]) => date > today)
    .map(([entry, path, date]) => problemAt(entry, path, date, `a day that is not in the future (today is ${today})`));
};

const currencies: Rule = (content) => {
  const guide = content.guide.get('guide');
  if (!guide) return [];
  const known = new Set([guide.data.currency, ...guide.data.rates.map((it) => it.currency)]);
  return [...content.panels.values()].flatMap((panel) =>
    panel.data.prices.flatMap((price, i) =>
      known.has(price.currency)
        ? []
        : [
            problemAt(
              panel,
              ['prices', i, 'currency'],
              price.currency,
              `a currency that the guide can convert: ${[...known].join(', ')}`,
              `add a rate for ${price.currency} to ${guide.source.file}`,
            ),
          ],
    ),
  );
};

const methodPages: Rule = (content, { shownAs, unread }) => {
  const problems: Problem[] = [];
  const ids = METHODS.map((method) => method.id);
  for (const method of METHODS) {
    const file = `${shownAs}/methods/${method.id}.mdx`;
    const entry = content.methods.get(method.id);
    if (!entry) {
      if (!unread.has(file))
        problems.push({ file, field: '', found: 'no such file', wanted: `the page that explains "${method.name}"` });
      continue;
    }
    const last = entry.data.versions.at(-1)?.version;
    if (last !== method.version) {
      problems.push(
        problemAt(
          entry,
          ['versions'],
          last,
          `${method.version} as the last version: it is what ${method.file} computes`,
          'add the change to the history',
        ),
      );
    }
    entry.data.versions.forEach((it, i) => {
      if (it.version !== i + 1)
        problems.push(problemAt(entry, ['versions', i, 'version'], it.version, `${i + 1}: versions count up from 1`));
    });
    entry.data.related.forEach((id, i) => {
      if (ids.includes(id)) return;
      const near = nearest(id, ids);
      problems.push(
        problemAt(entry, ['related', i], id, `one of: ${ids.join(', ')}`, near && `did you mean "${near}"?`),
      );
    });
  }
  for (const entry of content.methods.values()) {
    if (ids.includes(entry.id)) continue;
    const near = nearest(entry.id, ids);
    problems.push({
      file: entry.source.file,
      field: '',
      found: `a page for "${entry.id}", which nothing computes`,
      wanted: `a name from the registry of methods: ${ids.join(', ')}`,
      ...(near && { hint: `did you mean "${near}"?` }),
    });
  }
  return problems;
};

const sessionMethodVersions: Rule = (content) => {
  const newest = METHODS.find((method) => method.id === 'bench-procedure')?.version ?? 1;
  const wanted = `a version of the bench procedure that exists: 1 to ${newest}`;
  const problems = [...content.panels.values()].flatMap((panel) =>
    panel.data.sessions.flatMap((session, i) =>
      session.methodVersion <= newest
        ? []
        : [problemAt(panel, ['sessions', i, 'methodVersion'], session.methodVersion, wanted)],
    ),
  );
  const guide = content.guide.get('guide');
  if (guide && guide.data.methodVersion > newest)
    problems.push(problemAt(guide, ['methodVersion'], guide.data.methodVersion, wanted));
  return problems;
};

const RULES: readonly Rule[] = [
  guideAndCautions,
  makers,
  instruments,
  instrumentUnits,
  datesNotAhead,
  currencies,
  methodPages,
  sessionMethodVersions,
];
