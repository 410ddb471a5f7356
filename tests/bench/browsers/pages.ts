/** One window of a browser that is being tried, whatever drives it. What is looked for is an XPath. */
export interface Window {
  open(url: string): Promise<void>;
  /** Waits until it is there and shown, then clicks as a mouse does. */
  click(xpath: string): Promise<void>;
  fill(xpath: string, text: string): Promise<void>;
  /** Runs in the page; what it returns is plain data. */
  ask<T>(script: string): Promise<T>;
  picture(file: string): Promise<void>;
  reload(): Promise<void>;
}

/** A browser that is here, with two phones in it that share nothing. */
export interface Opened {
  readonly version: string;
  readonly panel: Window;
  readonly emitter: Window;
  close(): Promise<void>;
}

/** A browser that may be here. */
export interface Candidate {
  readonly name: string;
  /** How it is driven. */
  readonly by: string;
  /** Undefined: it is not on this machine. */
  readonly path: string | undefined;
  open(path: string): Promise<Opened>;
}

/** Inside double quotes of an XPath. None of our labels has such a quote. */
const quoted = (text: string): string => `"${text}"`;

export const button = (label: string): string =>
  `//button[normalize-space()=${quoted(label)} or @aria-label=${quoted(label)}]`;
export const holding = (text: string): string =>
  `//*[not(*) and contains(normalize-space(), ${quoted(text)})]`;
export const field = (label: string): string =>
  `//*[(self::input or self::select) and (@aria-label=${quoted(label)} or @id=//label[normalize-space()=${quoted(label)}]/@for)]`;
export const link = (text: string): string => `//a[contains(normalize-space(), ${quoted(text)})]`;

export async function until<T>(what: string, look: () => Promise<T | undefined>, ms = 20_000): Promise<T> {
  const end = Date.now() + ms;
  for (;;) {
    const found = await look();
    if (found !== undefined) return found;
    if (Date.now() > end) throw new Error(`waited ${ms / 1000} s for ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}
