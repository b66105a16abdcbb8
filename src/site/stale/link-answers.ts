import pLimit from 'p-limit';

/** How an address answers. */
export type LinkAnswer =
  | { kind: 'there' }
  /** It is there, and leads on to another page. */
  | { kind: 'moved'; to: string }
  /** `answers with 404 Not Found`, `does not answer within 10 s`. */
  | { kind: 'gone'; fault: string };

/** Asked at once. */
const MOST_AT_ONCE = 4;

/** s; who takes longer does not answer. */
const LONGEST_ANSWER = 10;

export interface AskOptions {
  /** s */
  longest?: number;
  /** Told after each answer. */
  onAnswer?: (done: number, of: number) => void;
}

/** Asks every address once, a few at a time: by HEAD, and by GET where that is refused. */
export async function linkAnswers(
  addresses: Iterable<string>,
  { longest = LONGEST_ANSWER, onAnswer }: AskOptions = {},
): Promise<ReadonlyMap<string, LinkAnswer>> {
  const limit = pLimit(MOST_AT_ONCE);
  const all = [...new Set(addresses)];
  let done = 0;
  return new Map(
    await Promise.all(
      all.map((address) =>
        limit(async (): Promise<[string, LinkAnswer]> => {
          const answer = await answerOf(address, longest);
          onAnswer?.(++done, all.length);
          return [address, answer];
        }),
      ),
    ),
  );
}

async function answerOf(address: string, longest: number): Promise<LinkAnswer> {
  const first = await ask(address, 'HEAD', longest);
  // Some servers answer GET alone, and some refuse HEAD with whatever comes to mind.
  const answer = first.response?.ok || first.isSlow ? first : await ask(address, 'GET', longest);
  const { response, fault } = answer;
  if (!response) return { kind: 'gone', fault };
  if (!response.ok) {
    const mayRefuse = response.status === 401 || response.status === 403 || response.status === 429;
    const remark = mayRefuse ? ', which may be to programs alone' : '';
    return { kind: 'gone', fault: `answers with ${`${response.status} ${response.statusText}`.trim()}${remark}` };
  }
  return isSamePage(address, response.url) ? { kind: 'there' } : { kind: 'moved', to: response.url };
}

type Asked = { response?: Response; fault: string; isSlow: boolean };

async function ask(address: string, method: 'HEAD' | 'GET', longest: number): Promise<Asked> {
  try {
    const response = await fetch(address, { method, signal: AbortSignal.timeout(longest * 1000) });
    // What a page says is of no interest.
    await response.body?.cancel();
    return { response, fault: '', isSlow: false };
  } catch (error) {
    const { name, message, cause } = error as Error;
    if (name === 'TimeoutError') return { fault: `does not answer within ${longest} s`, isSlow: true };
    const { code, message: because } = (cause ?? {}) as NodeJS.ErrnoException;
    return { fault: FAULTS[code ?? ''] ?? `can’t be reached: ${because ?? message}`, isSlow: false };
  }
}

const FAULTS: Readonly<Record<string, string>> = {
  ENOTFOUND: 'is at a name that nobody has',
  ECONNREFUSED: 'is at a machine that refuses to answer',
};

/** Alike but for the scheme, `www.`, and a slash at the end. */
function isSamePage(one: string, other: string): boolean {
  const plain = (it: string) => {
    const { host, pathname, search } = new URL(it);
    return `${host.replace(/^www\./, '')}${pathname.replace(/\/$/, '')}${search}`;
  };
  return plain(one) === plain(other);
}
