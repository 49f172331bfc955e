const GREETINGS =
  /^(?:hi+|hello|hey+|hiya|howdy|g'?day|yo|good (?:morning|evening|afternoon)|morning|evening)(?: (?:there|all|everyone|ostiole))?$/;
const THANKS =
  /^(?:thanks?|thank you|thx|ta|cheers|great|perfect|nice one|lovely|ok(?:ay)?|cool|got it|will do)(?: (?:so much|very much|a lot|a million|mate|all|ostiole|thanks))?$/;

const UNDO =
  /^(?:please )?(?:undo|delete|remove|scrap|cancel|forget|take back)(?: (?:that|it|this|(?:the|my) last(?: (?:one|note|entry))?))?(?: please| pls)?$/;

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
