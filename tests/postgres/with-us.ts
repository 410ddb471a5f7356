import type { ChildProcess } from 'node:child_process';

const children = new Set<ChildProcess>();
process.once('exit', () => {
  for (const child of children) child.kill('SIGKILL');
});

/** A program that ends with this one, whatever ends it. */
export function endsWithUs(child: ChildProcess): void {
  children.add(child);
  child.once('exit', () => children.delete(child));
}
