/**
 * `npm test`: types, lint, a check of content/, unit tests, and the tests of the demonstration as it is built, browser
 * included. Every step runs, whatever failed before it; the last line counts what really ran. Exit 1 where anything
 * failed. What the demonstration is, and that it is not content/, stands in support/demo-folder.ts.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { IMPOSSIBLE_CODE } from '../src/cli/exit-codes.ts';
import { diskInMemory } from './support/disk-in-memory.ts';
import { ensureBrowsers } from './support/ensure-browser.ts';

interface Count {
  passed: number;
  failed: number;
}

interface Step {
  name: string;
  run(): Promise<Count>;
}

/** For Astro's checker: pages and components alone. */
const PAGES = 'tests/tsconfig.pages.json';

/** Its command has the name of the other compiler's, and either may have it. */
const COMPILER = 'node_modules/typescript-native/bin/tsc';

// Of all steps, unless whoever runs them wants another place.
process.env.TMPDIR ??= diskInMemory() ?? tmpdir();
const reports = mkdtempSync(join(tmpdir(), 'panel-ledger-tests-'));

/** One command is one check: it passes when it exits with 0. */
function command(name: string, line: readonly string[]): Step {
  return { name, run: async () => counted((await exitCode(start(line, 'inherit'))) === 0) };
}

/**
 * A command that uses one processor, beside the steps before it, begun at once or as soon as what it has to wait for has
 * ended: what it says is kept until its turn. It passes when it exits with one of the given codes.
 */
function beside(
  name: string,
  line: readonly string[],
  { after = Promise.resolve(), passing = [0] }: { after?: Promise<unknown>; passing?: readonly number[] } = {},
): Step & { ended: Promise<unknown> } {
  const ended = after.then(() => heard(start(line, 'pipe')));
  return {
    name,
    ended,
    run: async () => {
      const { code, said } = await ended;
      console.log(said.trimEnd());
      return counted(passing.includes(code));
    },
  };
}

/** What a command says, all of it, and its exit code. */
async function heard(child: ChildProcess): Promise<{ code: number; said: string }> {
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream?.setEncoding('utf8').on('data', (text: string) => {
      said += text;
    });
  }
  return { code: await exitCode(child), said };
}

function counted(isPassed: boolean): Count {
  return isPassed ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

function start([file = '', ...rest]: readonly string[], output: 'inherit' | 'pipe'): ChildProcess {
  return spawn(file, rest, {
    stdio: ['ignore', output, output],
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' },
  });
}

/** Exit code of a command; 1 for one that could not start or was stopped. */
async function exitCode(child: ChildProcess): Promise<number> {
  try {
    const [code]: unknown[] = await once(child, 'close');
    return typeof code === 'number' ? code : 1;
  } catch (error) {
    console.error(error);
    return 1;
  }
}

/**
 * Vitest's own count of its tests; a run that wrote no report, or ran no test, is a failure. It begins at once, or as soon
 * as what it has to wait for has ended, and what it says is kept until its turn.
 */
function vitest(name: string, config: string, after: Promise<unknown>, way: readonly string[] = []): Step {
  const report = join(reports, `${name.replaceAll(' ', '-')}.json`);
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const run = after.then(() => heard(start([...way, 'vitest', 'run', '--config', config, ...reporters], 'pipe')));
  return {
    name,
    run: async () => {
      const { code, said } = await run;
      console.log(said.trimEnd());
      let result: { numPassedTests: number; numFailedTests: number };
      try {
        result = JSON.parse(readFileSync(report, 'utf8'));
      } catch {
        return { passed: 0, failed: 1 };
      }
      const count = { passed: result.numPassedTests, failed: result.numFailedTests };
      // A file that does not load counts no failed test, but the run fails all the same.
      if (count.failed === 0 && (code !== 0 || count.passed === 0)) count.failed = 1;
      return count;
    },
  };
}

ensureBrowsers();
// Only problems fail: what is impossible or doubtful in a tester's content is the tester's own matter.
const content = beside('content', ['npm', 'run', '--silent', 'check'], { passing: [0, IMPOSSIBLE_CODE] });
// Pages by Astro's checker, which needs the compiler as a library; all else by the compiler in machine code, which takes a
// third of the time for it, and needs what Astro writes of its modules.
const pages = beside('types of pages', ['astro', 'check', '--tsconfig', PAGES, '--minimumFailingSeverity', 'warning']);
const types = beside('types', ['node', COMPILER, '--noEmit', '--checkers', '2'], { after: pages.ended });
// Side by side, since neither keeps all processors busy all the time; the built site takes longer, and goes first. It waits
// for the types of pages: both write what Astro knows of the content. The unit tests wait for the content, whose check
// keeps the panels' light for all others, which would each work it out.
const unit = vitest('unit tests', 'tests/vitest.config.ts', content.ended, ['nice', '-n', '10']);
const site = vitest('site tests', 'tests/built/vitest.config.ts', pages.ended);
const steps: Step[] = [command('lint', ['biome', 'ci', '.']), content, pages, types, unit, site];
const total: Count = { passed: 0, failed: 0 };
const lines: string[] = [];
for (const step of steps) {
  console.log(`\n== ${step.name}`);
  const count = await step.run();
  total.passed += count.passed;
  total.failed += count.failed;
  lines.push(`${step.name}: ${count.passed} passed, ${count.failed} failed`);
}
rmSync(reports, { recursive: true, force: true });
console.log(`\n${lines.join('\n')}\n\n${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed > 0 ? 1 : 0;
