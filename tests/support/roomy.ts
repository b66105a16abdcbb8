/**
 * What Node is told where it runs tests: room for what lives shortly, and no threads to clear it, since every processor
 * has a test of its own to do. It takes about a twelfth of their processor time away.
 */
export const ROOMY: readonly string[] = ['--max-semi-space-size=64', '--single-threaded-gc'];
