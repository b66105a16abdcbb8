import { csvParse } from 'd3-dsv';
import { z } from 'zod';
import type { Problem } from '../../schema/problem.ts';
import { shown } from '../../schema/problem.ts';
import type { OtherFigure, OtherGuide, OtherPanel } from './other-guide.ts';
import type { PackageFiles } from './package-files.ts';

const descriptorSchema = z.object({
  title: z.string(),
  homepage: z.url({ protocol: /^https?$/ }),
  version: z.iso.date(),
  contributors: z.array(z.object({ title: z.string() })).min(1),
  conditions: z.object({ currency: z.string() }),
  resources: z.array(z.object({ name: z.string(), path: z.string() })),
});

/**
 * Columns that are read of each table; others may be there. A figure’s method is its metric’s: older packages have it with
 * the figure too, and it is the same.
 */
const COLUMNS = {
  panels: ['panel', 'address', 'maker', 'model'],
  sessions: ['panel', 'session', 'current', 'distance'],
  figures: [
    ...['panel', 'session', 'metric', 'value', 'unit', 'bound', 'interval95_low', 'interval95_high'],
    'in_doubt',
  ],
  metrics: ['metric', 'method', 'method_version'],
  readings: ['panel', 'session', 'reading', 'value'],
} as const;
type TableName = keyof typeof COLUMNS;
type Row<T extends TableName> = Record<(typeof COLUMNS)[T][number], string> & { line: number };

/** What is wrong with a package, told with the file it is in. */
export type ReadPackage = { guide: OtherGuide; problems: [] } | { guide: undefined; problems: Problem[] };

/**
 * Reads the data package of a guide of this program, as far as figures can be held against one's own.
 *
 * @param shownAs how messages name the package
 */
export function readPackage(files: PackageFiles, shownAs: string): ReadPackage {
  const problems: Problem[] = [];
  const problem = (file: string, it: Omit<Problem, 'file'>) => problems.push({ file: `${shownAs}/${file}`, ...it });
  const failed = () => ({ guide: undefined, problems });

  const text = files.text('datapackage.json');
  if (text === undefined) {
    problem('datapackage.json', {
      field: '',
      found: 'no such file',
      wanted: 'the descriptor of a data package, as guides have it at /data/datapackage.json',
      hint: 'take datapackage.json with its folder tables/',
    });
    return failed();
  }
  const descriptor = descriptorSchema.safeParse(parsed(text));
  if (!descriptor.success) {
    for (const { path, message } of descriptor.error.issues) {
      problem('datapackage.json', { field: path.join('.'), found: message, wanted: 'a data package of a guide' });
    }
    return failed();
  }

  const { resources, conditions, contributors, ...about } = descriptor.data;
  const table = <T extends TableName>(name: T): Row<T>[] => {
    const path = resources.find((it) => it.name === name)?.path;
    // Nothing outside the package is read, whatever its descriptor says.
    const own = path !== undefined && /^[\w-]+(\/[\w-]+)*\.csv$/.test(path) ? files.text(path) : undefined;
    if (path === undefined || own === undefined) {
      problem('datapackage.json', {
        field: `resources.${name}`,
        found: path === undefined ? 'no such table' : `the path ${shown(path)}, where no file of the package lies`,
        wanted: `the table of ${name}`,
      });
      return [];
    }
    const rows = csvParse(own.replace(/^\uFEFF/, ''));
    const missing = COLUMNS[name].filter((it) => !rows.columns.includes(it));
    if (missing.length > 0) {
      problem(path, { line: 1, field: '', found: `no column ${missing.join(', ')}`, wanted: COLUMNS[name].join(', ') });
      return [];
    }
    return rows.map((row, i) => ({ ...(row as unknown as Row<T>), line: i + 2 }));
  };
  const number = (name: TableName, { line }: { line: number }, field: string, written: string): number | undefined => {
    if (written === '') return undefined;
    const value = Number(written);
    if (Number.isFinite(value)) return value;
    problem(`tables/${name}.csv`, { line, field, found: shown(written), wanted: 'a number, or nothing' });
    return undefined;
  };

  const figures = Map.groupBy(table('figures'), (it) => `${it.panel}/${it.session}`);
  const readings = Map.groupBy(table('readings'), (it) => `${it.panel}/${it.session}`);
  const methods = new Map(
    table('metrics').map((it) => {
      const methodVersion = number('metrics', it, 'method_version', it.method_version) ?? 0;
      return [it.metric, { method: it.method, methodVersion }];
    }),
  );
  const sessions = table('sessions').filter((it) => it.current === 'true');
  const panels = table('panels').flatMap((panel): OtherPanel[] => {
    const session = sessions.find((it) => it.panel === panel.panel);
    if (!session) return [];
    const key = `${panel.panel}/${session.session}`;
    // It becomes a link: no script hides in one.
    if (!/^https?:\/\//.test(panel.address)) {
      const wanted = 'a web address that starts with https://';
      problem('tables/panels.csv', { line: panel.line, field: 'address', found: shown(panel.address), wanted });
    }
    return [
      {
        slug: panel.panel,
        address: panel.address,
        maker: panel.maker,
        model: panel.model,
        session: session.session,
        distance: number('sessions', session, 'distance', session.distance),
        blockDistances: new Map(
          (readings.get(key) ?? []).flatMap((row) => {
            const block = /^(\w+)\.distance$/.exec(row.reading)?.[1];
            const value = block && number('readings', row, 'value', row.value);
            return block && value ? [[block, value] as const] : [];
          }),
        ),
        figures: new Map(
          (figures.get(key) ?? []).flatMap((row) => {
            const cell = (field: 'value' | 'interval95_low' | 'interval95_high') =>
              number('figures', row, field, row[field]);
            const [value, low, high] = [cell('value'), cell('interval95_low'), cell('interval95_high')];
            if (row.bound !== '' || value === undefined || low === undefined || high === undefined) return [];
            if (!(low <= value && value <= high)) {
              problem('tables/figures.csv', {
                line: row.line,
                field: 'interval95_low, interval95_high',
                found: `${value} outside ${low} to ${high}`,
                wanted: 'an interval around the value',
              });
              return [];
            }
            const figure: OtherFigure = {
              value,
              interval95: [low, high],
              unit: row.unit,
              ...(methods.get(row.metric) ?? { method: '', methodVersion: 0 }),
              inDoubt: row.in_doubt === 'true',
            };
            return [[row.metric, figure] as const];
          }),
        ),
      },
    ];
  });
  if (problems.length > 0) return failed();
  const publisher = contributors[0]?.title ?? about.title;
  return { guide: { ...about, publisher, currency: conditions.currency, panels }, problems: [] };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
