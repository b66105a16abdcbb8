/** A fault in how the program was called, with a sentence that says what to write instead; no trace is of use. */
export class UsageError extends Error {
  override name = 'UsageError';
}
