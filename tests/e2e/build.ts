import { execFileSync } from 'node:child_process';
import type { TestProject } from 'vitest/node';

/** Builds before the browser tests, and again before each rerun, so that they never see older pages. */
export function setup(project: TestProject): void {
  build();
  project.onTestsRerun(build);
}

function build(): void {
  // Vitest says "test" here, and that would build other pages than those that are served.
  const env = { ...process.env, NODE_ENV: 'production' };
  execFileSync('npm', ['run', '--silent', 'build'], { env, stdio: 'inherit' });
}
