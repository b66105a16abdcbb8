/** A page that can't be rendered: a fault in what its text calls for, or in the code. */
export class PageFault extends Error {
  /**
   * @param page its address below the guide's top
   * @param text the file of the tester's own that is compiled into it
   */
  constructor(page: string, text: string | undefined, cause: unknown) {
    const why = cause instanceof Error ? cause.message : String(cause);
    super(`The page ${page} can’t be made${text ? ` of ${text}` : ''}: ${why}`, { cause });
  }

  /** Where it happened, for whoever knows the code. */
  get trace(): string {
    return this.cause instanceof Error ? (this.cause.stack ?? '').split('\n').slice(1, 7).join('\n') : '';
  }
}
