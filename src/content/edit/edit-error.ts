/** Why a file can't be edited by a command, in a sentence about that file; the file is as it was. */
export class EditError extends Error {
  override name = 'EditError';

  constructor(message: string) {
    super(message);
    this.stack = message;
  }
}
