/**
 * `npm test`: types, lint, unit tests, a build, and the tests of the built site, browser included. Every step
 * runs, whatever failed before it; the last line counts what really ran. Exit 1 where anything failed.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureBrowser } from './support/ensure-browser.ts';

interface Count {
  passed: number;
  failed: number;
}

interface Step {
  name: string;
  run(): Count;
}

const reports = mkdtempSync(join(tmpdir(), 'panel-ledger-tests-'));

/** One command is one check: it passes when it exits with 0. */
function command(name: string, ...line: string[]): Step {
  return { name, run: () => (succeeds(line) ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 }) };
}

function succeeds([file = '', ...rest]: readonly string[]): boolean {
  return (
    spawnSync(file, rest, { stdio: 'inherit', env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' } }).status === 0
  );
}

/** Vitest's own count of its tests; a run that wrote no report, or ran no test, is a failure. */
function vitest(name: string, config: string): Step {
  return {
    name,
    run: () => {
      const report = join(reports, `${name.replaceAll(' ', '-')}.json`);
      const ok = succeeds([
        'vitest',
        'run',
        '--config',
        config,
        '--reporter=default',
        '--reporter=json',
        `--outputFile.json=${report}`,
      ]);
      let result: { numPassedTests: number; numFailedTests: number };
      try {
        result = JSON.parse(readFileSync(report, 'utf8'));
      } catch {
        return { passed: 0, failed: 1 };
      }
      const count = { passed: result.numPassedTests, failed: result.numFailedTests };
      // A file that does not load counts no failed test, but the run fails all the same.
      if (count.failed === 0 && (!ok || count.passed === 0)) count.failed = 1;
      return count;
    },
  };
}

const steps: Step[] = [
  command('types', 'astro', 'check', '--minimumFailingSeverity', 'warning'),
  command('lint', 'biome', 'ci', '.'),
  vitest('unit tests', 'tests/vitest.config.ts'),
  command('build', 'npm', 'run', '--silent', 'build'),
  vitest('site tests', 'tests/built/vitest.config.ts'),
  vitest('builds anew', 'tests/built/builds.vitest.config.ts'),
];

ensureBrowser();
const total: Count = { passed: 0, failed: 0 };
const lines: string[] = [];
for (const step of steps) {
  console.log(`\n== ${step.name}`);
  const count = step.run();
  total.passed += count.passed;
  total.failed += count.failed;
  lines.push(`${step.name}: ${count.passed} passed, ${count.failed} failed`);
}
rmSync(reports, { recursive: true, force: true });
console.log(`\n${lines.join('\n')}\n\n${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed > 0 ? 1 : 0;
