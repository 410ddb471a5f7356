import { MemoryStore } from '../../server/store/memory.ts';
import { storeContract } from './contract.ts';

storeContract('memory', async () => new MemoryStore());
