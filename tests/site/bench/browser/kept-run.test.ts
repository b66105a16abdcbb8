import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BenchStore,
  BenchStoreError,
  type Step,
  stepped,
  stepsOf,
} from '../../../../src/site/bench/browser/bench-store.ts';
import { openRun } from '../../../../src/site/bench/browser/kept-run.ts';
import { type Act, newLog, type RunLog, runOf } from '../../../../src/site/bench/browser/run.ts';
import { START } from '../../../support/started-run.ts';

const enter = (written: string): Act => ({ kind: 'enter', path: 'peak.red', written, at: '2026-11-21T12:00:00Z' });

const act: fc.Arbitrary<Act> = fc.oneof(
  fc.integer({ min: 1, max: 99 }).map((it) => enter(String(it))),
  fc.record({ kind: fc.constant('strike' as const), id: fc.integer({ min: 1, max: 5 }), reason: fc.constant('slip') }),
  fc.record({ kind: fc.constant('unstrike' as const), id: fc.integer({ min: 1, max: 5 }) }),
);
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 4, arbitrary: act.map((it) => ({ kind: 'do' as const, act: it })) },
  fc.constant({ kind: 'undo' as const }),
  fc.constant({ kind: 'redo' as const }),
);

/** A store in memory, for any number of windows, which can be told to be slow or to fail. */
function storeInMemory(): BenchStore & { steps: Step[]; fail: BenchStoreError | undefined } {
  const heard = new Set<(run: string) => void>();
  const none = () => Promise.reject(new Error('not in this test'));
  const logOf = (steps: readonly Step[]): RunLog => steps.reduce(stepped, newLog(START));
  const store: ReturnType<typeof storeInMemory> = {
    steps: [],
    fail: undefined,
    append: async (run, after, steps) => {
      await Promise.resolve();
      if (store.fail) throw store.fail;
      if (after !== store.steps.length) {
        return { kind: 'behind', stored: { log: logOf(store.steps), at: store.steps.length } };
      }
      store.steps.push(...steps);
      for (const it of heard) it(run);
      return { kind: 'kept', at: store.steps.length };
    },
    load: async () => ({ log: logOf(store.steps), at: store.steps.length }),
    onChange: (it) => {
      heard.add(it);
      return () => heard.delete(it);
    },
    close: () => undefined,
    ...{ begin: none, list: none, remove: none, savePhoto: none, photos: none, keep: none, kept: none },
  };
  return store;
}

test('steps make the log that they were taken from, with what was undone in it', () => {
  fc.assert(
    fc.property(fc.array(step), (steps) => {
      const log = steps.reduce(stepped, newLog(START));
      expect(stepsOf(log).reduce(stepped, newLog(START))).toEqual(log);
    }),
  );
});

describe('a run that is open', () => {
  test('acts that don’t wait for each other are kept in their order', async () => {
    const store = storeInMemory();
    const run = await openRun(store, START.id);
    await Promise.all(['1', '2', '3'].map((it) => run.act(enter(it))));
    await run.undo();
    expect(runOf(run.log).entries.map((it) => it.written)).toEqual(['1', '2']);
    await run.redo();
    expect(runOf(run.log).entries.map((it) => it.written)).toEqual(['1', '2', '3']);
    expect(store.steps).toHaveLength(5);
  });

  test('what is not on the disk is not in the log, and the next act is tried all the same', async () => {
    const store = storeInMemory();
    const run = await openRun(store, START.id);
    store.fail = new BenchStoreError('full');
    await expect(run.act(enter('1'))).rejects.toMatchObject({ fault: 'full' });
    expect(run.log.acts).toEqual([]);
    store.fail = undefined;
    await run.act(enter('2'));
    expect(runOf(run.log).entries.map((it) => it.written)).toEqual(['2']);
  });

  test('a closed one hears nothing', async () => {
    const store = storeInMemory();
    const [one, other] = [await openRun(store, START.id), await openRun(store, START.id)];
    const heard: number[] = [];
    other.onOther((log) => heard.push(log.acts.length));
    other.close();
    await one.act(enter('1'));
    await one.catchUp();
    expect(heard).toEqual([]);
  });
});

describe('two windows', () => {
  const two = async () => {
    const store = storeInMemory();
    // Without news of each other, as when a message has not come yet.
    const deaf = { ...store, onChange: () => () => undefined };
    Object.defineProperty(deaf, 'fail', { get: () => store.fail });
    return { store, one: await openRun(deaf, START.id), other: await openRun(deaf, START.id) };
  };

  test('both have entered: nothing is lost, and the second is told of the first', async () => {
    const { one, other } = await two();
    const heard: string[][] = [];
    other.onOther((log) => heard.push(runOf(log).entries.map((it) => it.written)));
    await one.act(enter('1'));
    const log = await other.act(enter('2'));
    expect(heard).toEqual([['1']]);
    expect(runOf(log).entries.map((it) => it.written)).toEqual(['1', '2']);
    expect(await one.catchUp()).toEqual(log);
  });

  test('an act on an entry that the other has changed is not done', async () => {
    const { store, one, other } = await two();
    await one.act(enter('1'));
    await other.catchUp();
    await one.act({ kind: 'strike', id: 1, reason: 'slip' });
    await expect(other.act({ kind: 'strike', id: 1, reason: 'stray light' })).rejects.toMatchObject({
      fault: 'behind',
    });
    expect(runOf(other.log).entries).toMatchObject([{ struck: 'slip' }]);
    expect(store.steps).toHaveLength(2);
    // It has been seen now.
    await other.act({ kind: 'unstrike', id: 1 });
    expect(runOf(other.log).entries[0]).not.toHaveProperty('struck');
  });

  test('what would be undone is what was seen', async () => {
    const { one, other } = await two();
    await one.act(enter('1'));
    await other.catchUp();
    await one.act(enter('2'));
    await expect(other.undo()).rejects.toMatchObject({ fault: 'behind' });
    await other.undo();
    expect(runOf(other.log).entries.map((it) => it.written)).toEqual(['1']);
    await expect(one.redo()).rejects.toMatchObject({ fault: 'behind' });
  });

  test('what was meant before the other’s changes came is not done after them', async () => {
    const { one, other } = await two();
    await one.act(enter('1'));
    await other.catchUp();
    await one.act(enter('2'));
    // Both are asked for on the same sight; the first of them takes the other window’s entry in.
    const [entered, undone] = await Promise.allSettled([other.act(enter('3')), other.undo()]);
    expect([entered.status, undone.status]).toEqual(['fulfilled', 'rejected']);
    expect(runOf(other.log).entries.map((it) => it.written)).toEqual(['1', '2', '3']);
  });

  test('whatever they do, both end with what the store has', async () => {
    const doing = fc.array(fc.tuple(fc.boolean(), step, fc.boolean()), { maxLength: 25 });
    await fc.assert(
      fc.asyncProperty(doing, async (all) => {
        const { store, one, other } = await two();
        let refused = 0;
        for (const [isOne, it, isAwaited] of all) {
          const run = isOne ? one : other;
          const done = (it.kind === 'do' ? run.act(it.act) : it.kind === 'undo' ? run.undo() : run.redo()).catch(() => {
            refused++;
          });
          if (isAwaited) await done;
        }
        await one.catchUp();
        await other.catchUp();
        await one.catchUp();
        expect(store.steps.length + refused).toBe(all.length);
        expect(one.log).toEqual(other.log);
        expect(one.log).toEqual(store.steps.reduce(stepped, newLog(START)));
        // No entering was refused.
        const entered = (steps: readonly Step[]) => steps.filter((it) => it.kind === 'do' && it.act.kind === 'enter');
        expect(entered(store.steps)).toHaveLength(entered(all.map(([, it]) => it)).length);
      }),
      { numRuns: 60 },
    );
  });
});
