import type { Clause } from '../clauses.ts';
import { wordSet } from '../lexicon/word-set.ts';
import { isAskedAbout, isQuestion } from '../question-order.ts';

/** Words that ask by themselves, without a question mark. */
const ASKING = wordSet(
  'how hows when whens what whats which who whos why where any anything anyone anybody eta worth yet versus whether wen owt',
);
const HAVE_FIRST = wordSet('have has dare did was were');
const PERMITTED = wordSet('ok okay safe fine alright wise');
const OPINION = wordSet('think reckon say guess');
const VERBS_FIRST = wordSet('is are do does did can could will would should shall am ought');

/** Whether a clause asks something, question mark or not; `either`: the message offers a choice. */
export function asksOutright(clause: Clause, either: boolean): boolean {
  if (clause.asked || isQuestion(clause)) return true;
  if (clause.sub === 'when' || clause.sub === 'which' || clause.sub === 'who' || clause.sub === 'whether')
    return true;
  if (either && clause.items.some((item) => item.classes.has('TIP') || item.classes.has('TIPPING')))
    return true;
  const [first, second] = clause.items;
  // "should have pinched it" regrets.
  if (first?.text === 'should' || first?.text === 'shall') return second?.text !== 'have';
  if (second?.text === 'to' && PERMITTED.has(first?.text ?? '')) return true;
  if (
    HAVE_FIRST.has(first?.text ?? '') &&
    (second?.type === 'tree' || second?.text === 'i' || second?.text === 'we')
  )
    return true;
  if (clause.items.some((item, i) => VERBS_FIRST.has(item.text) && isAskedAbout(clause.items[i + 1])))
    return true;
  if (clause.items.some((item, i) => item.text === 'you' && OPINION.has(clause.items[i + 1]?.text ?? '')))
    return true;
  return clause.items.some(
    (item) =>
      ASKING.has(item.text) && !(item.text === 'yet' && clause.items.some((each) => each.text === 'not')),
  );
}

const AGAIN = wordSet('again twice off out over');
/** "go again?", "take em off?", said of tips named before. */
export function isAgain({ items }: Clause): boolean {
  return items.some((item) => AGAIN.has(item.text));
}

/** "when do i eat" asks, "when it had 6 leaves" tells when. */
export function isInverted({ items }: Clause): boolean {
  return VERBS_FIRST.has(items[0]?.text ?? '');
}

const PAST = wordSet('was were had got did came went took gave picked watered fed moved');
/** "when i tipped it", "when it had 6 leaves": a time, not a question. */
export function isPast(clause: Clause): boolean {
  return (
    !isInverted(clause) && clause.items.some((item) => item.classes.has('TIPPED') || PAST.has(item.text))
  );
}

/** Ways to begin that announce news rather than ask for it. */
const TAGS = wordSet(`
  happy ok okay right eh huh yeah no typical nice good cool believe coincidence innit save great
`);
/** A few words behind a statement that only look for applause. */
export function isTag(clause: Clause): boolean {
  const words = clause.items.map((item) => item.text);
  if (words.length > 5 || words.includes('to')) return false;
  // "doesnt it", "or what"
  const [last, before] = [words.at(-1) ?? '', words.at(-2) ?? ''];
  if ((before === 'not' && last === 'it') || (words.length === 1 && last === 'what')) return true;
  return words.some((word) => TAGS.has(word));
}
