/**
 * What a page may load: nothing inline, nothing from elsewhere, whatever kind it is of. 'wasm-unsafe-eval' lets the search compile its own index
 * reader; it permits no script.
 */
export const CONTENT_POLICY =
  "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; object-src 'none'; base-uri 'none'; form-action 'self'";
