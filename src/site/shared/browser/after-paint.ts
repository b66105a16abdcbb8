/** Work that can wait until what the reader asked for is on the screen. */
export interface Later {
  /** Does the work after the next paint; once, however often it is asked for before. */
  plan(): void;
}

/** Puts work off until after the next paint. */
export function afterPaint(work: () => void): Later {
  let frame = 0;
  return {
    plan() {
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(() => setTimeout(work));
    },
  };
}
