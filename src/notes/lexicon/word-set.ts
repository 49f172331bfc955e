/** The words of a text, parted by spaces or line ends. */
export function wordSet(text: string): ReadonlySet<string> {
  return new Set(text.trim().split(/\s+/));
}
