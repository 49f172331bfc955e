import { type Filed, fileRules } from './filed-rules.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';

/** Sequences of words that hold a word of denial or of doubt and yet deny nothing. One line each. */
const HARMLESS: readonly string[] = [
  'no doubt',
  'minus measure',
  'nope hang on',
  'nope hold on',
  'nope wait',
  'nah wait',
  'nah hang on',
  'had no chance',
  'stood no chance',
  'bar none',
  'left none',
  'spared none',
  'no shortage',
  'not short',
  'hardly any',
  'barely any',
  'not many',
  'not a lot',
  'all told',
  'maybe more',
  'never seen so',
  'never had so',
  'never seen this',
  'never seen that',
  'never known so',
  'not seen so',
  'never counted so',
  'did not bother counting',
  'did not count',
  'not bothered counting',
  'have not counted',
  'not counted',
  'not counting',
  'yeah nah',
  'nah yeah',
  'i would say',
  'i would guess',
  'no idea',
  'no worries',
  'no problem',
  'no joke',
  'no kidding',
  'no biggie',
  'no rush',
  'no surprise',
  'no less than',
  'no fewer than',
  'no lie',
  'no bother',
  'no thanks to',
  'no effort',
  'in no time',
  'took no time',
  'no time at all',
  'no messing',
  'no mucking',
  'no name',
  'no matter',
  'no less',
  'not bad',
  'not only',
  'not just',
  'not too shabby',
  'not too bad',
  'not half bad',
  'not long after',
  'not long ago',
  'not before time',
  'not a moment too soon',
  'not to brag',
  'not gonna lie',
  'not going to lie',
  'not kidding',
  'not complaining',
  'why not',
  'if not more',
  'can not move for',
  'can not walk for',
  'can not believe',
  'can not complain',
  'can not resist',
  'could not resist',
  'could not help',
  'could not wait',
  'can not help',
  'could not believe',
  'could not be happier',
  'do not ask',
  'do not judge',
  'do not mind',
  'did not mind',
  'do not know why',
  'do not know how',
  'never better',
  'never fails',
  'nothing fancy',
  'nothing major',
  'nothing serious',
  'without a doubt',
  'without fail',
  'without further ado',
  'without thinking',
  'without fuss',
  'barely fit',
  'hardly believe',
  'should like to report',
  'would like to report',
  'would like to log',
  'as soon as',
  'who said',
  'who says',
  'thought id',
  'thought i would',
  'thought it would',
  'despite no',
  'despite zero',
  'despite never',
  'despite not',
  'despite nothing',
  'as planned',
  'as promised',
  'as scheduled',
  'ready or not',
  'if you can believe it',
  'if i say so myself',
  'if anyone asks',
  'believe it or not',
  'will power',
  'good will',
  'needs must',
  'might as well have',
  'may as well log',
  'like always',
  'as always',
  'as usual',
  'same as always',
  'might as well log',
  'may as well note',
  'as expected',
  'like i thought',
  'like i said i would',
  'like i said',
  'as i said i would',
  'as i said',
  'better than expected',
  'more than i expected',
  'sooner than expected',
  'earlier than expected',
  'never thought',
  'finally trying',
  'hope this helps',
  'hope that is ok',
  'hope that was right',
  'hope i did it right',
  'wanted to log',
  'want to log',
  'would you believe',
  'who would have thought',
  'due diligence',
  'ready to pick',
  'ready to eat',
  'ready for picking',
  'trying to ripen',
  'refuses to die',
];

const LACKED = [
  'FRUIT',
  'FRUITLET',
  'BREBA',
  'TIPPING',
  'TIP',
  'PICKING',
  'PICK',
  'DROPPING',
  'DROP',
  'APEX',
  'LEAF',
  'BUD',
  'ROOTED',
  'ROOT',
  'TROUBLE',
  'PEST',
  'FROST',
];
const RELATIVE = new Set(['that', 'which', 'who']);
const NONE: ReadonlySet<number> = new Set();

/** Where nothing is denied: how many items from this one on are harmless. */
interface Harmless extends Filed {
  readonly length: number;
  readonly when: (items: readonly Item[], i: number) => boolean;
}

const rulesOf = fileRules<Harmless>([
  ...HARMLESS.map((phrase) => {
    const words = phrase.split(' ');
    return {
      on: words[0] ?? '',
      length: words.length,
      when: (items: readonly Item[], i: number) => words.every((word, k) => items[i + k]?.text === word),
    };
  }),
  // "barely 3 figs"
  { on: 'barely hardly scarcely', length: 1, when: (items, i) => items[i + 1]?.quantity !== undefined },
  // "without any help it set 20 figs"
  {
    on: 'without',
    length: 1,
    when: (items, i) => !items.slice(i + 1, i + 4).some((item) => isAnyOf(item, LACKED)),
  },
  // "it was the little one, not the tall one that had 5 figs"
  {
    on: 'not',
    length: 1,
    when: (items, i) => {
      const t = items[i + 1]?.classes.has('DET') ? i + 2 : i + 1;
      return items[t]?.type === 'tree' && RELATIVE.has(items[t + 1]?.text ?? '');
    },
  },
]);

/** The items that stand in a harmless phrase. */
export function harmlessItems(items: readonly Item[]): ReadonlySet<number> {
  let found: Set<number> | null = null;
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (!item) continue;
    for (const { length, when } of rulesOf(item.word)) {
      if (!when(items, i)) continue;
      found ??= new Set();
      for (let k = 0; k < length; k++) found.add(i + k);
    }
  }
  return found ?? NONE;
}
