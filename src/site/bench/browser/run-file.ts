/** The content file that a run comes to: the same that the command line writes. */

import { isScalar, parse, stringify } from 'yaml';
import { openContent } from '../../../content/edit/content-text.ts';
import type { Edit } from '../../../content/edit/edit.ts';
import { editContent } from '../../../content/edit/edit-content.ts';
import { isBlock, ownField, valueAt } from '../../../content/schema/block.ts';
import { CARRIED_NAMES } from '../../../content/schema/carried.ts';
import { isGap } from '../../../content/schema/gap.ts';
import { panelSchema } from '../../../content/schema/panel.ts';
import { fieldPath } from '../../../content/schema/problem.ts';
import { addSession, replaceSession, sessionsIn } from '../../../content/templates/add-session.ts';
import { newPanelText } from '../../../content/templates/new-panel.ts';
import { newSession } from '../../../content/templates/new-session.ts';
import { inFlow } from '../../../content/templates/yaml-text.ts';
import type { BenchPanelFile, BenchSetup } from './bench-data.ts';
import type { Run } from './run.ts';
import { unknownFields } from './run-from-file.ts';
import { sessionData } from './session-data.ts';

/** As much of the guide as a content file is made with. */
export interface FileSetup {
  readonly guide: Pick<BenchSetup['guide'], 'data'>;
  readonly panels: ReadonlyArray<Pick<BenchSetup['panels'][number], 'slug' | 'file'>>;
}

/** Why there is no content file of a run. */
export class RunFileError extends Error {
  readonly code: 'no file' | 'session there';

  constructor(code: RunFileError['code'], message: string) {
    super(message);
    this.code = code;
  }
}

/** The name of a panel's file in the content folder. */
export const panelFileName = ({ panel: { slug, isNew } }: Run, { panels }: FileSetup) =>
  (!isNew && panels.find((it) => it.slug === slug)?.file) || `content/panels/${slug}/index.md`;

/**
 * The text of the panel's file with the run in it: that of a new panel, as `new panel` writes it with the same values; or
 * the panel's own file with a session more, all else byte by byte as it was. A run that is not finished is a draft, with
 * gaps for what is still to be read.
 *
 * @param existing the panel's file as it is now; needed where the panel is not new
 * @throws RunFileError where that is missing, or has a session of the same day
 * @throws EditError where it is written in a way that nothing can be added to
 */
export function contentFile(run: Run, setup: FileSetup, existing?: string): string {
  if (existing === undefined && run.panel.isNew) return newFile(run, setup);
  if (existing === undefined) throw new RunFileError('no file', `the file of ${run.panel.slug} is needed`);
  const file = panelFileName(run, setup);
  if (sessionsIn(existing, file).some((it) => String(it.date) === run.date)) {
    throw new RunFileError('session there', `${file} has a session of ${run.date} already`);
  }
  return withMeasures(run, addSession(existing, file, sessionText(run, existing, file)), file);
}

function newFile(run: Run, setup: FileSetup): string {
  const { fields, panel } = sessionData(run);
  const { maker, model } = run.panel;
  const currency = valueAt(setup.guide.data, ['currency']);
  const session = {
    ...(Object.keys(run.instruments).length > 0 && { instruments: run.instruments }),
    ...(run.isFinished ? {} : { draft: true }),
    ...fields,
  };
  return newPanelText({
    values: {
      ...(maker && { maker }),
      ...(model && { model }),
      claims: { date: run.date },
      prices: [{ date: run.date, ...(typeof currency === 'string' && { currency }) }],
      ...panel,
      sessions: [session],
    },
    session: {
      date: run.date,
      methodVersion: run.methodVersion,
      distance: fields.distance,
      instruments: run.instruments,
      grid: run.grid,
    },
  });
}

/**
 * The panel's file with the run in the place of the session of its day: a run that has been put together with that session
 * (`mergeRuns`). Fields of the session that no run knows of stay.
 *
 * @throws EditError where the file has no such session, or can't be changed
 */
export function mergedFile(run: Run, setup: FileSetup, existing: string): string {
  const file = panelFileName(run, setup);
  const sessions = sessionsIn(existing, file);
  const at = sessions.findIndex((it) => String(it.date) === run.date);
  const data: unknown = parse(openContent(existing, file).yaml, { logLevel: 'silent' });
  const others = unknownFields(sessions[at] ?? {}).map(
    (key) => `${key}: ${inFlow(valueAt(data, ['sessions', at, key]))}`,
  );
  const session = [sessionText(run, existing, file), ...others].join('\n');
  return withMeasures(run, replaceSession(existing, file, run.date, session), file);
}

/** The session of a run as YAML, as it goes into its panel's file. */
export function sessionText(run: Run, existing: string, file: string): string {
  const { fields } = sessionData(run, knownMeasures(existing, file));
  return newSession({
    date: run.date,
    methodVersion: run.methodVersion,
    earlier: sessionsIn(existing, file).filter((it) => String(it.date) < run.date),
    carried: new Map(CARRIED_NAMES.flatMap((name) => (run.carried[name] ? [[name, run.carried[name]] as const] : []))),
    taken: { instruments: run.instruments, fields, isFinished: run.isFinished },
  });
}

const MEASURES = ['field', 'housing', 'weight'];

/** Measures of the panel that its file has: they are not measured anew in every session. */
function knownMeasures(text: string, file: string): Record<string, string> {
  const data: unknown = parse(openContent(text, file).yaml, { logLevel: 'silent', schema: 'failsafe' });
  const leaves = MEASURES.flatMap((key) => leavesOf(isBlock(data) ? ownField(data, key) : undefined, [key]));
  return Object.fromEntries(
    leaves.flatMap(({ path, value }) =>
      typeof value !== 'string' || value === '' || isGap(value) ? [] : [[fieldPath(path), value] as const],
    ),
  );
}

const leavesOf = (value: unknown, path: string[]): Array<{ path: string[]; value: unknown }> =>
  isBlock(value) && !isScalar(value)
    ? Object.entries(value).map(([key, it]) => ({ path: [...path, key], value: it }))
    : [{ path, value }];

/** The file with the measures that it lacks. */
function withMeasures(run: Run, text: string, file: string): string {
  const { panel } = sessionData(run, knownMeasures(text, file));
  const order = Object.keys(panelSchema.shape);
  return Object.entries(panel).reduce((before, [key, value]) => {
    const data: unknown = parse(openContent(before, file).yaml, { logLevel: 'silent' });
    const there = isBlock(data) ? ownField(data, key) : undefined;
    if (there === undefined) return editContent(before, file, [{ do: 'add', field: [key], value, order }]);
    // A block that stands there with gaps is filled in.
    const edits = leavesOf(value, [key]).flatMap(({ path, value: it }): Edit[] => {
      if (isGap(it)) return [];
      return [{ do: valueAt(data, path) === undefined ? 'add' : 'set', field: path, value: it }];
    });
    return editContent(before, file, edits);
  }, text);
}

/** A panel's data as a file, for working it out where the file itself is not at hand. It is not the tester's file. */
export function standInFor({ data, text }: BenchPanelFile): string {
  return text ?? `---\n${stringify(data)}---\n`;
}
