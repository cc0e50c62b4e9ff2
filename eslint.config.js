import importX from 'eslint-plugin-import-x'
import jsxA11y from 'eslint-plugin-jsx-a11y'
import reactHooks from 'eslint-plugin-react-hooks'
import typescript from 'typescript-eslint'

/**
 * The rooms of the house, lowest first. A room may import from itself and from rooms before it; `plan`, `notes`,
 * `rig` and `document` stand beside the physics, not on it. See DEVELOPERS.md, "The map".
 */
const physics = ['arithmetic', 'subject', 'spectra', 'photometry', 'colour', 'set', 'transport', 'exposure', 'picture', 'predict', 'ask', 'compare', 'kit', 'stands', 'meter', 'testFrame', 'notebook']
/** Rooms that read the plan itself; those below take what they need as plain shapes. */
const knowsPlan = ['predict', 'ask', 'compare', 'kit', 'stands', 'meter', 'testFrame', 'notebook']
/** Rooms that read what is kept of the day. */
const knowsRig = ['kit', 'stands', 'meter', 'testFrame', 'notebook']

function roomsAbove(room) {
  const above = physics.slice(physics.indexOf(room) + 1)
  return [...above, ...(knowsPlan.includes(room) ? [] : ['plan']), ...(knowsRig.includes(room) ? [] : ['rig']), 'notes', 'document']
}

/** The rooms of the page that draw. */
const components = ['agree', 'ask', 'controls', 'explain', 'floor', 'frame', 'gels', 'kit', 'ladder', 'meter', 'moves', 'notebook', 'notes', 'panels', 'print', 'rig', 'shell', 'singles', 'snags', 'testFrame']

const zones = [
  ...physics.map((room) => ({
    target: `./shared-core/${room}`,
    from: roomsAbove(room).map((other) => `./shared-core/${other}`),
    message: `${room}/ stands below this room: dependencies point one way.`,
  })),
  {
    target: './shared-core/plan',
    from: [...physics.filter((room) => room !== 'arithmetic'), 'notes', 'rig', 'document'].map((room) => `./shared-core/${room}`),
    message: 'The plan knows no physics, no notes and no document.',
  },
  {
    target: './shared-core/notes',
    from: [...physics.filter((room) => room !== 'arithmetic'), 'document'].map((room) => `./shared-core/${room}`),
    message: 'Notes are made of the plan\'s quantities and know neither physics nor document.',
  },
  {
    target: './shared-core/rig',
    from: [...physics.filter((room) => room !== 'arithmetic'), 'notes', 'document'].map((room) => `./shared-core/${room}`),
    message: 'What is kept of the day is made of the plan\'s shapes and knows neither physics nor document.',
  },
  {
    target: './shared-core/document',
    from: physics.filter((room) => room !== 'arithmetic').map((room) => `./shared-core/${room}`),
    message: 'The document knows plan, notes and rig only.',
  },
  { target: './shared-core', from: ['./client', './server', './tests'], message: 'The core runs anywhere: it imports nothing of page or server.' },
  {
    target: ['./client/session', './client/connection'],
    from: components.map((room) => `./client/${room}`),
    message: 'The engine of the page knows no component.',
  },
  {
    target: './client/notes/engine',
    from: components.filter((room) => room !== 'notes').map((room) => `./client/${room}`),
    message: 'The engine of the notes knows no component.',
  },
  {
    target: './client/rig/engine',
    from: components.filter((room) => room !== 'rig').map((room) => `./client/${room}`),
    message: 'The engine of the rig knows no component.',
  },
  { target: './client', from: ['./server', './tests'], message: 'The page talks to the server over the wire only.' },
  { target: './server', from: ['./client', './tests'], message: 'The server serves the built page; it does not import it.' },
]

const unreliableMath = ['sin', 'cos', 'pow', 'hypot', 'random'].map((property) => ({
  object: 'Math',
  property,
  message: 'Differs between engines (or runs): use shared-core/arithmetic/portable.ts.',
}))

export default typescript.config(
  { ignores: ['dist/', 'node_modules/', '.data/', 'tests/bench/node_modules/', 'tests/browser/output/'] },
  ...typescript.configs.recommended,
  {
    files: ['**/*.{ts,tsx}'],
    plugins: { 'import-x': importX },
    rules: {
      'import-x/no-cycle': ['error', { maxDepth: 12 }],
      'import-x/no-restricted-paths': ['error', { zones, basePath: import.meta.dirname }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_', caughtErrorsIgnorePattern: '^_' }],
      'no-console': 'off',
      eqeqeq: 'error',
    },
    settings: { 'import-x/extensions': ['.ts', '.tsx'], 'import-x/parsers': { '@typescript-eslint/parser': ['.ts', '.tsx'] } },
  },
  {
    files: ['shared-core/**/*.ts'],
    rules: {
      'no-restricted-properties': ['error', ...unreliableMath],
      'no-restricted-syntax': ['error', { selector: "BinaryExpression[operator='**']", message: '`**` differs between engines: multiply, or use power().' }],
      'no-restricted-globals': ['error', 'window', 'document', 'process', 'navigator', 'fetch', 'Buffer'],
    },
  },
  {
    files: ['client/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks, 'jsx-a11y': jsxA11y },
    rules: {
      ...reactHooks.configs.recommended.rules,
      ...jsxA11y.configs.recommended.rules,
      'no-restricted-imports': ['off'],
    },
  },
  {
    files: components.map((room) => `client/${room}/**/*.{ts,tsx}`),
    ignores: ['client/notes/engine/**', 'client/rig/engine/**'],
    rules: {
      'no-restricted-imports': ['error', { paths: [{ name: 'yjs', message: 'Components call named edits, never the shared document.' }] }],
    },
  },
)
