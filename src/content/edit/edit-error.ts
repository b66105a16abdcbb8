import { UsageError } from '../read/usage-error.ts';

/** Why a file can't be edited by a command, in a sentence about that file; the file is as it was. */
export class EditError extends UsageError {
  override name = 'EditError';
}
