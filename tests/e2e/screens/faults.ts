/** What a program can see of a page that people could not read or press. */

export interface Fault {
  kind: 'cut' | 'outside' | 'overlap' | 'small' | 'sideways';
  what: string;
}

/** Runs in the page, and so holds all that it needs. `touch`: the least width and height of what is pressed, CSS pixels. */
export function faultsOnPage(touch: number): Fault[] {
  const SLACK = 1;
  const root = document.querySelector('dialog[open]') ?? document.body;
  const faults: Fault[] = [];
  const name = (element: Element): string => {
    const label = element.getAttribute('aria-label') ?? element.textContent ?? '';
    const kind = element.getAttribute('class') ?? '';
    return `${element.tagName.toLowerCase()}.${kind} "${label.trim().replace(/\s+/g, ' ').slice(0, 40)}"`;
  };
  const found = (kind: Fault['kind'], element: Element, more = '') =>
    faults.push({ kind, what: `${name(element)} ${more}`.trim() });
  const isShown = (element: Element): boolean =>
    element.checkVisibility({ contentVisibilityAuto: true, opacityProperty: true, visibilityProperty: true });
  /** A part that is meant to be moved by itself, such as a wide table. */
  const scrolls = (element: Element | null): boolean => {
    for (let at = element; at && at !== root; at = at.parentElement) {
      const { overflowX, overflowY } = getComputedStyle(at);
      if (/auto|scroll/.test(overflowX) && at.scrollWidth > at.clientWidth) return true;
      if (/auto|scroll/.test(overflowY) && at.scrollHeight > at.clientHeight) return true;
    }
    return false;
  };
  /** Laid over the page on purpose. */
  const floats = (element: Element | null): boolean => {
    for (let at = element; at && at !== root; at = at.parentElement)
      if (/sticky|fixed/.test(getComputedStyle(at).position)) return true;
    return false;
  };
  const isHiddenText = (element: Element): boolean => {
    const { clipPath, position } = getComputedStyle(element);
    return clipPath !== 'none' || (position === 'absolute' && element.clientWidth <= 1);
  };

  const scroller = document.scrollingElement as Element;
  if (scroller.scrollWidth > scroller.clientWidth + SLACK)
    faults.push({ kind: 'sideways', what: `${scroller.scrollWidth} > ${scroller.clientWidth}` });

  const lines: { box: DOMRect; of: Element; line: string }[] = [];
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const of = node.parentElement as Element;
    if (
      !node.textContent?.trim() ||
      !isShown(of) ||
      isHiddenText(of) ||
      of.closest('noscript, style, script')
    )
      continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) {
      if (box.width < 1 || box.height < 1) continue;
      if (!scrolls(of) && (box.left < -SLACK || box.right > innerWidth + SLACK)) found('outside', of);
      if (!scrolls(of) && !floats(of)) lines.push({ box, of, line: node.textContent.trim().slice(0, 30) });
    }
  }
  for (const element of root.querySelectorAll('*')) {
    if (!isShown(element) || element.closest('svg')) continue;
    const { overflowX, overflowY, textOverflow } = getComputedStyle(element);
    const wide = element.scrollWidth > element.clientWidth + SLACK;
    const high = element.scrollHeight > element.clientHeight + SLACK;
    const hasText = (element.textContent ?? '').trim() !== '';
    if (!hasText || isHiddenText(element) || element.clientWidth === 0) continue;
    const hides = (overflow: string) => overflow === 'hidden' || overflow === 'clip';
    if ((wide && (hides(overflowX) || textOverflow === 'ellipsis')) || (high && hides(overflowY)))
      found('cut', element);
    if (wide && element.matches('button, a.button, summary, label, h1, h2, h3')) found('cut', element);
  }

  // A letter's box is higher than the letter: neighbouring lines may share a little of it.
  const [LEAST_X, LEAST_SHARE] = [3, 0.45];
  for (const [i, one] of lines.entries()) {
    for (const other of lines.slice(i + 1)) {
      if (one.of === other.of) continue;
      const x = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
      const y = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
      const low = Math.min(one.box.height, other.box.height);
      if (x > LEAST_X && y > low * LEAST_SHARE) found('overlap', one.of, `and "${other.line}"`);
    }
  }

  // WCAG 2.2, 2.5.5 leaves out what stands in a sentence, and what the same page offers elsewhere: the points of a
  // chart are also the lines of the exchange.
  const isInSentence = (element: Element): boolean =>
    element.matches('a, button') &&
    /^inline(?:-block)?$/.test(getComputedStyle(element).display) &&
    (element.parentElement?.textContent ?? '').trim().length > (element.textContent ?? '').trim().length;
  const pressed = 'button, a[href], input, select, textarea, summary, [role="button"], [tabindex="0"]';
  for (const element of root.querySelectorAll(pressed)) {
    if (
      !isShown(element) ||
      isInSentence(element) ||
      element.matches('[type="hidden"], svg *, ol, ul, div, section')
    )
      continue;
    const labelled = element.matches('[type="checkbox"], [type="radio"], [type="file"]')
      ? (element.closest('label') ?? element)
      : element;
    const { width, height } = labelled.getBoundingClientRect();
    if (width === 0 && height === 0) continue;
    if (width < touch - 0.5 || height < touch - 0.5)
      found('small', element, `${Math.round(width)}×${Math.round(height)}`);
  }
  return faults.filter((one, i) => faults.findIndex((f) => f.kind === one.kind && f.what === one.what) === i);
}

/** Whether the order and its main answer are both whole in sight, before a finger moves. Runs in the page. */
export function orderInSight(): string[] {
  const keys = document.querySelector('.ladder-keys');
  const stays = keys && getComputedStyle(keys).position === 'sticky';
  const answers = stays ? keys : document.querySelector('.answers:not(:empty)');
  const [order, main] = ['.face .show', '.answers .answer-main'].map((part) => document.querySelector(part));
  const side = (answers?.getBoundingClientRect().left ?? 0) > (order?.getBoundingClientRect().right ?? 0);
  const end = side ? innerHeight : Math.min(innerHeight, answers?.getBoundingClientRect().top ?? innerHeight);
  const hidden: string[] = [];
  if (order && order.getBoundingClientRect().bottom > end + 1) hidden.push('the order');
  if (main && main.getBoundingClientRect().bottom > innerHeight + 1) hidden.push('its main answer');
  return hidden;
}

/**
 * What `keys` selects, whole and uncovered before a finger moves. Behind an open sheet nothing is pressed, and a form that begins
 * below the screen is not ended yet. Runs in the page.
 */
export function keysInSight(keys: string): string[] {
  const root = document.querySelector('dialog[open]') ?? document.body;
  return [...root.querySelectorAll(keys)].flatMap((key) => {
    const { left, right, top, bottom, width } = key.getBoundingClientRect();
    const ends: [number, number][] = [
      [(left + right) / 2, top + 4],
      [(left + right) / 2, bottom - 4],
    ];
    const begins = key.closest('form:has(.foot)')?.querySelector('input, select');
    if (begins && begins.getBoundingClientRect().bottom > innerHeight) return [];
    const seen = width === 0 || ends.every(([x, y]) => key.contains(document.elementFromPoint(x, y)));
    return seen ? [] : [`the key "${key.textContent}"`];
  });
}
