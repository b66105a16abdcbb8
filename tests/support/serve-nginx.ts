import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { nginxFile } from '../../src/site/serving/nginx-file.ts';
import { sitePath } from '../../src/site/shared/site-address.ts';
import { NGINX } from './ensure-browser.ts';
import type { ServedFolder } from './serve-folder.ts';

/**
 * Serves a built folder by a real nginx, with the file that the recipe prints and with nothing else that would touch an
 * answer. Listens on this machine alone.
 *
 * @param site address for which the recipe is made; below a path, nothing lies at the top of the host
 */
export async function serveNginx(folder: string, site: string): Promise<ServedFolder> {
  const own = await mkdtemp(join(tmpdir(), 'panel-ledger-nginx-'));
  const place = join(own, 'root', sitePath(site));
  await mkdir(dirname(place), { recursive: true });
  await symlink(resolve(folder), place.replace(/\/$/, ''));
  const port = await freePort();
  await writeFile(join(own, 'guide.conf'), nginxFile(site, { root: join(own, 'root'), listen: `127.0.0.1:${port}` }));
  const folders = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'];
  await writeFile(
    join(own, 'nginx.conf'),
    `pid ${own}/pid;
error_log stderr warn;
events {}
http {
  include /etc/nginx/mime.types;
  default_type application/octet-stream;
  access_log off;
${folders.map((it) => `  ${it}_temp_path ${own}/${it};`).join('\n')}
  include ${own}/guide.conf;
}
`,
  );
  const line = ['-p', own, '-c', join(own, 'nginx.conf'), '-e', 'stderr', '-g', 'daemon off; master_process off;'];
  const server = spawn(NGINX, line, { stdio: ['ignore', 'ignore', 'pipe'] });
  let said = '';
  server.stderr.setEncoding('utf8').on('data', (text: string) => {
    said += text;
  });
  const origin = `http://127.0.0.1:${port}`;
  while (!(await fetch(origin).catch(() => undefined))) {
    if (server.exitCode !== null) throw new Error(`nginx has ended:\n${said}`);
    await sleep(20);
  }
  return {
    origin,
    close: async () => {
      const ended = once(server, 'close');
      server.kill('SIGTERM');
      await ended;
      await rm(own, { recursive: true });
    },
  };
}

/** A port that nobody listens on now. */
async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('there is no port');
  return address.port;
}
