/** Control and format characters, among them the ones that turn the direction of the text around them. */
const UNSEEN =
  /[\p{Cc}\p{Cs}\p{Co}\p{Cn}\u2028\u2029\u200b\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff\u00ad]/gu;

/** A member's text on one line, without characters that cannot be seen. */
export function tidy(text: string): string {
  return text.replace(/\s+/gu, ' ').replace(UNSEEN, '').trim();
}

/** An ASCII file name of these parts. `fileName('tree', 'Pot 3', '2026/27') //=> 'tree-pot-3-2026-27.png'` */
export function fileName(...parts: readonly string[]): string {
  const slug = parts
    .map((part) =>
      part
        .normalize('NFKD')
        .replace(/\p{M}/gu, '')
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, ' ')
        .trim()
        .slice(0, 40)
        .trim()
        .replace(/ /g, '-'),
    )
    .filter((part) => part !== '')
    .join('-');
  return `${slug}.png`;
}
