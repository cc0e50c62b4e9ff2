import { generateSW } from 'workbox-build'
import type { Plugin } from 'vite'

/**
 * Writes a service worker beside the built page, which keeps every file of it on the device: a set in a basement loads
 * the board again without a network. Of what the relay answers, only what is kept under a hash of its content is kept here
 * too (it can never be another), so that a phone can say without a network what differs from a lock it has once seen.
 */
export function offlineShell(): Plugin {
  let folder = ''
  return {
    name: 'halfstop-offline-shell',
    apply: 'build',
    configResolved: (config) => {
      folder = config.build.outDir
    },
    writeBundle: async () => {
      const { warnings } = await generateSW({
        globDirectory: folder,
        globPatterns: ['**/*.{html,js,css,woff2,svg,webmanifest,bin,ttf}'],
        // Names with a hash of their content need no second one.
        dontCacheBustURLsMatching: /^assets\//,
        swDest: `${folder}/service-worker.js`,
        inlineWorkboxRuntime: true,
        sourcemap: false,
        navigateFallback: '/index.html',
        navigateFallbackAllowlist: [/^\/$/, /^\/[jsp]\/[A-Za-z0-9_-]+\/?(\?.*)?$/],
        cleanupOutdatedCaches: true,
        runtimeCaching: [{
          urlPattern: /\/s\/[A-Za-z0-9_-]+\/kept\/[0-9a-f]{64}$/,
          handler: 'CacheFirst',
          options: { cacheName: 'kept', cacheableResponse: { statuses: [200] }, expiration: { maxEntries: 60, purgeOnQuotaError: true } },
        }],
        clientsClaim: true,
        skipWaiting: true,
      })
      if (warnings.length > 0) throw new Error(`The service worker is not whole: ${warnings.join('; ')}`)
    },
  }
}
