/** A file of the demonstration. */
export interface GeneratedFile {
  panel: string;
  name: string;
  bytes: Uint8Array | string;
}
