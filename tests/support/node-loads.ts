/**
 * What vitest is told where Node can load tests as they are, as it loads the product: it strips the types, and a name that
 * is imported is bound, not looked up in an object each time. Vitest's own way of loading takes a sixth of the unit
 * tests' processor time, but only by that can a test put something in a module's place (`vi.mock`).
 */
export const NODE_LOADS = { viteModuleRunner: false, nodeLoader: false } as const;
