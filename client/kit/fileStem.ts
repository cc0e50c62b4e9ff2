/** A job's title as the beginning of a file name, without the characters that file systems refuse. */
export function fileStem(title: string): string {
  const plain = title.replaceAll(/[\\/:*?"<>|\p{Cc}]/gu, ' ').replaceAll(/\s+/g, ' ').replace(/^[. ]+/, '').trim()
  return plain === '' ? 'job' : plain.slice(0, 80)
}
