/** Runs builds from within tests, and tells whether they changed anything. */
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { promisify } from 'node:util';

/** How a command ended and what it said. */
export interface Ended {
  code: number;
  stdout: string;
  stderr: string;
}

/**
 * The tester's build command in a bare shell: none of the settings of the test run, only those given.
 *
 * @param project a copy of the project to build in, where its lock is not to be met
 */
export async function build(settings: Readonly<Record<string, string>>, project = '.'): Promise<Ended> {
  const { PATH, HOME, TMPDIR } = process.env;
  const env = { PATH, HOME, TMPDIR, ASTRO_TELEMETRY_DISABLED: '1', ...settings };
  try {
    const said = await promisify(execFile)(process.execPath, ['src/cli/main.ts', 'build'], { env, cwd: project });
    return { code: 0, ...said };
  } catch (error) {
    const { code, stdout, stderr } = error as Ended;
    // No number: it was stopped, or never ran.
    if (typeof code !== 'number') throw error;
    return { code, stdout, stderr };
  }
}

/** The fingerprint of every file of a folder, by its path in it. */
export function fingerprints(folder: string): Record<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((it) => it.isFile());
  return Object.fromEntries(
    files
      .map((it) => join(it.parentPath, it.name))
      .toSorted()
      .map((file) => [relative(folder, file), createHash('sha256').update(readFileSync(file)).digest('hex')]),
  );
}

/** Files that two folders do not have alike, by their fingerprints. */
export function differences(before: Record<string, string>, after: Record<string, string>): string[] {
  return [...new Set([...Object.keys(before), ...Object.keys(after)])]
    .filter((it) => before[it] !== after[it])
    .toSorted();
}
