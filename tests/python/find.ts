import { spawnSync } from 'node:child_process';

/** How to call a Python 3 of this machine; undefined when there is none. */
export const PYTHON: string | undefined = ['python3', '/usr/bin/python3'].find(
  (command) => spawnSync(command, ['-c', 'import sys; sys.exit(sys.version_info < (3, 9))']).status === 0,
);
