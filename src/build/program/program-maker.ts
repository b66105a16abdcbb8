/** The process that has Astro make a program, as it is told on its standard input, and writes no page. */
import { text } from 'node:stream/consumers';
import { keepCompiled } from '../compile-cache.ts';
import { takeOrder } from './program-order.ts';

keepCompiled();
takeOrder(JSON.parse(await text(process.stdin)));
const [{ build }, { astroSettings }] = await Promise.all([import('astro'), import('../astro-settings.ts')]);
await build({ ...astroSettings(), logLevel: 'silent' });
