/** What the pages and their service worker agree on. */

/** Files by their address, each with a text that changes when its contents do. */
export type FileList = readonly { url: string; revision: string }[];

export type Request =
  /** The new version may replace the old one now. */
  | { do: 'take-over' }
  /** Fetches these files and keeps them together. Others that were kept before go. */
  | { do: 'keep'; files: FileList };

/** Large files that only hearing needs: the model, the voice detector and what runs them. */
export const HEARING_PATHS = /^[/](?:speech-model[/]|assets[/][^/]+[.](?:onnx|wasm)$)/;
