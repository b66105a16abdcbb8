import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { parse } from 'yaml';
import { newPanelCommand } from '../../../../src/cli/new/new-panel.ts';
import { planRetest } from '../../../../src/cli/retest/plan.ts';
import { openContent } from '../../../../src/content/edit/content-text.ts';
import { sessionsIn } from '../../../../src/content/templates/add-session.ts';
import { heldInstruments } from '../../../../src/ledger/held-instruments.ts';
import {
  doAct,
  type Entry,
  newLog,
  type Run,
  type RunLog,
  redo,
  runOf,
  undo,
} from '../../../../src/site/bench/browser/run.ts';
import { contentFile } from '../../../../src/site/bench/browser/run-file.ts';
import { runFromFile, runFromSession } from '../../../../src/site/bench/browser/run-from-file.ts';
import { withPoint } from '../../../../src/site/bench/browser/session-data.ts';
import { runCommand } from '../../../cli/run-command.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../../support/content-folder.ts';
import { anyActs, EMPTY_RUN, SETUP } from './any-run.ts';

const FILE = 'content/panels/kelpwright-plover/index.md';

/** What somebody does who types what is left in the end, in its order, and nothing else. */
function typed({ entries }: Run, start: Run): Run {
  return entries.reduce((run, { path, written, at, struck, accepted }) => {
    const log = doAct(newLog(run), { kind: 'enter', path, written, at });
    const id = runOf(log).entries.at(-1)?.id ?? 0;
    if (struck !== undefined) return runOf(doAct(log, { kind: 'strike', id, reason: struck }));
    return runOf(accepted === undefined ? log : doAct(log, { kind: 'accept', id, reason: accepted }));
  }, start);
}

const done = (acts: ReadonlyArray<Parameters<typeof doAct>[1] | 'undo' | 'redo'>, start = EMPTY_RUN) =>
  acts.reduce<RunLog>(
    (log, it) => (it === 'undo' ? undo(log) : it === 'redo' ? redo(log) : doAct(log, it)),
    newLog(start),
  );

/** An entry with its place by where it lies: a finished file leaves out places that were not read. */
const shown =
  ({ settings }: Run) =>
  ({ path, written, struck, accepted }: Entry) =>
    JSON.stringify([
      placeOf(path, settings),
      withPoint(written),
      struck?.replace(/\s+/g, ' '),
      accepted?.replace(/\s+/g, ' '),
    ]);

const placeOf = (path: string, settings: Run['settings']) =>
  path.replace(/^(beyond|distances)\[\d+\]/, (it) =>
    ['edge', 'past', 'distance'].map((key) => settings[`${it}.${key}`]).join(' '),
  );

test('whatever was done, undone and redone, the file is that of typing what is left', () => {
  fc.assert(
    fc.property(anyActs, fc.boolean(), (acts, isFinished) => {
      const run = { ...runOf(done(acts)), isFinished };
      expect(contentFile(typed(run, { ...EMPTY_RUN, isFinished }), SETUP)).toBe(contentFile(run, SETUP));
    }),
    { numRuns: 20 },
  );
});

test('undoing everything and redoing it changes nothing', () => {
  fc.assert(
    fc.property(anyActs, (acts) => {
      const log = done(acts);
      let back = log;
      while (back.acts.length > 0) back = undo(back);
      expect(runOf(back)).toEqual(EMPTY_RUN);
      while (back.undone.length > 0) back = redo(back);
      expect(runOf(back).entries).toEqual(runOf({ ...log, acts: [...log.acts, ...log.undone.toReversed()] }).entries);
    }),
  );
});

describe('nothing is dropped: the file read back has every entry', () => {
  test.each([
    ['of a new panel', undefined],
    ['in a panel that was there', '---\nmaker: kelpwright   # ours\nmodel: Plover\nstatus: published\n---\n\nNotes.\n'],
  ])('%s', (_what, existing) => {
    fc.assert(
      fc.property(anyActs, fc.boolean(), (acts, isFinished) => {
        const run = { ...runOf(done(acts)), isFinished, panel: { ...EMPTY_RUN.panel, isNew: existing === undefined } };
        const text = contentFile(run, SETUP, existing);
        const back = runFromFile(text, FILE, { id: run.id, date: run.date, panel: run.panel });
        // The panel's own measures stand outside its session.
        const ofSession = (it: Entry) => !/^(field|weight)/.test(it.path);
        expect(back?.entries.filter(ofSession).map(shown(back)).toSorted()).toEqual(
          run.entries.filter(ofSession).map(shown(run)).toSorted(),
        );
        for (const key of ['field.width', 'field.height', 'weight']) {
          const last = run.entries.findLast(
            (it) => it.path === key && it.struck === undefined && !/^(TODO|)$/.test(it.written),
          );
          if (last)
            expect(parse(openContent(text, FILE).yaml, { schema: 'failsafe' })).toHaveProperty(
              key,
              withPoint(last.written),
            );
        }
        expect([back?.texts, back?.isFinished, back?.date]).toEqual([run.texts, isFinished, run.date]);
      }),
      { numRuns: 20 },
    );
  });
});

describe('the same bytes as the command line', () => {
  let content: ContentFolder;
  beforeAll(() => {
    content = tinyContent();
  });
  afterAll(() => content.delete());

  const entered = (start: Run, readings: ReadonlyArray<readonly [path: string, written: string]>) =>
    runOf(
      readings.reduce((log, [path, written]) => doAct(log, { kind: 'enter', path, written, at: '' }), newLog(start)),
    );

  test('as `retest`, its blanks filled in', () => {
    const path = 'panels/plover/index.md';
    const file = { slug: 'plover', path, text: content.read(path), name: '', model: 'Plover', status: 'published' };
    const carry = { allBut: ['light', 'mains', 'sound'] as const };
    const { files } = planRetest(file, { date: TODAY, carry, methodVersion: 1 });
    const begun = String(files[0]?.after);
    const session = sessionsIn(begun, path).at(-1) ?? {};
    const fill = (line: string, values: readonly string[]) =>
      values.reduce(
        (it, value) => it.replace(/: (?=[,}])(.)/, (_, next) => `: ${value}${next === '}' ? ' }' : next}`),
        line,
      );
    const start = {
      ...runFromSession(session, { id: 'a', panel: { ...EMPTY_RUN.panel, slug: 'plover', isNew: false } }),
      grid: { rows: 3, columns: 3, inset: '1 in' },
    };
    const run = entered({ ...start, settings: { ...start.settings, 'sound.distance': '1 m' } }, [
      ...['31.0', '38.2', '30.8', '40.1', '50.0', '39.9', '30.6', '37.8', '31.2'].map(
        (it, i) => [`grid.rows[${Math.floor(i / 3)}][${i % 3}]`, it] as const,
      ),
      ...(['red', 'nearInfrared', 'combined'] as const).map((it, i) => [`peak.${it}`, `${20 + i}.50`] as const),
      ...(['standby', 'red', 'nearInfrared', 'combined'] as const).map(
        (it, i) => [`mains.${it}`, `${50 + i}`] as const,
      ),
      ['sound.off', '32.1'],
      ['sound.on', '44.0'],
    ]);
    const typed = begun
      .replace(/ *# To be read.*\n *# warmUp.*\n *# roomTemp.*\n/, '')
      .replace(/^( *)# (peak: .*)$/m, (_, margin, it) => margin + fill(it, ['20.50', '21.50', '22.50']))
      .replace(/^( *)# (mains: .*)$/m, (_, margin, it) => margin + fill(it, ['50', '51', '52', '53']))
      .replace(/^( *)# (sound: .*)$/m, (_, margin, it) => margin + fill(it, ['32.1', '44.0']))
      .replace(/^( *)# ( *(?:grid|inset|rows):.*)$/gm, '$1$2')
      .replace(
        /^( *)# {5}- \[ , , \]\n *# {5}- \[ , , \]\n *# {5}- \[ , , \]$/m,
        '$1    - [31.0, 38.2, 30.8]\n$1    - [40.1, 50.0, 39.9]\n$1    - [30.6, 37.8, 31.2]',
      );
    const unread = contentFile(run, SETUP, file.text);
    expect(unread).toContain('# warmUp: min');
    const done = { ...run, isFinished: true };
    expect(contentFile(done, SETUP, file.text)).toBe(typed.replace(/ *draft: true.*\n/, '').replace(/\n *# .*/g, ''));
  });

  test('as `new panel` with the same values', async () => {
    const start: Run = {
      ...EMPTY_RUN,
      panel: { slug: 'wrackline-plover-two', isNew: true, maker: 'wrackline', model: 'Plover Two' },
      date: TODAY,
      methodVersion: 1,
      instruments: heldInstruments(new Map([...content.content().instruments].map(([id, it]) => [id, it.data])), TODAY)
        .chosen,
      texts: {},
      isFinished: true,
    };
    const run = entered(start, [
      ['grid.rows[0][0]', '31.2'],
      ['grid.rows[0][1]', '30.1'],
      ['grid.rows[1][0]', '30.9'],
      ['grid.rows[1][1]', '30.6'],
      ['grid.rows[1][1]', '30.7'],
      ['peak.combined', '53.4'],
      ['mains.combined', '104.2'],
      ['warmUp', '30 min'],
      ['field.width', '7 in'],
      ['field.height', '11 in'],
    ]);
    const set = [
      'sessions.grid.rows=[[31.2, 30.1], [30.9, [30.6, 30.7]]]',
      'sessions.grid.inset=1 in',
      'sessions.peak.combined=53.4',
      'sessions.mains.combined=104.2',
      'sessions.warmUp=30 min',
      'field.width=7 in',
      'field.height=11 in',
    ].flatMap((it) => ['--set', it]);
    vi.spyOn(console, 'log').mockReturnValue();
    const { error } = await runCommand(
      newPanelCommand,
      ['Wrackline Plover Two', '--session', TODAY, '--method-version', '1', ...set],
      content.folder,
    );
    vi.restoreAllMocks();
    expect(error).toBe('');
    const written = content.read('panels/wrackline-plover-two/index.md');
    expect(written).toContain('        - [30.9, [30.6, 30.7]]');
    expect(contentFile(run, SETUP)).toBe(written);
  });
});
