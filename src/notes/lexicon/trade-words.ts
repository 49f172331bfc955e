import { countSlips, isSwap, skeleton } from '../spelling.ts';
import { isEnglish } from './ordinary.ts';

/**
 * The words that notes are made of, most told of first: a word that no dictionary has and that is one slip of the
 * thumb from one of these is that word, whatever rarer word is as near ("piched" is pinched, not pitched).
 */
const TRADE_WORDS =
  'tipped pinched picked figs fruitlets figlets dropped fruits ripening pinch shoots watered pruned branched breba brebas leafed rooted ripe ripened cuttings harvested buds bumps leaves nodes branches branch shoot mulched fertilized fertilised repotted potted clipped snipped topped nipped trimmed chopped swelling softening coloured colored leafing branching sprouted sprayed netted wrapped unwrapped squirrels wasps birds beetles frost frosted dormant nothing none dozen pounds ounces grams kilos eaten collected gathered fallen split cracked blown yellow brown spots aphids rabbits deer shaded staked weeded wilted droopy tops tips moved pulled little greenhouse tasted taking growth yesterday today monday tuesday wednesday thursday friday saturday sunday first second zero stripped splitting empty wrinkled purple colour color';

/** Right as they stand, though dictionaries lack them. */
const RIGHT =
  'figlet fruitlet breva brevas figless figgy figgie noone gramps grats rootled branchy ripes noded snipper figo riped ripd eated shedded aphis aphidy';

const words = TRADE_WORDS.split(' ');
const known = new Set([...words, ...RIGHT.split(' ')]);
const bare = new Map<string, string>();
for (const word of words) {
  const bones = bonesOf(word);
  if (bones.length >= 3 && !bare.has(bones)) bare.set(bones, word);
}

/**
 * The word of the trade meant by a slip, or null: one slip with its first letter right; or all its consonants and
 * no vowel ("brnchd"), or some wrong ones ("leefd").
 */
export function tradeWordFor(typed: string): string | null {
  if (typed.length < 4 || known.has(typed) || isEnglish(typed)) return null;
  const nearest = oneSlipFrom(typed);
  if (nearest?.at(-1) === typed.at(-1)) return nearest;
  const meant = bare.get(bonesOf(typed));
  if (meant === undefined || meant[0] !== typed[0]) return nearest;
  const isBare = !/[aeiou]/.test(typed);
  return isBare || countSlips(typed, meant, 2) <= 2 ? meant : nearest;
}

function oneSlipFrom(typed: string): string | null {
  let best: string | null = null;
  let most = -1;
  for (const word of words) {
    if (word.length < 4 || word[0] !== typed[0] || countSlips(typed, word, 1) > 1) continue;
    // "tipd" did something: it is not tips. A letter left out or swapped is likelier than a wrong one.
    const likeness = (word.at(-1) === typed.at(-1) ? 2 : 0) + (isOtherLetter(word, typed) ? 0 : 1);
    if (likeness > most) [best, most] = [word, likeness];
  }
  return best;
}

function isOtherLetter(word: string, typed: string): boolean {
  return word.length === typed.length && !isSwap(word, typed);
}

/** Consonants, a double one once: `bonesOf('cuttings') //=> 'ctngs'` */
function bonesOf(word: string): string {
  return skeleton(word).replace(/(.)\1+/g, '$1');
}
