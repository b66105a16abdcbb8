/**
 * Has schemas work without code that is made while they run, which the pages' content security policy forbids. zod looks
 * for this when a schema is made, and keeps its settings where all of its copies find them. So a script that reads
 * content has this first, and loads everything else after it.
 */
const shared = globalThis as { __zod_globalConfig?: Record<string, unknown> };
shared.__zod_globalConfig = { ...shared.__zod_globalConfig, jitless: true };

export {};
