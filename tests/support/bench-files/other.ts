import type { GeneratedFile } from './generated-file.ts';

const NOTES = `Bench notebook, Ruddlestone R150

Stand at the long wall, curtains drawn. Tape from the LED plane to the diffuser.
Thermopile zeroed with its cap on before the first point.
The fan was heard from the third minute on.
`;

/** Files that are published as they are. */
export function otherFiles(): GeneratedFile[] {
  return [{ panel: 'ruddlestone-r150', name: 'bench-notes.txt', bytes: NOTES }];
}
