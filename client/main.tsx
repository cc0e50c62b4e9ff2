import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import '@fontsource-variable/instrument-sans'
import './theme/tokens.css'
import './theme/base.css'
import { App } from './App.tsx'
import { keepShell } from './connection/shellKept.ts'
import { reloadOnStaleBuild } from './shell/faults/staleBuild.ts'
import { showTheme } from './theme/useTheme.ts'

/** Keeping the page costs as much as opening it: the first picture comes before, and the first things a hand does. */
const KEEP_AFTER_MS = 10_000

const root = document.getElementById('root')
if (root === null) throw new Error('The page has no #root to draw into')
showTheme()
reloadOnStaleBuild()
addEventListener('load', () => setTimeout(() => void keepShell(), KEEP_AFTER_MS))
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
)
