import type { Command } from 'commander';
import { schemaFolder, writeEditorSchemas } from '../build/editor-schemas.ts';
import { outputFault } from '../build/output-fault.ts';
import { UsageError } from '../content/read/usage-error.ts';
import { contentFolder, contentIn } from '../ledger/load-ledger.ts';
import { ledgerCommand } from './command.ts';
import { PROBLEM_CODE } from './exit-codes.ts';

/** `schema [folder]`: writes the schemas that editors complete and underline by. */
export function schemaCommand(): Command {
  return ledgerCommand('schema', {
    does: 'Write the schemas by which editors complete and underline content files.',
    more: `They go where the first line of guide.yaml points to. check, build and dev write
them too, so this is for whoever has just opened an editor.`,
    examples: [['schema', 'write them for the guide’s own content']],
    exits: { 0: 'written', [PROBLEM_CODE]: 'guide.yaml points nowhere, or the place can’t be written' },
  })
    .argument('[folder]', 'the content folder', contentFolder())
    .action((given: string) => {
      const folder = contentIn(given);
      const place = schemaFolder(folder);
      if (place === undefined) {
        throw new UsageError(
          `${folder}/guide.yaml does not point to a schema. Write this as its first line:\n# yaml-language-server: $schema=../.astro/collections/guide.schema.json`,
        );
      }
      try {
        const written = writeEditorSchemas(folder);
        console.log(written ? `Schemas are in ${written}.` : `Astro writes the schemas to ${place} at each build.`);
      } catch (error) {
        throw outputFault(error, [place]) ?? error;
      }
    });
}
