import { hostname } from 'node:os';
import { type Refusal, releaseLock, takeLock } from './process-lock.ts';

/**
 * Lets one build at a time into a folder: all of them grow in the same place (`process-lock.ts`).
 *
 * @param folder in which the lock lies; made where it is not there
 * @throws UsageError where another build is at work
 */
export function takeBuildLock(folder: string): void {
  takeLock(folder, refusal);
}

/** Gives the lock back, if this process has it. */
export function releaseBuildLock(folder: string): void {
  releaseLock(folder);
}

const refusal: Refusal = ({ pid, host }, lock) =>
  host === hostname()
    ? `Another build is at work here (process ${pid}); nothing was built. Start again when it has ended.`
    : `Another build is at work here (process ${pid} on ${host}); nothing was built. If it is not, delete ${lock}.`;
