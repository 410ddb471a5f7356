import type { Locator, Page } from 'playwright-core';

/** Whether a finger could hit it without moving the page first. Runs in the page. */
function isInSight(element: Element): boolean {
  const { left, right, top, bottom } = element.getBoundingClientRect();
  const at = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
  return at !== null && (element.contains(at) || at.contains(element));
}

/** One thumb at one phone: what it does is counted. */
export class Thumb {
  /** What was tapped, in order, as it is labelled. */
  readonly tapped: string[] = [];
  /** Letters and figures on the phone's own keyboard. */
  typed = 0;
  /** What could not be seen before the page was moved. */
  readonly searched: string[] = [];

  constructor(readonly page: Page) {}

  async tap(target: Locator): Promise<void> {
    await target.waitFor();
    const label = (await target.textContent()) || 'a box';
    if (!(await target.evaluate(isInSight))) this.searched.push(label);
    await target.tap();
    this.tapped.push(label);
  }

  press(name: string): Promise<void> {
    return this.tap(this.page.getByRole('button', { name, exact: true }));
  }

  async type(label: string, text: string): Promise<void> {
    await this.tap(this.page.getByLabel(label, { exact: true }));
    await this.page.keyboard.type(text);
    this.typed += text.length;
  }

  /** From a list that the phone draws: one tap opens it, one takes the line. */
  async choose(label: string, option: string): Promise<void> {
    const list = this.page.getByLabel(label, { exact: true });
    await this.tap(list);
    await list.selectOption({ label: option });
    this.tapped.push(option);
  }
}
