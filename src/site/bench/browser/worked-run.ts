/** A run worked out as the build works a panel out: problems of its file, figures, flags, and what to read next. */
import type { Content, Entry } from '../../../content/read/content.ts';
import { betweenFiles, inOrder, parseSource } from '../../../content/read/parse-source.ts';
import type { PhotoFile } from '../../../content/read/photo-file.ts';
import { readAsIs } from '../../../content/read/read-as-is.ts';
import type { Source } from '../../../content/read/source.ts';
import { frontMatterSource } from '../../../content/read/source-text.ts';
import type { RawCollections } from '../../../content/rules/rule.ts';
import { RULES_OF_TEXT } from '../../../content/rules/rules-of-text.ts';
import { type Panel, panelSchema } from '../../../content/schema/panel.ts';
import type { Problem } from '../../../content/schema/problem.ts';
import type { SessionEntry } from '../../../ledger/ledger.ts';
import { lightBasis, type WorkedLight } from '../../../ledger/modelled-light.ts';
import { type PackedResult, packResult } from '../../../ledger/optics-pack.ts';
import { panelContext } from '../../../ledger/panel-context.ts';
import { panelEntry, type SinglePanel } from '../../../ledger/panel-entry.ts';
import { estimatePanel } from '../../../measure/beam/estimate.ts';
import type { OpticsInput } from '../../../measure/beam/optics-input.ts';
import { type Advice, adviceOn } from './advice.ts';
import type { BenchPanelFile, BenchSetup } from './bench-data.ts';
import { openSetup, otherRooms, sourceOf } from './open-setup.ts';
import type { Run } from './run.ts';
import { contentFile, panelFileName, standInFor } from './run-file.ts';
import { runPath } from './run-path.ts';

/** Something wrong in the content file that the run would make, at its place in the run. */
export interface RunProblem extends Problem {
  /** Path of the entry or setting that it is about; undefined for what lies elsewhere in the file. */
  path: string | undefined;
}

export interface WorkedRun {
  /** What the check would refuse. */
  problems: readonly RunProblem[];
  /** The panel with its figures and flags, as a build makes them; undefined where its file can't be read so far. */
  panel: SinglePanel | undefined;
  /** The run's own session in it. */
  session: SessionEntry | undefined;
  /** Points of the grid that have a reading that counts, of how many; figures of the grid rest on these. */
  grid: { read: number; of: number };
  advice: readonly Advice[];
}

/**
 * Works a run out. Points of the grid that are not read yet count as points without a kept reading, and the model of the
 * light waits for the last of them.
 *
 * @param existing the panel's file, or the guide's data of it; needed where the panel is not new
 * @param estimate what works the light out
 * @throws RunFileError, EditError as `contentFile` does
 */
export function workRun(
  run: Run,
  setup: BenchSetup,
  existing?: string | BenchPanelFile,
  estimate: typeof estimatePanel = estimatePanel,
): WorkedRun {
  const before = typeof existing === 'object' ? standInFor(existing) : existing;
  const file = panelFileName(run, setup);
  const place = { path: file, file };
  const read = (text: string) => frontMatterSource(text, place, panelSchema, readAsIs);
  const { source, problems: yamlProblems } = read(contentFile(run, setup, before));
  const problems = source ? [...yamlProblems, ...problemsOf(source, run, setup)] : yamlProblems;
  const grid = gridRead(run);
  // Nothing stands in the place of a point that is not read, and what stands there is struck.
  const shown = grid.read < grid.of && grid.read > 0 ? read(contentFile(filledUp(run), setup, before)).source : source;
  const worked = shown && figuresOf(shown, run, setup, { grid, hasProblems: problems.length > 0, estimate });
  return {
    problems: problems.map((it) => ({ ...it, path: runPath(it.field, run, source) })),
    panel: worked?.panel,
    session: worked?.session,
    grid,
    advice: adviceOn(run, setup, worked, grid),
  };
}

function problemsOf(source: Source, run: Run, setup: BenchSetup): Problem[] {
  const { slug } = run.panel;
  const { raw } = openSetup(setup);
  const all: RawCollections = {
    ...raw,
    panels: new Map([
      ...setup.panels
        .filter((it) => it.slug !== slug)
        .map(({ slug: id, file, maker, model, formerly }): [string, Source] => [
          id,
          sourceOf({ id, file, data: { maker, model, ...(formerly.length > 0 && { formerly }) } }),
        ]),
      [slug, source],
    ]),
    methods: new Map(),
    corrections: new Map(),
    cautions: new Map(),
  };
  const around = { today: dayOf(run, setup), folder: '', shownAs: 'content', unread: new Set<string>(), drafts: true };
  const between = betweenFiles(
    all,
    RULES_OF_TEXT.flatMap((rule) => rule.run(all, around)),
  );
  const own = [...between.filter((it) => it.file === source.file), ...parseSource(panelSchema, slug, source).problems];
  return inOrder(all, own);
}

/** The run is of a day that has come, whenever the guide was built. */
const dayOf = (run: Run, setup: BenchSetup) => [run.date, setup.today].toSorted().at(-1) ?? run.date;

/** Results of the model of light by what went in: readings that are typed beside it change nothing of it. */
const lights = new Map<string, PackedResult>();
const MOST_LIGHTS = 40;

interface Worked {
  panel: SinglePanel;
  session: SessionEntry;
}

function figuresOf(
  source: Source,
  run: Run,
  setup: BenchSetup,
  { grid, hasProblems, estimate }: { grid: WorkedRun['grid']; hasProblems: boolean; estimate: typeof estimatePanel },
): Worked | undefined {
  const { slug } = run.panel;
  const parsed = parseSource(panelSchema, slug, source).entry;
  if (!parsed) return undefined;
  try {
    const content = contentWith(parsed, run, setup);
    const context = panelContext(parsed, content, dayOf(run, setup));
    const own = `${slug}/${run.date}`;
    const worked = context.sessions.map((bench): [string, WorkedLight] => {
      const basis = lightBasis(bench);
      const isPartial = bench.id === own && grid.read > 0 && grid.read < grid.of;
      if (isPartial)
        return [
          bench.id,
          { basis: { ...basis, optics: { withheld: { code: 'grid-not-all-read', ...grid } } }, result: undefined },
        ];
      return [bench.id, { basis, result: 'input' in basis.optics ? lightOf(basis.optics.input, estimate) : undefined }];
    });
    const panel = panelEntry(context, new Map(worked));
    const session = panel.sessions.find((it) => it.date === run.date);
    return session && { panel, session };
  } catch (error) {
    // What the check refuses need not be something that figures can be made of.
    if (hasProblems) return undefined;
    throw error;
  }
}

function lightOf(input: OpticsInput, estimate: typeof estimatePanel): PackedResult {
  const key = JSON.stringify(input);
  const known = lights.get(key) ?? packResult(estimate(input));
  lights.delete(key);
  lights.set(key, known);
  for (const oldest of lights.keys()) if (lights.size > MOST_LIGHTS) lights.delete(oldest);
  return known;
}

/** The guide with this panel in it; its photos are of no account here, and a maker without a file is known by its id. */
function contentWith(panel: Entry<Panel>, run: Run, setup: BenchSetup): Content {
  const { entries } = openSetup(setup);
  const { maker } = panel.data;
  const [anyMaker] = entries.makers.values();
  const makers = new Map(entries.makers);
  if (!makers.has(maker) && anyMaker)
    makers.set(maker, { ...anyMaker, id: maker, data: { ...anyMaker.data, name: maker } });
  const names = [...panel.data.photos, ...panel.data.sessions.flatMap((it) => it.photos)].map((it) => it.file);
  const photo = (path: string): PhotoFile => ({ path, width: 1, height: 1, mark: '' });
  const others = otherRooms(setup.rooms, run.panel.slug);
  return {
    ...entries,
    makers,
    panels: new Map([
      [panel.id, panel],
      ['', { ...panel, id: '', data: { ...panel.data, sessions: others } }],
    ]),
    photos: new Map([[panel.id, { listed: new Map(names.map((it) => [it, photo(it)])), unnamed: [] }]]),
    methods: new Map(),
    cautions: { ...panel, id: 'cautions', data: {} } as unknown as Content['cautions'],
    // What instruments wrote lies beside the content's file, where the pad cannot look.
    benchFiles: new Map(),
    corrections: undefined,
    // Nobody else’s figures are asked for at the bench.
    others: [],
    unfinished: [],
  };
}

function gridRead(run: Run): WorkedRun['grid'] {
  const { rows, columns } = run.grid;
  const counted = new Set(run.entries.filter((it) => it.struck === undefined).map((it) => it.path));
  const points = gridPaths(run);
  return { read: points.filter((it) => counted.has(it)).length, of: rows * columns };
}

const gridPaths = ({ grid: { rows, columns } }: Run) =>
  Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (_, c) => `grid.rows[${r}][${c}]`)).flat();

/** The run with a struck reading in each point that has none, so that the reader of content takes the others. */
function filledUp(run: Run): Run {
  const read = new Set(run.entries.map((it) => it.path));
  const empty = gridPaths(run).filter((it) => !read.has(it));
  const fill = empty.map((path, i) => ({ id: -1 - i, path, written: '1', at: '', struck: '-' }));
  return { ...run, entries: [...run.entries, ...fill] };
}
