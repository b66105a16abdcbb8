/** The folder that a finished build takes the place of: what `LEDGER_DIST` says, or `dist`. */
export function siteFolder(): string {
  return process.env.LEDGER_DIST || 'dist';
}
