/** The part of jstat that is used; the library ships no types. */
declare module 'jstat' {
  interface Distribution {
    inv(probability: number, ...parameters: number[]): number;
  }
  interface Models {
    /** Ordinary least squares: coefficients, and the standard error of each. */
    ols(y: number[], design: number[][]): { coef: [number, number]; t: { se: [number, number] } };
  }
  const jstat: { studentt: Distribution; normal: Distribution; models: Models };
  export default jstat;
}
