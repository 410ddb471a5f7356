import type { Packed } from './packed.ts';

/**
 * The automaton of all English sentences. A build puts it here (vite.graph.ts), made by the code that it bundles, because
 * making it takes longer than all else that is loaded to hear. Undefined where the sources run as they are: there it is made
 * when it is first asked for.
 */
export const MADE: Packed | undefined = undefined;
