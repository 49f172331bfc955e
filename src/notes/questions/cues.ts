import type { Item } from '../items.ts';
import { type CueIntent, cuesOf } from '../lexicon/question-cues.ts';
import { wordSet } from '../lexicon/word-set.ts';
import { isAskedAbout } from '../question-order.ts';

/** Words a question may begin with. */
const OPENERS = wordSet(
  'hw how hows when whens wen what whats wat which who whos why where any anything anyone anybody too worth time eta got gimme give show tell when which whats',
);
/** Verbs that ask when whom they ask about comes next. */
const VERBS = wordSet('should shall do does did can could will would is are am was were has have');
/** Words that make a question anywhere in a short message. */
const ASKING = wordSet(
  'wen when how hows what whats which who whos eta yn nah yet or should any anyone anybody anything estimate gimme',
);
/** The one who is asked: questions about the assistant are help, about people the club's. */
const ASSISTANT = new Set(['you', 'ya', 'u', 'bot', 'assistant', 'app']);
const PEOPLE = wordSet(
  'everyone everybody everyones members member others club group gang folks crew anyone anybody who whos we us neighbours growers else rest',
);

/** Less than this and the words do not settle what is wanted. */
const ENOUGH = 4;

/**
 * What a question wants by its single words, or null when it asks nothing or its words do not settle it. For
 * questions in words of their own: phrases are read before.
 */
export function intentByCues(items: readonly Item[], marked: boolean): CueIntent | null {
  const words = items.filter((item) => item.type === 'word' || item.type === 'number');
  if (words.length === 0 || words.length > 24 || !asksAtAll(items, words, marked)) return null;
  const score = new Map<CueIntent, number>();
  const seen = new Set<string>();
  for (const { text, typed } of words) {
    if (seen.has(text)) continue;
    if (typed !== text) for (const [intent, weight] of cuesOf(typed)) add(score, intent, weight);
    seen.add(text);
    for (const [intent, weight] of cuesOf(text)) score.set(intent, (score.get(intent) ?? 0) + weight);
  }
  const has = (set: ReadonlySet<string>) => words.some(({ text }) => set.has(text));
  const named = items.some((item) => item.mention !== undefined);
  add(score, 'help', has(ASSISTANT) && !named ? 2 : named ? -3 : 0);
  add(score, 'roundup', has(PEOPLE) ? 2 : -2);
  add(score, 'roundup', named ? -3 : 0);
  add(score, 'ripe-when', named ? 1 : 0);
  add(score, 'tip', (score.get('tip') ?? 0) >= 4 && !has(PEOPLE) ? 2 : 0);
  const ranked = [...score].sort((a, b) => b[1] - a[1]);
  const [best] = ranked;
  return best !== undefined && best[1] >= ENOUGH ? best[0] : null;
}

function add(score: Map<CueIntent, number>, intent: CueIntent, by: number): void {
  score.set(intent, (score.get(intent) ?? 0) + by);
}

function asksAtAll(items: readonly Item[], words: readonly Item[], marked: boolean): boolean {
  if (marked) return true;
  const first = words[0]?.text ?? '';
  if (OPENERS.has(first) || (VERBS.has(first) && isAskedAbout(items[1]))) return true;
  if (words.some(({ text }) => ASKING.has(text))) return true;
  return items.some(
    (item, i) => item.text === '/' && items[i - 1]?.text === 'y' && items[i + 1]?.text === 'n',
  );
}

/** "y/n" */
export function saysYesOrNo(items: readonly Item[]): boolean {
  return items.some(
    (item, i) => item.text === '/' && items[i - 1]?.text === 'y' && items[i + 1]?.typed === 'n',
  );
}
