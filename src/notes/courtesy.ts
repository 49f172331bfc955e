const GREETINGS =
  /^(?:hi+|hello|hey+|hiya|howdy|g'?day|yo|good (?:morning|evening|afternoon)|morning|evening)(?: (?:there|all|everyone|ostiole))?$/;
const THANKS =
  /^(?:thanks?|thank you|thx|ta|cheers|great|perfect|nice one|lovely|ok(?:ay)?|cool|got it|will do)(?: (?:so much|very much|a lot|a million|mate|all|ostiole|thanks))?$/;

/** Before and behind what takes back. */
const AH =
  '(?:(?:oh|ah|oops|whoops|sorry|no|nope|nah|wait|actually|hang on|hold on|please|pls|my bad|my mistake|er|um|ok) )*';
const PLEASE =
  '(?: (?:please|pls|sorry|thanks|ta|actually|then|lol|my bad|my mistake|was wrong|was a mistake|by mistake))*';
const THAT =
  '(?: (?:that|it|this|all that|(?:that|the|my|this) (?:last |previous )?(?:one|note|entry|message|bit|log|record)))?';
/** "no i didn't" takes back what was done; by itself "didn't" says too little. */
const UNDO = new RegExp(
  `^${AH}(?:(?:undo|delete|remove|scrap|scratch|cancel|forget|ignore|disregard|strike|bin|wipe|erase|never ?mind|take back)${THAT}` +
    `|(?:don't|dont|do not) (?:log|count|record|note|save|keep) (?:that|it|this)` +
    `|(?:that|it) (?:never|didn't|didnt|did not) happen(?:ed)?|(?:didn't|didnt|never) happen(?:ed)?` +
    `|false alarm|that was (?:a joke|a test|a typo|a mistake|not me|for someone else)|wrong (?:chat|channel|person|thread)|(?:i )?take (?:that|it) back` +
    `|i (?:didn't|didnt|did not|haven't|havent|never did)(?: (?:do (?:that|it)|actually))?)${PLEASE}$`,
);
/** A message that only wants the last note taken back. */
export function asksUndo(text: string): boolean {
  return UNDO.test(wordsOf(text));
}

/** A message that is only a greeting, or only thanks: neither a note nor a question. */
export function readCourtesy(text: string): 'greeting' | 'thanks' | null {
  const words = wordsOf(text);
  if (GREETINGS.test(words)) return 'greeting';
  return THANKS.test(words) ? 'thanks' : null;
}

function wordsOf(text: string): string {
  return text
    .toLowerCase()
    .replaceAll('’', "'")
    .replaceAll(/[^a-z' ]+/g, ' ')
    .replaceAll(/ +/g, ' ')
    .trim();
}
