/** As a `ref`: what comes into a long page while its reader is elsewhere on it is brought into sight, once. */
export function intoSight(element: Element | null): void {
  element?.scrollIntoView({ block: 'center' });
}
