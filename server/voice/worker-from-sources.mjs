// Starts the worker where it is still TypeScript: in development and in tests.
import { register } from 'tsx/esm/api';

register();
await import('./worker.ts');
