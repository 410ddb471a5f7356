import type { Page } from 'playwright-core';

interface Printed {
  /** On the screen in that moment. */
  drawn: number;
  /** In the page when the browser takes it. */
  onPaper: number;
}

/**
 * Has the next page printed in the moment in which `first` is drawn in it, before it goes on. The printing steps of the
 * HTML Standard: `beforeprint` is told, then the document is taken as it stands. Ask the returned function how many
 * `each` it then had; both are CSS.
 */
export async function printWhenDrawn(
  page: Page,
  first: string,
  each: string,
): Promise<() => Promise<Printed>> {
  await page.addInitScript(
    ([first, each]) => {
      const count = () => document.querySelectorAll(each).length;
      new MutationObserver((_, watching) => {
        if (!document.querySelector(first)) return;
        watching.disconnect();
        const drawn = count();
        dispatchEvent(new Event('beforeprint'));
        const printed: Printed = { drawn, onPaper: count() };
        Object.assign(globalThis, { printed });
        dispatchEvent(new Event('afterprint'));
      }).observe(document, { childList: true, subtree: true });
    },
    [first, each] as const,
  );
  return async () => {
    const told = await page.waitForFunction(() => (globalThis as { printed?: Printed }).printed);
    return (await told.jsonValue()) as Printed;
  };
}
