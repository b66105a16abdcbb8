/**
 * What a page may load: nothing inline, nothing from elsewhere. 'wasm-unsafe-eval' lets the search compile its own index
 * reader; it permits no script.
 */
export const CONTENT_POLICY =
  "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; font-src 'self'; object-src 'none'; base-uri 'none'; form-action 'self'";
