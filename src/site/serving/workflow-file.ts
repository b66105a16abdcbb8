/**
 * A workflow for continuous integration, in the form that common hosts of git repositories read: checks and builds at
 * every change, and keeps what was built. Where it goes from there is the host's own.
 *
 * @param command how the program is called there; by `npx` where it is a package of the guide’s repository
 */
export function workflowFile(command: string): string {
  const isPackage = command.startsWith('npx ');
  return `# .github/workflows/guide.yml, or wherever your host of git repositories looks for it.
# Builds at every change, and on the first of each month, since prices and calibrations age.
${isPackage ? '# package.json has to name the program by a tarball or git address: a folder (file:…) is not there.\n' : ''}name: guide
on:
  push: { branches: [main] }
  pull_request: {}
  schedule: [{ cron: '0 5 1 * *' }]
permissions: { contents: read }
jobs:
  build:
    runs-on: ubuntu-latest
    steps:
      - uses: actions/checkout@v4
      - uses: actions/setup-node@v4
        with: { node-version: 24, cache: npm }
      - run: npm ci
      - run: ${command} build --strict
      - uses: actions/upload-artifact@v4
        with: { name: guide, path: dist/, if-no-files-found: error }
      # Then by whatever your host has, for instance over SSH with a key that is kept as a secret:
      # - run: rsync -a --delete dist/ guide@host.example:/srv/guide/
`;
}
