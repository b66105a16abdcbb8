/** The part of jstat that is used; the library ships no types. */
declare module 'jstat' {
  interface Distribution {
    inv(probability: number, ...parameters: number[]): number;
  }
  const jstat: { studentt: Distribution; normal: Distribution };
  export default jstat;
}
