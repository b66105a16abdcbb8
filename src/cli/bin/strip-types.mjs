/**
 * Lets Node read the product's own TypeScript where it lies among packages: below `node_modules` Node strips no types
 * by itself. Types are replaced by blanks, so that places in messages stay true. Threads inherit this with the flags
 * of the process.
 */
import { readFileSync } from 'node:fs';
import { registerHooks, stripTypeScriptTypes } from 'node:module';
import { fileURLToPath } from 'node:url';

const PRODUCT = new URL('../../../', import.meta.url).href;

// Node says of stripping, to every process, that it may still change.
const { emitWarning } = process;
process.emitWarning = (warning, ...rest) => {
  if (!String(warning).includes('stripTypeScriptTypes')) emitWarning.call(process, warning, ...rest);
};

if (PRODUCT.includes('/node_modules/')) {
  registerHooks({
    load(url, context, next) {
      const place = url.replace(/[?#].*$/, '');
      const isOurs = place.startsWith(PRODUCT) && !place.slice(PRODUCT.length).startsWith('node_modules/');
      if (!isOurs || !place.endsWith('.ts')) return next(url, context);
      const source = stripTypeScriptTypes(readFileSync(fileURLToPath(place), 'utf8'), { mode: 'strip' });
      return { format: 'module', shortCircuit: true, source };
    },
  });
}
