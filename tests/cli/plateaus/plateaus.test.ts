import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { plateausCommand } from '../../../src/cli/plateaus/plateaus.ts';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';
import { gridRun } from '../../support/grid-run.ts';
import { runCommand } from '../run-command.ts';

const PLOVER = 'panels/plover/index.md';
/** Row by row, to and fro. */
const LEVELS = [31.2, 40.3, 31, 39.2, 52.8, 39.6, 30.9, 39.9, 30.6];

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
  const { times, values } = gridRun(LEVELS);
  const rows = [...times].map((t, i) => `${t.toFixed(1)},${(values[i] as number).toFixed(2)}`);
  content.write('panels/plover/run.csv', `Time (s),E (mW/cm2)\n${rows.join('\n')}\n`);
});
afterEach(() => content.delete());

const name = (more = 'grid: true') =>
  content.edit(PLOVER, '\n---\n\nNotes', `\n    sweeps:\n      - { file: run.csv, ${more} }\n---\n\nNotes`);
const withoutGrid = () => content.write(PLOVER, content.read(PLOVER).replace(/ {4}grid:\n(?: {6,}.*\n)+/, ''));
const run = (args: string[], answers?: string[]) => runCommand(plateausCommand, args, content.folder, answers);

describe('the points of a grid in one go', () => {
  test('are shown, and never written by themselves', async () => {
    name();
    withoutGrid();
    const before = content.read(PLOVER);
    const shown = await run(['plover', '--order', 'rows'], ['n']);
    expect(shown.code).toBe(1);
    expect(shown.asked).toHaveLength(1);
    expect(shown.out.split('\n').filter((it) => / s +\d+\.\d s /.test(it))).toHaveLength(9);
    expect(content.read(PLOVER)).toBe(before);
  });

  test('are written on agreement, in the places of the sensor’s way', async () => {
    name();
    withoutGrid();
    const { code, error } = await run(['plover', '--yes']);
    expect([code, error]).toEqual([0, '']);
    expect(content.problems()).toEqual([]);
    const rows = content.content().panels.get('plover')?.data.sessions[0]?.grid?.rows as Array<
      Array<{ value: number }>
    >;
    const near = (all: number[]) => all.map((it) => expect.closeTo(it, 0));
    // The shortest way turns back at the end of each line.
    const wide = [near(LEVELS.slice(0, 3)), near(LEVELS.slice(3, 6).toReversed()), near(LEVELS.slice(6))];
    const tall = [0, 1, 2].map((row) => [0, 1, 2].map((column) => wide[column]?.[row]));
    const read = rows.map((row) => row.map((it) => it.value));
    expect([wide, tall]).toContainEqual(read);
  });

  test('stand beside a typed grid, which stays', async () => {
    name();
    const before = content.read(PLOVER);
    expect(before).toContain('    grid:');
    const { code, out } = await run(['plover', '--yes']);
    expect(code).toBe(0);
    expect(out).toContain('typed');
    expect(content.read(PLOVER)).toBe(before);
  });

  test('are told as data', async () => {
    name();
    withoutGrid();
    const { out } = await run(['plover', '--dry-run', '--json']);
    expect(JSON.parse(out)).toMatchObject({
      panel: 'plover',
      file: 'run.csv',
      found: 9,
      points: { length: 9 },
      written: false,
    });
  });

  test('can’t be told where there are more or fewer', async () => {
    name();
    withoutGrid();
    const { code, out } = await run(['plover', '--grid', '3x5', '--yes']);
    expect(code).toBe(1);
    expect(out).toContain('Held still 9 times');
    expect(content.read(PLOVER)).not.toContain('grid:\n');
  });

  test('need a log, and a grid that can be', async () => {
    await expect(run(['plover'])).resolves.toMatchObject({ code: 1, error: expect.stringContaining('grid: true') });
    await expect(run(['plovr'])).resolves.toMatchObject({ error: expect.stringContaining('did you mean plover') });
  });
});
