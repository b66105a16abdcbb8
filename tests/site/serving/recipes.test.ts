/** What hosts are told, at the top of a host and below a path; the server itself is tried in tests/built/nginx.test.ts. */
import { DockerfileParser } from 'dockerfile-ast';
import { describe, expect, test } from 'vitest';
import { containerFile } from '../../../src/site/serving/container-file.ts';
import { headersFile } from '../../../src/site/serving/headers-file.ts';
import { nginxFile } from '../../../src/site/serving/nginx-file.ts';
import { workflowFile } from '../../../src/site/serving/workflow-file.ts';
import { readWorkflow } from '../../support/workflow-parser.ts';

const TOP = 'https://host.example';
const BELOW = 'https://host.example/some/path.d';

/** Every rule of a `_headers` file: its path, and what it says. */
const rulesOf = (text: string) =>
  text.split('\n\n').map((it) => {
    const [path = '', ...lines] = it.trim().split('\n');
    return [
      path,
      Object.fromEntries(
        lines.map((line) =>
          line
            .trim()
            .split(/: (.*)/s)
            .slice(0, 2),
        ),
      ),
    ] as const;
  });

describe('_headers', () => {
  const rules = new Map(rulesOf(headersFile(TOP)));
  test.each([
    ['/', 'no-cache', "frame-ancestors 'none'"],
    ['/panels/*', 'no-cache', "frame-ancestors 'none'"],
    ['/bench/*', 'no-cache', "frame-ancestors 'none'"],
    ['/cards/*', 'no-cache', 'frame-ancestors *'],
    ['/_astro/*', 'public, max-age=31536000, immutable', "frame-ancestors 'none'"],
    ['/photos/*', 'public, max-age=31536000, immutable', "frame-ancestors 'none'"],
  ])('%s', (path, cache, frames) => {
    expect(rules.get(path)?.['Cache-Control']).toBe(cache);
    expect(rules.get(path)?.['Content-Security-Policy']).toMatch(
      new RegExp(`^default-src 'self';.*; ${frames.replace('*', '\\*')}$`),
    );
  });

  test('says no header twice of one address, since hosts put both together', () => {
    const paths = [...rules.keys()];
    const said = (it: string) => Object.keys(rules.get(it) ?? {});
    const fits = (pattern: string, path: string) =>
      pattern !== path && pattern.endsWith('*') && path.startsWith(pattern.slice(0, -1));
    for (const wide of paths) {
      for (const narrow of paths.filter((it) => fits(wide, it))) {
        expect(
          said(wide).filter((it) => said(narrow).includes(it)),
          `${wide} and ${narrow}`,
        ).toEqual([]);
      }
    }
    expect(rules.get('/*')?.['X-Content-Type-Options']).toBe('nosniff');
  });

  test('has the path before each of its own', () => {
    expect(rulesOf(headersFile(BELOW)).filter(([path]) => !path.startsWith('/some/path.d/'))).toEqual([]);
  });
});

test('below a path the server’s file means that path alone', () => {
  const file = nginxFile(BELOW);
  expect(file).toContain('"~^/some/path\\.d/_astro/" "public, max-age=31536000, immutable";');
  expect(file).toContain('error_page 404 /some/path.d/404.html;');
  expect(file).toContain('server_name host.example;');
  expect(file.split('\n').filter((it) => it.includes('"~^/') && !it.includes('"~^/some/path\\.d/'))).toEqual([]);
  expect(containerFile('/some/path.d/')).toContain('COPY dist/ /srv/guide/some/path.d/\n');
});

describe('the workflow', () => {
  const text = workflowFile('npx panel-ledger');

  test('is what its hosts read, checks strictly, and needs no secret', async () => {
    expect(await readWorkflow(text)).toEqual({
      faults: [],
      steps: [
        expect.stringMatching(/^actions\/checkout@/),
        expect.stringMatching(/^actions\/setup-node@/),
        'npm ci',
        'npx panel-ledger build --strict',
        expect.stringMatching(/^actions\/upload-artifact@/),
      ],
    });
    expect(text).not.toContain('secrets.');
  });

  test.each([
    ['a key that there is not', text.replace('runs-on', 'run-on'), 'run-on'],
    ['a right that there is not', text.replace('contents: read', 'content: read'), 'content'],
    ['a day that is none', text.replace('0 5 1 * *', '0 5 1 *'), 'cron'],
  ])('%s would be refused', async (_what, faulty, said) => {
    expect((await readWorkflow(faulty)).faults).toContainEqual(expect.stringContaining(said));
  });
});

describe('the container', () => {
  test.each(['/', '/some/path/'])(
    'is a file of instructions; below %s the guide lies where its nginx looks',
    (path) => {
      const instructions = DockerfileParser.parse(containerFile(path))
        .getInstructions()
        .map((it) => [it.getInstruction(), ...it.getArguments().map((one) => one.getValue())]);
      const of = (name: string) => instructions.filter(([it]) => it === name).map(([, ...rest]) => rest);
      expect(instructions.map(([it]) => it)).toEqual(['FROM', 'RUN', 'COPY', 'COPY', 'EXPOSE', 'CMD']);
      const nginx = nginxFile(`https://host.example${path}`);
      const said = (name: string) => new RegExp(`^ {2}${name} (.*);$`, 'm').exec(nginx)?.[1];
      // Both stand beside it: what `recipe nginx` prints, and what a build writes.
      expect(of('COPY')).toEqual([
        ['nginx.conf', '/etc/nginx/conf.d/guide.conf'],
        ['dist/', `${said('root')}${path}`],
      ]);
      expect(of('EXPOSE')).toEqual([[said('listen')]]);
    },
  );
});
