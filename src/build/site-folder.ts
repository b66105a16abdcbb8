/** The folder that a finished build takes the place of: what `LEDGER_DIST` says, on the disk of the project, or `dist`. */
export function siteFolder(): string {
  return process.env.LEDGER_DIST ?? 'dist';
}
