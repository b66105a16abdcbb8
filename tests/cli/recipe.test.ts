/** What is printed for those who publish a guide. */
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { recipeCommand } from '../../src/cli/recipe.ts';
import { nginxFile } from '../../src/site/serving/nginx-file.ts';
import { type ContentFolder, tinyContent } from '../support/content-folder.ts';
import { runCommand } from './run-command.ts';

let content: ContentFolder;
beforeAll(() => {
  content = tinyContent();
  content.edit('guide.yaml', 'https://ledger.example', 'https://ledger.example/some/path');
});
afterAll(() => content.delete());

async function run(...args: string[]) {
  const print = vi.spyOn(console, 'log').mockImplementation(() => {});
  try {
    const ran = await runCommand(recipeCommand, args, content.folder);
    return { ...ran, out: print.mock.calls.map(([text]) => `${text}\n`).join('') };
  } finally {
    print.mockRestore();
  }
}

test('without a name they are listed', async () => {
  const { code, out } = await run();
  expect(code).toBe(0);
  expect(
    out
      .trim()
      .split('\n')
      .map((it) => it.split(' ')[0]),
  ).toEqual(['nginx', 'container', 'workflow']);
});

test('each is made for the guide’s own address', async () => {
  expect((await run('nginx')).out).toBe(nginxFile('https://ledger.example/some/path'));
  expect((await run('container')).out).toContain('COPY dist/ /srv/guide/some/path/');
});

test('a misspelt one gets the nearest', async () => {
  const { code, error } = await run('ngnix');
  expect(code).toBe(1);
  expect(error).toContain('There is no recipe "ngnix"; did you mean "nginx"?');
});
