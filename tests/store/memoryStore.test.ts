import { MemoryStore } from '../../server/store/memoryStore.ts'
import { describeStoreContract } from './contract.ts'

describeStoreContract('MemoryStore', async () => new MemoryStore())
