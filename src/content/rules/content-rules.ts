import { z } from 'zod';
import { countedEmitter } from '../../measure/beam/assumed-emitter.ts';
import { type LedEmitter, placeLeds } from '../../measure/beam/emitter.ts';
import { ASKS_BEYOND_FROM, BEYOND_PLACES_EACH, procedureVersions } from '../../measure/irradiance/bench-procedure.ts';
import { METHODS } from '../../measure/methods.ts';
import { countedLeds } from '../read/counted-leds.ts';
import { acceptedReadings } from '../read/grid-points.ts';
import type { Source } from '../read/source.ts';
import { beyondReadings } from '../schema/beyond.ts';
import type { CollectionName } from '../schema/collections.ts';
import { INSTRUMENT_KINDS } from '../schema/instrument.ts';
import { INSTRUMENT_QUANTITY } from '../schema/instrument-units.ts';
import { panelSchema } from '../schema/panel.ts';
import type { Problem } from '../schema/problem.ts';
import { nearest } from '../schema/suggest.ts';
import { normaliseUnit, QUANTITIES } from '../schema/units.ts';
import { calibrationStated } from './calibration-stated.ts';
import { fields, meant, problemAt, type RawCollections, type Rule, type Surroundings, texts } from './fields.ts';
import { modelOnce } from './model-once.ts';
import { onePriceADay } from './one-price-a-day.ts';
import { readingsWithinRange } from './readings-within-range.ts';
import { sessionAfterCalibration } from './session-after-calibration.ts';
import { sharesInPercent } from './shares-in-percent.ts';
import { thousandsPoint } from './thousands-point.ts';

/** Everything that one file says of another, of itself in two places, or of today. */
export function contentRules(content: RawCollections, around: Surroundings): Problem[] {
  return RULES.flatMap((rule) => rule(content, around));
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

const makers: Rule = ({ panels, makers: known }, { shownAs, unread }) =>
  [...panels.values()].flatMap((panel) =>
    texts(panel, 'maker')
      .filter(({ value }) => !known.has(value) && !unread.has(`${shownAs}/makers/${value}.yaml`))
      .map((field) =>
        problemAt(
          panel,
          field,
          `a maker that has a file in ${shownAs}/makers: ${[...known.keys()].join(', ') || 'there is none yet'}`,
          meant(nearest(field.value, [...known.keys()])) ?? `write ${shownAs}/makers/${field.value}.yaml`,
        ),
      ),
  );

const instruments: Rule = ({ panels, instruments: known }, { shownAs, unread }) => {
  const measures = (id: string) =>
    INSTRUMENT_KINDS.find((kind) => kind === fields(known.get(id)?.data, ['measures'])[0]?.value);
  return [...panels.values()].flatMap((panel) =>
    INSTRUMENT_KINDS.flatMap((kind) =>
      texts(panel, 'sessions', '*', 'instruments', kind).flatMap((field) => {
        const id = field.value;
        const its = measures(id);
        if (unread.has(`${shownAs}/instruments/${id}.yaml`) || (known.has(id) && (its === kind || its === undefined)))
          return [];
        const fitting = [...known.keys()].filter((it) => measures(it) === kind);
        const wanted = `an instrument for ${kind} that has a file in ${shownAs}/instruments: ${fitting.join(', ') || 'there is none yet'}`;
        const hint = its
          ? `"${id}" measures ${its}`
          : (meant(nearest(id, [...known.keys()])) ?? `write ${shownAs}/instruments/${id}.yaml`);
        return [problemAt(panel, field, wanted, hint)];
      }),
    ),
  );
};

const instrumentUnits: Rule = ({ instruments: known }) =>
  [...known.values()].flatMap((source) => {
    const kind = INSTRUMENT_KINDS.find((it) => it === texts(source, 'measures')[0]?.value);
    if (!kind) return [];
    const units = Object.keys(QUANTITIES[INSTRUMENT_QUANTITY[kind]].units);
    return texts(source, 'unit')
      .filter(({ value }) => !units.includes(normaliseUnit(value)))
      .map((field) =>
        problemAt(source, field, `a unit of what it measures: ${units.join(', ')}`, meant(nearest(field.value, units))),
      );
  });

/** Where days stand in the files; none of them can lie ahead. */
const DATES: ReadonlyArray<readonly [CollectionName, ...string[]]> = [
  ['guide', 'tariff', 'date'],
  ['guide', 'rates', '*', 'date'],
  ['instruments', 'calibrations', '*', 'date'],
  ['panels', 'prices', '*', 'date'],
  ['panels', 'sessions', '*', 'date'],
  ['methods', 'versions', '*', 'date'],
];

const datesNotAhead: Rule = (content, { today }) =>
  DATES.flatMap(([collection, ...keys]) =>
    [...content[collection].values()].flatMap((source) =>
      texts(source, ...keys)
        .filter(({ value }) => z.iso.date().safeParse(value).success && value > today)
        .map((field) => problemAt(source, field, `a day that is not in the future (today is ${today})`)),
    ),
  );

const currencies: Rule = ({ guide, panels }, { shownAs }) => {
  const [source] = guide.values();
  if (!source) return [];
  const known = [...texts(source, 'currency'), ...texts(source, 'rates', '*', 'currency')].map((it) => it.value);
  return [...panels.values()].flatMap((panel) =>
    texts(panel, 'prices', '*', 'currency')
      .filter(({ value }) => !known.includes(value) && /^[A-Z]{3}$/.test(value))
      .map((field) =>
        problemAt(
          panel,
          field,
          `a currency that the guide can convert: ${known.join(', ')}`,
          `add a rate for ${field.value} to ${shownAs}/guide.yaml`,
        ),
      ),
  );
};

const withdrawnWithReason: Rule = ({ panels }) =>
  [...panels.values()].flatMap((panel) => {
    const isWithdrawn = texts(panel, 'status').some(({ value }) => value === 'withdrawn');
    const hasReason = fields(panel.data, ['statusReason']).some(({ value }) => value !== null && value !== '');
    if (!isWithdrawn || hasReason) return [];
    return [problemAt(panel, { path: ['statusReason'], value: undefined }, 'the reason for the withdrawal')];
  });

const oneSessionADay: Rule = ({ panels }) =>
  [...panels.values()].flatMap((panel) => {
    const seen = new Set<string>();
    return texts(panel, 'sessions', '*', 'date').flatMap((field) => {
      if (!seen.has(field.value)) {
        seen.add(field.value);
        return [];
      }
      return [problemAt(panel, field, 'one session a day: merge the two, or correct the date')];
    });
  });

const ratesOnce: Rule = ({ guide }) =>
  [...guide.values()].flatMap((source) => {
    const base = texts(source, 'currency')[0]?.value;
    const seen = new Set<string>();
    return texts(source, 'rates', '*', 'currency').flatMap((field) => {
      const twice = seen.has(field.value);
      seen.add(field.value);
      if (field.value === base)
        return [problemAt(source, field, `a currency other than the base currency: its own rate is 1`)];
      return twice ? [problemAt(source, field, 'one rate a currency; keep the newest')] : [];
    });
  });

const sizeClasses: Rule = ({ guide }) =>
  [...guide.values()].flatMap((source) => {
    const list = fields(source.data, ['sizeClasses', '*']);
    const seen = new Set<unknown>();
    return list.flatMap(({ path, value }, i) => {
      const problems: Problem[] = [];
      const item = typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
      const before = fields(list[i - 1]?.value, ['upToArea'])[0]?.value;
      const area = item.upToArea;
      const at = { path: [...path, 'upToArea'], value: area };
      const isLast = i === list.length - 1;
      if (seen.has(item.id))
        problems.push(
          problemAt(source, { path: [...path, 'id'], value: item.id }, 'an id of its own: it is part of an address'),
        );
      if (item.id !== undefined) seen.add(item.id);
      if (!isLast && area === undefined)
        problems.push(problemAt(source, at, 'an area in cm2; only the last class is open-ended'));
      if (isLast && area !== undefined)
        problems.push(problemAt(source, at, 'no upper area: the last class takes all that is larger'));
      if (typeof before === 'number' && typeof area === 'number' && area <= before) {
        problems.push(problemAt(source, at, `more than ${before}, the area of the class before`));
      }
      return problems;
    });
  });

const evenGrids: Rule = ({ panels }) =>
  [...panels.values()].flatMap((panel) =>
    fields(panel.data, ['sessions', '*', 'grid', 'rows']).flatMap(({ path, value }) => {
      if (!Array.isArray(value) || !Array.isArray(value[0])) return [];
      const wanted = value[0].length;
      return value.flatMap((row: unknown, i): Problem[] =>
        Array.isArray(row) && row.length !== wanted
          ? [
              {
                ...problemAt(panel, { path: [...path, i], value: row }, `${wanted} points, as in the first row`),
                found: `${row.length} points`,
              },
            ]
          : [],
      );
    }),
  );

/** LEDs have to fit the field that they lie in, and each wavelength group needs one at least. */
const ledsFit: Rule = ({ panels }) =>
  [...panels.values()].flatMap((panel) => {
    const [counted] = fields(panel.data, ['leds']);
    const leds = panelSchema.shape.leds.safeParse(counted?.value);
    const field = panelSchema.shape.field.safeParse(fields(panel.data, ['field'])[0]?.value);
    if (!counted || !leds.data || !field.data) return [];
    const sides = { width: field.data.width.value, height: field.data.height.value };
    try {
      placeLeds(countedEmitter(sides, countedLeds(leds.data)).emitter as LedEmitter, sides);
      return [];
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return [{ ...problemAt(panel, counted, 'LEDs that fit the LED field'), found: error.message }];
    }
  });

/** A share of a level in decibels means nothing: the level's zero is a convention. */
const soundInDecibels: Rule = ({ instruments: known }) =>
  [...known.values()].flatMap((source) => {
    if (texts(source, 'measures')[0]?.value !== 'sound') return [];
    return [...fields(source.data, ['calibrations', '*', 'relative']), ...fields(source.data, ['repeatability'])]
      .filter(({ value }) => value !== 0)
      .map((field) =>
        problemAt(
          source,
          field,
          '0, or no such field: a level in dB has no share of the reading; state it in dB, as absolute or repeatabilityDecibels',
        ),
      );
  });

/** What only some kinds of instruments can state; elsewhere nothing would heed it. */
const KIND_FIELDS = {
  repeatabilityDecibels: 'sound',
  spectralResponse: 'irradiance',
  angularResponse: 'irradiance',
} as const;

const fieldsOfTheirKind: Rule = ({ instruments: known }) =>
  [...known.values()].flatMap((source) => {
    const kind = INSTRUMENT_KINDS.find((it) => it === texts(source, 'measures')[0]?.value);
    if (!kind) return [];
    return Object.entries(KIND_FIELDS).flatMap(([name, only]) =>
      fields(source.data, [name])
        .filter(() => kind !== only)
        .map((field) =>
          problemAt(
            source,
            field,
            `no such field: it is for instruments that measure ${only}, this one measures ${kind}`,
          ),
        ),
    );
  });

const methodPages: Rule = ({ methods }, { shownAs, unread }) => {
  const ids: readonly string[] = METHODS.map((method) => method.id);
  const problems: Problem[] = [];
  for (const method of METHODS) {
    const source = methods.get(method.id);
    if (!source) {
      const file = `${shownAs}/methods/${method.id}.mdx`;
      if (!unread.has(file)) {
        problems.push({ file, field: '', found: 'no such file', wanted: `the page that explains "${method.name}"` });
      }
      continue;
    }
    const versions = fields(source.data, ['versions', '*', 'version']);
    versions.forEach((field, i) => {
      if (field.value !== i + 1) problems.push(problemAt(source, field, `${i + 1}: versions count up from 1`));
    });
    const last = versions.at(-1);
    if (last && last.value !== method.version) {
      const wanted = `${method.version} as the last version: it is what ${method.file} computes`;
      problems.push(
        problemAt(source, { path: ['versions'], value: last.value }, wanted, 'add the change to the history'),
      );
    }
    for (const field of texts(source, 'related', '*')) {
      if (!ids.includes(field.value))
        problems.push(problemAt(source, field, `one of: ${ids.join(', ')}`, meant(nearest(field.value, ids))));
    }
  }
  for (const [id, source] of methods) {
    if (ids.includes(id)) continue;
    const hint = meant(nearest(id, ids));
    problems.push({
      file: source.file,
      field: '',
      found: `a page for "${id}", which nothing computes`,
      wanted: `a name from the registry of methods: ${ids.join(', ')}`,
      ...(hint && { hint }),
    });
  }
  return problems;
};

const methodVersions: Rule = ({ panels, guide }) => {
  const known = procedureVersions();
  const unknown = (source: Source, ...keys: string[]) =>
    fields(source.data, keys)
      .filter(({ value }) => typeof value === 'number' && value >= 1 && !known.includes(value))
      .map((field) => problemAt(source, field, `a version of the bench procedure that exists: ${known.join(', ')}`));
  return [
    ...[...guide.values()].flatMap((source) => unknown(source, 'methodVersion')),
    ...[...panels.values()].flatMap((source) => unknown(source, 'sessions', '*', 'methodVersion')),
  ];
};

/** A session says that it followed a version of the procedure; then it has the readings that this version asks for. */
const procedureFollowed: Rule = ({ panels }) =>
  [...panels.values()].flatMap((panel) =>
    fields(panel.data, ['sessions', '*']).flatMap(({ path, value }) => {
      const version = fields(value, ['methodVersion'])[0]?.value;
      if (version !== ASKS_BEYOND_FROM) return [];
      const [written] = fields(value, ['beyond']);
      const read = beyondReadings.safeParse(written?.value);
      // What is wrong with the readings themselves, their schema says.
      if (written && !read.success) return [];
      const accepted = (read.data ?? []).filter((it) => acceptedReadings(it.on).length > 0);
      const past = (...edges: string[]) => accepted.filter((it) => edges.includes(it.edge)).length;
      const [aside, above] = [past('left', 'right'), past('top', 'bottom')];
      if (aside >= BEYOND_PLACES_EACH && above >= BEYOND_PLACES_EACH) return [];
      const wanted = `readings at ${BEYOND_PLACES_EACH} places past the left or right edge and ${BEYOND_PLACES_EACH} past the top or bottom one, as version ${version} of the bench procedure asks`;
      const hint = `take the readings, or write methodVersion: ${ASKS_BEYOND_FROM - 1}; what was read past the edges is used under it too`;
      const field = { path: [...path, 'beyond'], value: written?.value };
      const found = written ? `readings at ${aside} and ${above} places` : 'nothing';
      return [{ ...problemAt(panel, field, wanted, hint), found }];
    }),
  );

const RULES: readonly Rule[] = [
  guideAndCautions,
  makers,
  instruments,
  instrumentUnits,
  datesNotAhead,
  currencies,
  ratesOnce,
  sizeClasses,
  evenGrids,
  ledsFit,
  soundInDecibels,
  fieldsOfTheirKind,
  withdrawnWithReason,
  oneSessionADay,
  methodPages,
  methodVersions,
  procedureFollowed,
  thousandsPoint,
  onePriceADay,
  modelOnce,
  readingsWithinRange,
  calibrationStated,
  sessionAfterCalibration,
  sharesInPercent,
];
