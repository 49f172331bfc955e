/** Letters that Unicode does not take apart into a plain letter and a mark. */
const PLAIN: Record<string, string> = {
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ı: 'i',
};

/** A name as it is compared: lower case, no accents, words a single space apart. `'São  Luís' → 'sao luis'` */
export function fold(name: string): string {
  const lower = name.toLowerCase();
  // Most names are plain already, and folding two hundred thousand is what loading takes its time for.
  if (/^[a-z]+( [a-z]+)*$/.test(lower)) return lower;
  return lower
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[øłđðþßæœı]/g, (letter) => PLAIN[letter] ?? letter)
    .replace(/['’‘`´ʻ]/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
