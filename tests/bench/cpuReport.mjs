/** Loaded into a measured server beside its own unchanged code: answers its parent with the CPU time it has used. */
process.on('message', (message) => {
  if (message === 'cpu?') process.send?.({ cpuMicroseconds: process.cpuUsage().user + process.cpuUsage().system })
})
process.channel?.unref()
