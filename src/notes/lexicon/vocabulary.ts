import { buildSpellingIndex, countSlips, nearest, type SpellingIndex, slipsAllowed } from '../spelling.ts';
import { CULTIVAR_NAMES } from '../trees/cultivar-names.ts';
import { ASIDES } from './asides.ts';
import { DOUBTS } from './doubt-words.ts';
import { INTENTS } from './intents.ts';
import { frequentWords, isOrdinary } from './ordinary.ts';
import { isListedPlain } from './plain-words.ts';
import { PREDICATES, patternWords } from './predicates/index.ts';
import { TEASERS } from './teasers.ts';
import { tradeWordFor } from './trade-words.ts';
import { classesOf, knownWords } from './word-classes.ts';

/** Words of dates, so that a typo in one is not mended into something else. */
const DATE_WORDS =
  'monday tuesday wednesday thursday friday saturday sunday january february march april may june july august september october november december mon tue tues wed thu thur thurs fri sat sun jan feb mar apr jun jul aug sep sept oct nov dec today yesterday tomorrow tonight week weeks weekend month months fortnight year years ago morning afternoon evening night noon midnight spring summer autumn winter easter christmas xmas halloween thanksgiving juneteenth anzac mothers fathers memorial labor labour patricks valentines oops whoops erm scratch correction edit';

const core = new Set<string>([
  ...knownWords(),
  ...patternWords(PREDICATES),
  ...patternWords(INTENTS),
  'wen',
  'rip',
  ...DATE_WORDS.split(' '),
]);
for (const { words } of CULTIVAR_NAMES) for (const word of words) if (word.length > 3) core.add(word);

/** Words of doubt and of passing: right as they stand, and nothing that a slip is mended towards. */
const passing = new Set([...patternWords(DOUBTS), ...patternWords(ASIDES), ...patternWords(TEASERS)]);

let index: SpellingIndex | null = null;
/** Lexicon words come first, so that they win a tie against everyday ones. */
function spellingIndex(): SpellingIndex {
  index ??= buildSpellingIndex([...core, ...frequentWords()]);
  return index;
}

/** True when a word stands as typed. */
export function isKnownWord(word: string): boolean {
  return (
    core.has(word) || passing.has(word) || isOrdinary(word) || classesOf(word).size > 0 || isListedPlain(word)
  );
}

const MEMORY = 5000;
const remembered = new Map<string, string>();

/** The word meant by an unknown one, or the word itself. Roster words (`names`) win over ours at the same distance. */
export function mendWord(word: string, names: readonly string[]): string {
  if (word.length < 3 || names.includes(word)) return word;
  const trade = tradeWordFor(word);
  if (trade !== null && !names.some((name) => countSlips(word, name, 1) <= 1)) return trade;
  if (isKnownWord(word)) return word;
  const begun = names.filter(
    (name) => name.startsWith(word) && name.length > word.length && !name.endsWith('s'),
  );
  if (begun.length === 1 && begun[0] !== undefined) return begun[0];
  const own = nearestName(word, names);
  if (own !== null && own.slips <= 1) return own.word;
  if (word.length > 4) {
    const sound = soundOf(word);
    const alike = names.find((name) => soundOf(name) === sound);
    if (alike !== undefined) return alike;
  }
  const general = mendGeneral(word);
  if (own !== null && (general === word || own.slips <= countSlips(word, general, 3))) return own.word;
  return general;
}

function mendGeneral(word: string): string {
  const known = remembered.get(word);
  if (known !== undefined) return known;
  const found = heldLast(word) ?? nearest(spellingIndex(), word)?.word ?? doubled(word) ?? word;
  if (remembered.size >= MEMORY) remembered.clear();
  remembered.set(word, found);
  return found;
}

/** "rustt" → "rust": the last letter typed twice. */
function heldLast(word: string): string | null {
  const single = word.slice(0, -1);
  return word.at(-1) === single.at(-1) && single.length > 3 && isKnownWord(single) ? single : null;
}

/** How a name sounds, so that "selest" is the Celeste and "cadota" the Kadota. */
function soundOf(word: string): string {
  return word
    .replace(/ph/g, 'f')
    .replace(/c(?=[eiy])/g, 's')
    .replace(/ck|c|q/g, 'k')
    .replace(/y/g, 'i')
    .replace(/z/g, 's')
    .replace(/(.)\1+/g, '$1')
    .replace(/e$/, '');
}

/** "sooo" → "so", "yesss" → "yes": letters held down. */
function doubled(word: string): string | null {
  const single = word.replace(/(.)\1+/g, '$1');
  if (single !== word && isKnownWord(single)) return single;
  const double = word.replace(/(.)\1{2,}/g, '$1$1');
  return double !== word && isKnownWord(double) ? double : null;
}

function nearestName(word: string, names: readonly string[]): { word: string; slips: number } | null {
  let best: { word: string; slips: number } | null = null;
  for (const name of names) {
    const allowed = Math.min(slipsAllowed(word.length), slipsAllowed(name.length));
    if (allowed === 0 || Math.abs(name.length - word.length) > allowed) continue;
    const slips = countSlips(word, name, allowed);
    // Two slips only where the first letter holds, or short names would catch everything.
    if (slips <= allowed && (slips < 2 || name[0] === word[0]) && (best === null || slips < best.slips))
      best = { word: name, slips };
  }
  if (best === null && word.length >= 3 && !/[aeiou]/.test(word)) {
    const full = names.find((name) => name.replace(/[aeiou]/g, '') === word);
    if (full !== undefined) return { word: full, slips: 2 };
  }
  return best;
}
