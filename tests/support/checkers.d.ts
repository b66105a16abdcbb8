/* What is used here of libraries that come without types. */

declare module '@citation-js/core' {
  export class Cite {
    constructor(text: string);
    data: unknown[];
  }
  export const plugins: { config: { get(name: string): { parse: { sentenceCase: string } } } };
}

declare module '@adobe/structured-data-validator' {
  export default class Validator {
    validate(
      data: unknown,
    ): Promise<Array<{ issueMessage: string; severity: 'ERROR' | 'WARNING'; path: Array<{ type: string }> }>>;
  }
}

declare module '@marbec/web-auto-extractor' {
  export default class WebAutoExtractor {
    constructor(options: { addLocation: boolean });
    parse(html: string): unknown;
  }
}
