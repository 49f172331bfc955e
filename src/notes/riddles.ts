import { hitBehind } from './hits.ts';
import { makeItem } from './item.ts';
import { wordSet } from './lexicon/word-set.ts';
import { compileTable, findMatches } from './patterns.ts';
import type { Saying } from './sayings.ts';

/** One thing or another, by the words alone: "figs or leaf buds", "fruit or no". */
const RIDDLES = compileTable([
  [
    'riddle',
    [
      'FRUIT|FRUITLET ~ TREE? or|vs|versus DET? just|only|more|another? SIZE? LEAF|BUD|SHOOT|BUMP|gall|galls|flower|flowers|growth|branches|wood',
      'FRUIT|FRUITLET or|vs|versus DET? just|only|more|another? SIZE? LEAF|BUD|SHOOT|BUMP|gall|galls|flower|flowers|growth|branches|wood',
      'LEAF|BUD|SHOOT|BUMP|gall|galls|flower|flowers|growth|branches ~ TREE? or|vs|versus DET? SIZE? FRUIT|FRUITLET',
      'LEAF|BUD|SHOOT|BUMP|gall|galls|flower|flowers|growth|branches or|vs|versus DET? SIZE? FRUIT|FRUITLET',
      'FRUIT|FRUITLET|fruit or no|not|what|nah',
    ],
  ],
]);

const ASKS = wordSet(
  'is are was were what whats which can could anyone anybody someone tell id identify dunno who how do does any ideas idea thoughts wondering wonder decide guess know sure',
);
const RIDDLE_KINDS: ReadonlySet<string> = new Set([
  'fruitlets',
  'no-fruitlets',
  'buds-single',
  'buds-double',
  'leafed-out',
  'branched',
  'ask-kind',
]);

/** "is this a fig or a leaf on the alma", "figs or shoots on the king?": what it is has to be asked. */
export function markChoices(sayings: readonly Saying[]): void {
  for (let s = 0; s < sayings.length; s++) {
    const one = sayings[s];
    const other = sayings[s + 1];
    if (!one || !other || other.clause.join !== 'or' || one.clause.sentence !== other.clause.sentence)
      continue;
    const lead = sayings.slice(0, s + 2).filter((each) => each.clause.sentence === one.clause.sentence);
    const asks =
      other.clause.asked ||
      one.clause.asked ||
      lead.some((each) => ASKS.has(each.items[0]?.text ?? '')) ||
      lead.slice(0, -2).some((each) => each.items.some((item) => ASKS.has(item.text)));
    // "breba or main?" asks which crop it is.
    if ([one, other].some((each) => each.breba || each.items.some((item) => item.text === 'main'))) continue;
    if (!asks || one.items.some((item) => item.classes.has('NEG'))) continue;
    const or = makeItem('word', 'or', 'or', NO_CLASSES, 0, 0);
    if (one.items.length === 0 || findMatches([...one.items, or, ...other.items], RIDDLES).length === 0)
      continue;
    if ([one, other].some((each) => each.hits.some((hit) => !RIDDLE_KINDS.has(hit.kind)))) continue;
    const holder = other.mentions.length > 0 ? other : one;
    for (const each of lead) {
      each.hits = [];
      if (each !== holder && each.mentions.length === 0) each.dropped = true;
    }
    holder.hits = [hitBehind('ask-kind', holder.items)];
    holder.mood = { ...holder.mood, asks: false, unrealFrom: null, denials: [] };
  }
}

const CARES = wordSet(`
  nets net waters water feeds feed covers cover mulches mulch sprays spray repots repot fleeces wraps wrap moves
`);
const NO_CLASSES: ReadonlySet<string> = new Set();

const FRUIT_OR_NONE: ReadonlySet<string> = new Set(['fruitlets', 'no-fruitlets']);

/** "her alma is loaded, mine has none": one's own of the same name. */
export function ownMine(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    if (saying.mentions.length > 0 || !saying.items.some((item) => item.text === 'mine')) return;
    const before = sayings.slice(0, s).findLast((each) => each.mentions.length > 0);
    const [mention] = before?.mentions ?? [];
    if (!before?.mood.others || mention?.ids.length !== 1) return;
    saying.mentions = [mention];
    // "my mate's alma has 40 figs, mine has 3"
    const number = saying.items.find((item) => item.quantity && !item.quantity.unit)?.quantity;
    if (saying.hits.length === 0 && number && before.hits.some((hit) => FRUIT_OR_NONE.has(hit.kind))) {
      saying.hits = [hitBehind('fruitlets', saying.items)];
      saying.count = number;
    }
    // "who else nets their alma this early, mine got done today"
    if (
      saying.hits.length === 0 &&
      saying.items.some((item) => item.text === 'done' || item.text === 'did')
    ) {
      const care = before.items.some((item) => CARES.has(item.text));
      // Who else does is only asked.
      before.dropped = true;
      before.mentions = [];
      before.mood = { ...before.mood, others: false };
      if (care) saying.hits = [hitBehind('care', saying.items)];
    }
    saying.mood = { ...saying.mood, others: false };
  });
}
