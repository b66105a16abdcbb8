import { relative, resolve, sep } from 'node:path';
import Slugger, { slug } from 'github-slugger';
import { productFolder } from '../../content/read/product-folder.ts';
import { slugOf } from '../../content/templates/file-name.ts';
import { newInstrumentText } from '../../content/templates/new-instrument.ts';
import type { Answers } from './answers.ts';
import { guideFile } from './guide-file.ts';

/** How the folder of a guide is to be. */
export interface Place {
  folder: string;
  /** A repository of its own, with the product as a package. */
  isRepository: boolean;
  /** `YYYY-MM-DD`. */
  today: string;
}

/** All files of a new guide, by their paths below its folder. Only what is the tester's own stands in them. */
export function guideFolder(answers: Answers, place: Place): Map<string, string> {
  const slugger = new Slugger();
  return new Map([
    ['content/guide.yaml', guideFile(answers, place.today)],
    ...answers.instruments.map(
      ({ kind, name }) =>
        [
          `content/instruments/${slugger.slug(slugOf(name) || kind)}.yaml`,
          newInstrumentText({ name, measures: [kind], values: {} }),
        ] as const,
    ),
    // Folders without files are lost where the guide is kept in a repository.
    ...['instruments', 'makers', 'panels'].map((it) => [`content/${it}/.gitkeep`, ''] as const),
    ['.vscode/settings.json', json(EDITOR)],
    ['.vscode/extensions.json', json({ recommendations: ['astro-build.astro-vscode', 'redhat.vscode-yaml'] })],
    ['.gitignore', 'node_modules/\ndist/\n.build/\n.astro/\n'],
    ['README.md', readme(answers, place)],
    ...(place.isRepository ? [['package.json', json(packageFile(answers, place))] as const] : []),
  ]);
}

/** Completion and red lines; `check`, `build` and `dev` write the schemas. */
const EDITOR = {
  'astro.content-intellisense': true,
  'yaml.schemas': {
    './.astro/collections/guide.schema.json': 'content/guide.yaml',
    './.astro/collections/instruments.schema.json': 'content/instruments/*.yaml',
    './.astro/collections/makers.schema.json': 'content/makers/*.yaml',
  },
};

/** The product as a folder beside the guide, whichever way it was come by: a name alone might be somebody else's. */
function packageFile({ title }: Answers, { folder }: Place): object {
  const product = relative(resolve(folder), productFolder()).split(sep).join('/');
  return {
    name: slug(title) || 'guide',
    private: true,
    type: 'module',
    scripts: Object.fromEntries(['dev', 'check', 'build', 'preview'].map((it) => [it, `panel-ledger ${it}`])),
    dependencies: { 'panel-ledger': `file:${product}` },
    // Node itself and the bundler come as packages that put their programs in place when they are installed.
    allowScripts: { node: true, esbuild: true },
  };
}

/** How to call the commands from within a guide's folder. */
export function callFrom({ folder, isRepository }: Place): { enter: string[]; run: string } {
  if (isRepository) return { enter: [`cd ${folder}`, 'npm install'], run: 'npx panel-ledger' };
  return { enter: [], run: `LEDGER_CONTENT=${folder} npm run ledger --` };
}

function readme({ title }: Answers, { isRepository }: Place): string {
  const run = isRepository ? 'npx panel-ledger' : 'LEDGER_CONTENT=THIS_FOLDER npm run ledger --';
  const where = isRepository
    ? 'From this folder, after `npm install`:'
    : 'From the folder of Panel Ledger, with the path of this one for THIS_FOLDER:';
  return `# ${title}

What only we can say stands here: readings, prices, meters, and who we are. Panel Ledger makes the guide of it.

${where}

| command | does |
|---|---|
| \`${run} dev\` | serves the guide while you write |
| \`${run} check\` | lists every problem, and all that is odd |
| \`${run} build\` | writes the guide to \`dist/\` |
| \`${run} upgrade\` | brings these files up to a newer version of Panel Ledger |

| file | holds |
|---|---|
| \`content/guide.yaml\` | title, publisher, disclosure, currency, tariff, bench |
| \`content/instruments/\` | a file for each meter |
| \`content/makers/\` | a file for each maker |
| \`content/panels/NAME/index.md\` | a panel: readings and prices, then your notes |

The pages that explain the methods and the page of cautions come with Panel Ledger. A file of the same name in
\`content/methods/\`, or \`content/cautions.mdx\`, takes the place of one; \`${run} text --help\` tells how.
`;
}

function json(data: object): string {
  return `${JSON.stringify(data, null, 2)}\n`;
}
