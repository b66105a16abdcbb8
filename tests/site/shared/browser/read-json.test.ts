import { afterEach, expect, test, vi } from 'vitest';
import { OtherFormat, readJson } from '../../../../src/site/shared/browser/read-json.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

/** A server that answers every request so. */
function serve(body: string, status = 200): void {
  vi.stubGlobal('fetch', async () => new Response(body, { status }));
}

interface File {
  format: 2;
  panels: string[];
}
const read = () => readJson<File>('/data/plan.json', 'the panels', 2);

test('a file of the form that the page reads is handed on', async () => {
  serve('{"format":2,"panels":["plover"]}');
  expect(await read()).toEqual({ format: 2, panels: ['plover'] });
});

test.each(['{"format":1,"panels":[]}', '{"format":3}', '{"format":"2"}', '{"panels":[]}', '[]', 'null', '2'])(
  'a file of another form is refused, with words for the reader: %s',
  async (body) => {
    serve(body);
    await expect(read()).rejects.toThrow(OtherFormat);
    await expect(read()).rejects.toThrow(
      'the panels are of another version of the guide than this page, so load the page again',
    );
  },
);

test('a file that is not there, or is no JSON, is another fault', async () => {
  serve('', 404);
  await expect(read()).rejects.toThrow('the panels could not be read (404)');
  serve('<html>');
  const fault = await read().catch((error: unknown) => error);
  expect(fault).toBeInstanceOf(Error);
  expect(fault).not.toBeInstanceOf(OtherFormat);
});
