import { join, resolve } from 'node:path';
import mdx from '@astrojs/mdx';
import { defineConfig } from 'astro/config';
import { packagesFolder, sourceFolder } from './src/build/astro-root.ts';
import { panelLedger } from './src/build/integration.ts';
import { ownModules } from './src/build/own-modules.ts';
import { siteFolder } from './src/build/site-folder.ts';
import { cacheFolder } from './src/content/read/cache-folder.ts';
import { productFolder } from './src/content/read/product-folder.ts';
import { MARKDOWN } from './src/layouts/markdown.ts';
import { contentFolder } from './src/ledger/load-ledger.ts';

const assetFileNames = '_astro/[hash][extname]';

export default defineConfig({
  output: 'static',
  // The folder in which a command is run is the guide's: builds and caches lie there. Code and styles lie here.
  srcDir: sourceFolder(),
  publicDir: join(productFolder(), 'public'),
  outDir: resolve(siteFolder()),
  trailingSlash: 'always',
  integrations: [mdx(), panelLedger()],
  // Nothing inline, so that the policy in the pages' head can do without 'unsafe-inline'.
  // Pages are written while others are rendered: waiting for the disk one by one is a tenth of a large build.
  build: { format: 'directory', inlineStylesheets: 'never', concurrency: 4 },
  vite: {
    plugins: [ownModules(sourceFolder())],
    cacheDir: resolve(cacheFolder(), 'vite'),
    server: { fs: { allow: [productFolder(), packagesFolder(), resolve('.'), resolve(contentFolder())] } },
    // A thread is reached by the bench's service worker only where its script lies under /bench/ too.
    worker: { rollupOptions: { output: { entryFileNames: 'bench/[name].[hash].js' } } },
    // Every page names its scripts, styles and typefaces: their hash alone is name enough. Styles and typefaces come of
    // what renders the pages, scripts of what browsers run.
    environments: {
      client: { build: { rolldownOptions: { output: { entryFileNames: '_astro/[hash].js', assetFileNames } } } },
      prerender: { build: { rolldownOptions: { output: { assetFileNames } } } },
    },
    build: {
      assetsInlineLimit: 0,
      rollupOptions: {
        // Astro marks MDX modules with a directive of its own, which the bundler then warns of, once a page.
        onwarn: (warning, warn) => {
          if (warning.code !== 'MODULE_LEVEL_DIRECTIVE') warn(warning);
        },
      },
    },
  },
  // White space between inline elements matters in running text; the default takes it away at line ends.
  compressHTML: true,
  markdown: MARKDOWN,
  devToolbar: { enabled: false },
  prefetch: false,
  // Completion and red underlines in the front matter of Markdown files, for editors with Astro's extension.
  experimental: { contentIntellisense: true },
});
