import react from '@vitejs/plugin-react'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'
import { offlineShell } from './build/offlineShell.ts'

/** Where a relay listens while the client is served by vite alone, for work on the client. */
const relay = process.env.HALFSTOP_RELAY ?? 'http://127.0.0.1:4200'

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  plugins: [react(), offlineShell()],
  build: {
    outDir: fileURLToPath(new URL('../dist/client', import.meta.url)),
    emptyOutDir: true,
    target: 'es2022',
    // In kB. What writes PDFs is one large library, loaded only to print.
    chunkSizeWarningLimit: 1_300,
  },
  server: {
    proxy: {
      '/api': relay,
      '^/s/[^/]+/.+': { target: relay, ws: true },
    },
  },
})
