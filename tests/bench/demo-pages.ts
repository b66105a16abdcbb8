import { join } from 'node:path';
import { DEMO_SOURCE } from '../support/demo-folder.ts';
import { buildOnce } from './build-once.ts';
import { ourSite, PAGES } from './sites.ts';

/** The folder with the demonstration, built. */
export async function demoPages(): Promise<string> {
  const site = ourSite();
  await buildOnce(site, DEMO_SOURCE);
  return join(site.folder, PAGES);
}
