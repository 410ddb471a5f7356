// Starts a thread where its program is still TypeScript: in development and in tests.
import { pathToFileURL } from 'node:url';
import { register } from 'tsx/esm/api';

register();
await import(pathToFileURL(process.argv[2]).href);
