import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { build } from 'vite';
import { keptFiles, writeBenchWorker } from '../../src/build/bench-worker-file.ts';
import { CONTENT_POLICY } from '../../src/site/shared/content-policy.ts';
import { DEMO_SITE } from './demo-folder.ts';
import { serveFolder } from './serve-folder.ts';

/** A site that has the bench's pages alone, the pad among them as a bare page with its modules (`bench-page.ts`). */
export interface ServedBench extends AsyncDisposable {
  origin: string;
  /** Puts another build in the place of the one that is there. */
  publish(version: string): void;
  /** Takes all pages of the bench out of the site, or one file of theirs. */
  withdraw(file?: string): void;
  /** As a tablet finds it without a network. */
  unplug(): Promise<void>;
}

const page = (version: string) => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="content-security-policy" content="${CONTENT_POLICY}">
<title>Bench ${version}</title>
<link rel="icon" href="/icon.svg">
<script type="module" src="/bench/pad.${version}.js"></script>
</head>
<body><main><h1>Bench ${version}</h1></main></body>
</html>`;

let script: Promise<string> | undefined;

/** Serves such a site, made of the built demonstration. */
export async function serveBench(): Promise<ServedBench> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  script ??= bundled();
  const text = await script;
  const publish = (version: string) => {
    rmSync(folder, { recursive: true, force: true });
    for (const address of Object.keys(keptFiles(DEMO_SITE)?.files ?? {})) {
      if (address === '/bench/') continue;
      const file = address.replace(/\/$/, '/index.html');
      mkdirSync(dirname(join(folder, file)), { recursive: true });
      cpSync(join(DEMO_SITE, file), join(folder, file));
    }
    const put = (file: string, text: string) => {
      mkdirSync(dirname(join(folder, file)), { recursive: true });
      writeFileSync(join(folder, file), text);
    };
    put('404.html', '<!doctype html><html lang="en"><title>Not here</title><h1>Not here</h1></html>');
    put('index.html', '<!doctype html><html lang="en"><title>Guide</title><h1>Guide</h1></html>');
    put('bench/index.html', page(version));
    put(`bench/pad.${version}.js`, `${text}\n//${version}\nfetch("/data/bench.json");`);
    put('data/bench.json', JSON.stringify({ version }));
    writeBenchWorker(folder);
  };
  publish('one');
  const served = await serveFolder(folder);
  return {
    origin: served.origin,
    publish,
    withdraw: (file = '') => {
      rmSync(join(folder, 'bench', file), { recursive: true });
    },
    unplug: () => served.close(),
    [Symbol.asyncDispose]: async () => {
      await served.close().catch(() => undefined);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The modules in one file. */
async function bundled(): Promise<string> {
  const made = await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      modulePreload: false,
      lib: { entry: new URL('bench-page.ts', import.meta.url).pathname, formats: ['es'] },
    },
  });
  const [output] = Array.isArray(made) ? made : [made];
  const chunk = output && 'output' in output ? output.output[0] : undefined;
  if (chunk?.type !== 'chunk') throw new Error('the bench’s modules could not be bundled');
  return chunk.code;
}
