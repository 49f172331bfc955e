import type { Clause } from '../clauses.ts';
import type { Setting } from '../contract.ts';
import type { Item } from '../items.ts';
import { wordSet } from '../lexicon/word-set.ts';
import { readSaying } from '../sayings.ts';

/** A clause that begins with one of these asks. */
const OPENERS = wordSet(`
  should shall do does did can could will would how hows when whens what whats which who whos whose why where any
  anything anyone anybody eta worth yet versus whether wen owt is are am has time
`);
const ASKING_SUBS = wordSet('if whether when who which');
/** A clause that holds one of these asks, wherever it stands. */
const ASKING = wordSet(
  'please pls window earliest latest date guess estimate gimme when how eta should anyone anybody anything hows whens wen',
);
/** "ronde was watered ok?" states; "ronde ready by august?" asks. */
const UNDECIDED = wordSet('yet by ready or soon');
/** Words behind a statement that only look for applause. */
const TAGS = wordSet('ok okay right eh huh yeah no innit happy good alright correct');
/** What is said of these kinds may as well be asked. */
const ASKABLE: ReadonlySet<string> = new Set(['ripening', 'ask-kind', 'tipped']);

/** Whether a clause states something as a fact, and so is worth recording, question mark or not. */
export function statesFact(clause: Clause, setting: Setting): boolean {
  const saying = readSaying(clause, setting.today);
  if (saying.hits.length === 0) return false;
  const { mood } = saying;
  if (isSaidToBeKept(clause)) return true;
  if (mood.unrealFrom !== null || (clause.sub !== null && ASKING_SUBS.has(clause.sub))) return false;
  const { items } = clause;
  // "mission figs, an estimate" only says what is spoken of.
  if (items.every((item) => item.type === 'tree' || isNaming(item))) return false;
  if (OPENERS.has(items[0]?.text ?? '')) return false;
  if (items.some((item) => ASKING.has(item.text))) return false;
  if (!mood.asks) return true;
  const tagged =
    TAGS.has(items.at(-1)?.text ?? '') &&
    items.some((item) => item.classes.has('TIPPED') || item.text === 'took');
  return (
    (tagged || saying.hits.some((hit) => !ASKABLE.has(hit.kind))) &&
    !items.some((item) => UNDECIDED.has(item.text))
  );
}

function isNaming({ text, classes }: Item): boolean {
  return text === 'first' || classes.has('FRUIT') || classes.has('BREBA') || classes.has('DET');
}

/** "dont let me forget i tipped …", "did i say i tipped …": news in the dress of a question. */
function isSaidToBeKept({ items }: Clause): boolean {
  const words = items.map((item) => item.text);
  const said = words.findIndex((word) => SAID.has(word));
  return (
    said > 0 &&
    said < 5 &&
    (words[said + 1] === 'i' || items[said + 1]?.type === 'tree' || words[said + 1] === 'the') &&
    words.slice(0, said).some((word) => word === 'i' || word === 'me')
  );
}

const SAID = wordSet('say said mention mentioned tell told forget');
