import type { Item } from '../items.ts';
import { wordSet } from '../lexicon/word-set.ts';

/** It asks for a way to do something with the assistant. */
export function isHowTo(plain: readonly Item[]): boolean {
  const words = plain.slice(0, 12).map((item) => item.text);
  return (
    words.some(
      (word, i) =>
        word === 'how' &&
        ['do', 'does', 'can', 'to', 'could', 'should', 'would'].includes(words[i + 1] ?? ''),
    ) ||
    words.some(
      (word, i) => word === 'what' && ['do', 'can', 'sort', 'kind', 'else'].includes(words[i + 1] ?? ''),
    ) ||
    (['can', 'could', 'do'].includes(words[0] ?? '') && ['i', 'you'].includes(words[1] ?? '')) ||
    words.includes('commands') ||
    words[0] === 'explain' ||
    words.some((word, i) => word === 'where' && ['do', 'can', 'is'].includes(words[i + 1] ?? '')) ||
    (words[0] === 'what' && words[1] === 'is' && words.includes('way'))
  );
}

const ASSISTANT = wordSet(`
  log record note notes reminders reminder nudges pings delete undo edit change add command commands
  type tell see help bot work works say write units celsius fahrenheit zone photos photo sheet manual
  mean means ask press tap button buttons dms messages export rename enter set join leave remove correct thing start turn menu you use
`);
/** "how do i pinch it" wants a verdict on a tree, not a page of help. */
export function isAboutTrees(plain: readonly Item[], howTo: boolean): boolean {
  if (plain.some((item) => item.text === 'mean' || item.text === 'means')) return false;
  const tip =
    plain.some((item) => item.classes.has('TIP') || item.classes.has('TIPPING')) &&
    !plain.some(
      (item) =>
        item.text === 'stop' &&
        plain.some((each) =>
          ['reminders', 'pings', 'nudges', 'messages', 'notifications', 'pinging'].includes(each.text),
        ),
    );
  const assistant = plain.some(
    (item) => ASSISTANT.has(item.text) && item.text !== 'you' && item.text !== 'see' && item.text !== 'start',
  );
  if (tip) return !assistant || (!howTo && plain.length > 4);
  if (plain.some((item) => item.mention)) return !assistant;
  return plain.length > 5 && !howTo && !assistant;
}
