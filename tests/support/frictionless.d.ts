/* What is used here of Frictionless' libraries, which come without types. */

declare module 'datapackage' {
  interface Resource {
    name: string;
    descriptor: { schema: { fields: Array<{ name: string; type: string }> } };
    checkRelations(): Promise<boolean>;
    read(options: { keyed: boolean }): Promise<Array<Record<string, unknown>>>;
  }
  export const Package: {
    load(
      descriptor: string,
      options: { strict: boolean },
    ): Promise<{
      errors: Error[];
      resourceNames: string[];
      resources: Resource[];
      getResource(name: string): Resource;
    }>;
  };
}

declare module 'tableschema' {
  export const Table: {
    load(rows: string[][], options: { schema: object }): Promise<{ read(): Promise<unknown[][]> }>;
  };
}
