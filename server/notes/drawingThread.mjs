// First lines of a thread: it does not inherit what reads TypeScript in the relay itself, so it brings that along.
import { register } from 'tsx/esm/api'

register()
await import('./drawOrder.ts')
