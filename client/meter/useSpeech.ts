import { useEffect, useRef, useState } from 'react'

interface Listener {
  lang: string
  interimResults: boolean
  maxAlternatives: number
  onresult: ((event: { readonly results: ArrayLike<ArrayLike<{ readonly transcript: string }>> }) => void) | null
  onend: (() => void) | null
  start(): void
  abort(): void
}
type ListenerMaker = new () => Listener

/** What the browser has for listening, under either of its names; null where it cannot. */
function listenerMaker(): ListenerMaker | null {
  const page = globalThis as unknown as { readonly SpeechRecognition?: ListenerMaker; readonly webkitSpeechRecognition?: ListenerMaker }
  return page.SpeechRecognition ?? page.webkitSpeechRecognition ?? null
}

/**
 * Listens for one sentence at a time. `isOffered` is false where the browser cannot.
 * @param onHeard gets every version the machine thinks it heard, likeliest first
 */
export function useSpeech(onHeard: (heard: readonly string[]) => void) {
  const [isListening, setListening] = useState(false)
  const listener = useRef<Listener | null>(null)
  useEffect(() => () => listener.current?.abort(), [])

  function listen(): void {
    const Maker = listenerMaker()
    if (Maker === null) return
    const one = new Maker()
    listener.current = one
    one.lang = 'en'
    one.interimResults = false
    one.maxAlternatives = 5
    one.onresult = ({ results }) => onHeard(Array.from(results[0] ?? []).map(({ transcript }) => transcript))
    one.onend = () => setListening(false)
    setListening(true)
    one.start()
  }
  return { isOffered: listenerMaker() !== null, isListening, listen }
}
