/** Gives a file to the person at this device. */
export function download(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // By the next task the browser holds the blob itself.
  setTimeout(() => URL.revokeObjectURL(url));
}

/** "hollin-bridge-beam-3": safe in every file system. */
export const fileName = (...parts: string[]): string =>
  parts
    .join(' ')
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 80) || 'log';
