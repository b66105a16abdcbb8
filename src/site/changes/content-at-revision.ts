import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { UsageError } from '../../content/read/usage-error.ts';

/**
 * Lays the content folder, as it was in a revision, into a temporary folder while something is done with it. Whatever
 * repository the content lies in is asked; its work tree and index are left alone.
 *
 * @param folder the content folder as it is
 * @param revision anything that git takes for one: `HEAD`, `v3`, `main~2`
 * @throws UsageError where there is no such repository, revision or folder in it
 */
export function withContentAt<T>(folder: string, revision: string, use: (laid: string) => T): T {
  const files = filesAt(folder, revision);
  const laid = mkdtempSync(join(tmpdir(), 'panel-ledger-content-'));
  try {
    for (const { path, bytes } of files) {
      const target = join(laid, path);
      mkdirSync(dirname(target), { recursive: true });
      writeFileSync(target, bytes);
    }
    return use(laid);
  } finally {
    rmSync(laid, { recursive: true, force: true });
  }
}

interface Blob {
  /** Within the content folder. */
  path: string;
  bytes: Uint8Array;
}

function filesAt(folder: string, revision: string): Blob[] {
  const top = git(folder, ['rev-parse', '--show-toplevel'], `${folder} lies in no git repository`).toString().trim();
  const commit = git(
    folder,
    ['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`],
    `the repository of ${folder} knows no revision "${revision}"`,
  );
  const within = relative(realpathSync(top), realpathSync(resolve(folder)))
    .split(sep)
    .join('/');
  const listed = git(
    top,
    ['ls-tree', '-r', '-z', commit.toString().trim(), ...(within ? ['--', `${within}/`] : [])],
    '',
  );
  const blobs = listed
    .toString()
    .split('\0')
    .flatMap((line) => {
      const [, type = '', hash = '', path = ''] = /^\d+ (\w+) (\w+)\t(.*)$/s.exec(line) ?? [];
      return type === 'blob' ? [{ hash, path: within ? path.slice(within.length + 1) : path }] : [];
    });
  if (blobs.length === 0) throw new UsageError(`${within || folder} was not there yet in the revision "${revision}".`);
  const bodies = bodiesOf(git(top, ['cat-file', '--batch'], '', blobs.map((it) => `${it.hash}\n`).join('')));
  return blobs.map(({ path }, i) => ({ path, bytes: bodies[i] ?? new Uint8Array() }));
}

/** What `git cat-file --batch` prints: for each a line with its length in bytes, its bytes, and a line end. */
function bodiesOf(printed: Buffer): Uint8Array[] {
  const bodies: Uint8Array[] = [];
  for (let at = 0; at < printed.length; ) {
    const end = printed.indexOf(0x0a, at);
    const length = Number(printed.toString('utf8', at, end).split(' ')[2]);
    bodies.push(printed.subarray(end + 1, end + 1 + length));
    at = end + 1 + length + 1;
  }
  return bodies;
}

/** Content with photos can be large. */
const MOST_BYTES = 2 ** 30;

function git(folder: string, args: readonly string[], refusal: string, input?: string): Buffer {
  const { status, stdout, stderr, error } = spawnSync('git', ['-C', folder, ...args], {
    maxBuffer: MOST_BYTES,
    ...(input !== undefined && { input }),
  });
  if (error && 'code' in error && error.code === 'ENOENT') {
    throw new UsageError('git is not there; compare with a built folder or a panels.json instead, by --against.');
  }
  if (error) throw error;
  if (status !== 0) throw new UsageError(`${refusal || stderr.toString().trim()}.`);
  return stdout;
}
