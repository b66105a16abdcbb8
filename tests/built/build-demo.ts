/** Before the tests of the built site: the demonstration is laid out, and built for the day that they count on. */
import { TODAY } from '../support/content-folder.ts';
import { DEMO_FOLDER, DEMO_SITE, layDemo } from '../support/demo-folder.ts';
import { build } from './build.ts';

export async function setup(): Promise<void> {
  layDemo();
  const { code, stderr } = await build({ LEDGER_CONTENT: DEMO_FOLDER, LEDGER_DIST: DEMO_SITE, LEDGER_TODAY: TODAY });
  if (code !== 0) throw new Error(`the demonstration could not be built:\n${stderr}`);
}
