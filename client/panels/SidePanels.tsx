/** Content of the sheet about the selected thing. The sheet itself (its edge, close button, Escape) is the shell's. */
export function SidePanels() {
  return null
}
