import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './App.tsx'
import '@fontsource-variable/instrument-sans'
import './theme/tokens.css'
import './theme/base.css'

const root = document.getElementById('root')
if (root === null) throw new Error('The page has no #root to draw into')
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
)
