import type { Clause } from './clauses.ts';
import { isWide } from './garden-wide.ts';
import { harmlessItems } from './harmless.ts';
import type { Item } from './items.ts';
import { ASKED_WORK, LATER } from './lexicon/mood-words.ts';
import { wordSet } from './lexicon/word-set.ts';
import { moodRulesOf } from './mood-rules.ts';
import { isOthers } from './owners.ts';
import { isQuestion } from './question-order.ts';

/** How what a clause says is meant. Anything but `real` is never a positive event. */
export interface Mood {
  /** Index of the first word that makes what follows unreal (planned, wished, supposed), or null. */
  readonly unrealFrom: number | null;
  /** Indexes of words of denial. */
  readonly denials: readonly number[];
  /** It asks something. */
  readonly asks: boolean;
  /** It tells of an earlier season or of a habit. */
  readonly past: boolean;
  /** Somebody else says so. */
  readonly hearsay: boolean;
  /** It is about somebody else's tree. */
  readonly others: boolean;
  /** Garden-wide: "everything", "all the pots". */
  readonly wide: boolean;
}

/** Whether a clause is meant as a fact: nothing in it is denied, planned or supposed. */
export function isFact({ denials, unrealFrom }: Mood): boolean {
  return denials.length === 0 && unrealFrom === null;
}

/** How a clause is meant; `today` tells which years are past. */
export function readMood(clause: Clause, today: string): Mood {
  const { items } = clause;
  const harmless = harmlessItems(items);
  const denials: number[] = [];
  let unrealFrom: number | null =
    clause.sub === 'if' || clause.sub === 'unless' || clause.sub === 'whether' ? 0 : null;
  let past = false;
  let hearsay = false;
  let others = false;
  let wide = false;
  const year = Number(today.slice(0, 4));
  const opening = items[0]?.text;
  if (opening !== undefined && items.length > 1 && opensUnreal(opening, items)) unrealFrom = 0;
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (!item || harmless.has(i)) continue;
    for (const { means, when } of moodRulesOf(item.word)) {
      switch (means) {
        case 'unreal':
          if (unrealFrom === null && when(items, i, clause, year)) unrealFrom = i;
          break;
        case 'whole':
          if (unrealFrom === null && when(items, i, clause, year)) unrealFrom = 0;
          break;
        case 'denied':
          if (when(items, i, clause, year)) denials.push(i);
          break;
        case 'denied-of-fact':
          if (unrealFrom === null && when(items, i, clause, year)) denials.push(i);
          break;
        case 'past':
          past ||= when(items, i, clause, year);
          break;
        case 'hearsay':
          hearsay ||= when(items, i, clause, year);
          break;
      }
    }
    others ||= isOthers(items, i);
    wide ||= isWide(items, i);
  }
  return { unrealFrom, denials, asks: isQuestion(clause), past, hearsay, others, wide };
}

/** How a clause opens that tells of no fact. */
function opensUnreal(opening: string, items: readonly Item[]): boolean {
  const second = items[1]?.text ?? '';
  // "had i tipped it"
  if (opening === 'had' || opening === 'were') return second === 'i' || second === 'we' || second === 'it';
  // "someone water the alma please"
  if (CALLING.has(opening)) return ASKED_WORK.has(second);
  // "going on saturday": where it will go.
  if (opening === 'going') return true;
  // "moving it in the autumn", "pruning the mission next"
  return (
    opening.endsWith('ing') && (items.at(-1)?.text === 'next' || items.some((item) => LATER.has(item.text)))
  );
}

const CALLING = wordSet('someone somebody anyone please kindly');
