/** Loaded into a measured server beside its own unchanged code: tidies up and answers its parent with the memory left in use. */
process.on('message', async (message) => {
  if (message !== 'memory?') return
  // Buffers are given back beside the program, some time after nobody holds them any more.
  for (let turn = 0; turn < 3; turn++) {
    globalThis.gc?.()
    await new Promise((resolve) => setTimeout(resolve, 200))
  }
  const { heapUsed, external, rss } = process.memoryUsage()
  // `external` has the buffers in it.
  process.send?.({ usedBytes: heapUsed + external, residentBytes: rss })
})
process.channel?.unref()
