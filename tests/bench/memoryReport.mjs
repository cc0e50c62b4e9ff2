/** Loaded into a measured server beside its own unchanged code: tidies up and answers its parent with the memory left in use. */
process.on('message', (message) => {
  if (message !== 'memory?') return
  globalThis.gc?.()
  const { heapUsed, external, rss } = process.memoryUsage()
  // `external` has the buffers in it.
  process.send?.({ usedBytes: heapUsed + external, residentBytes: rss })
})
process.channel?.unref()
