import { afterEach, expect, test, vi } from 'vitest';
import { clearStage, endProgress, startProgress, tellStage } from '../../src/build/progress.ts';

/** What a screen would show of what was written: an escape that clears the line, then its text. */
function terminal(isTTY: boolean) {
  const written: string[] = [];
  return {
    isTTY,
    columns: 20,
    write: (text: string) => {
      written.push(text);
      return true;
    },
    texts: () => written.filter((it) => !it.startsWith('\u001b')),
    cleared: () => written.filter((it) => it.includes('[2K') || it.includes('[1K')).length,
  };
}

/** The clock that stages go by. */
let now = 0;
vi.spyOn(performance, 'now').mockImplementation(() => now);
afterEach(endProgress);

test('one line, renewed, once a build takes its time; seldom enough for a terminal', () => {
  const screen = terminal(true);
  startProgress(screen as never);
  tellStage('Pages: 1');
  expect(screen.texts()).toEqual([]);
  now += 3001;
  tellStage('Pages: 2');
  tellStage('Pages: 3');
  now += 101;
  tellStage('Pages: 4, and a text longer than the line');
  expect(screen.texts()).toEqual(['Pages: 2', 'Pages: 4, and a tex']);
});

test('what nothing can be told during is told at once', () => {
  const screen = terminal(true);
  startProgress(screen as never);
  tellStage('Reading', true);
  expect(screen.texts()).toEqual(['Reading']);
  const before = screen.cleared();
  clearStage();
  clearStage();
  expect(screen.texts()).toEqual(['Reading']);
  expect(screen.cleared()).toBeLessThanOrEqual(before + 1);
});

test('nobody watches: not a byte', () => {
  const screen = terminal(false);
  startProgress(screen as never);
  tellStage('Reading', true);
  clearStage();
  expect([screen.texts(), screen.cleared()]).toEqual([[], 0]);
});
