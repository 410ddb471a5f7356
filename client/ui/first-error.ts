/** Brings the first wrong field of a form into view, once the form shows what is wrong. */
export function showFirstError(form: HTMLFormElement | null): void {
  setTimeout(() => {
    const field = form?.querySelector<HTMLElement>('.wrong input, .wrong select');
    field?.scrollIntoView({ block: 'center' });
    field?.focus();
  });
}
