import boldUrl from '@expo-google-fonts/ibm-plex-sans/700Bold/IBMPlexSans_700Bold.ttf?url'
import regularUrl from '@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf?url'
import type { FontFiles } from './pdf.ts'

let files: Promise<FontFiles> | null = null

/** The letters of a print: fetched once, and kept on the device with the rest of the page. */
export function fontFiles(): Promise<FontFiles> {
  files ??= Promise.all([regularUrl, boldUrl].map(bytesOf)).then(([regular, bold]) => ({ regular: regular!, bold: bold! }))
  files.catch(() => { files = null })
  return files
}

async function bytesOf(url: string): Promise<Uint8Array> {
  const response = await fetch(url)
  if (!response.ok) throw new Error(`The letters of the print did not come: ${response.status}.`)
  return new Uint8Array(await response.arrayBuffer())
}
