/**
 * A fault in how the program was called or in what is around it, with a sentence that says what to do instead. No trace
 * is of use; it has none, whoever prints it.
 */
export class UsageError extends Error {
  override name = 'UsageError';

  constructor(message: string) {
    super(message);
    this.stack = message;
  }
}
