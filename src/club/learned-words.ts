import type { Share } from '../engine/learning.ts';
import type { BudSign } from '../engine/verdict.ts';
import type { LearnedFigures, Side, SideBySide } from '../records/learning-figures.ts';
import type { Field } from './reply.ts';
import { countWords } from './words.ts';

const SIGN_WORDS: Readonly<Record<BudSign, string>> = {
  double: 'double buds',
  single: 'single buds',
  none: 'buds not noted',
};

const MOST_SPANS = 8;

/** What the club has learned so far, and for `season` how tipped trees did beside untipped ones. */
export function learnedFields({ spans, tips, sides }: LearnedFigures, season: string): Field[] {
  const fields: Field[] = [];
  if (spans.length > 0) {
    const shown = spans.slice(0, MOST_SPANS).map(({ cultivar, learned }) => {
      return `${cultivar} ${learned.from}–${learned.to} days, plan with ${learned.planning} (${countWords(learned.records, 'record')})`;
    });
    const more = spans.length - shown.length;
    fields.push({
      name: 'Learned: fruitlet to ripe',
      value: [...shown, ...(more > 0 ? [`and ${countWords(more, 'more cultivar')}`] : [])].join('; '),
    });
  }
  const signs = (['double', 'single', 'none'] as const).flatMap((sign) => {
    const share = tips[sign];
    return share === undefined ? [] : [`${SIGN_WORDS[sign]} ${shareWords(share)}`];
  });
  if (signs.length > 0)
    fields.push({ name: 'Learned: tips that brought fruitlets', value: signs.join('; ') });
  const here = sides.filter((side) => side.season === season);
  if (here.length > 0) {
    fields.push({
      name: 'Tipped beside untipped',
      value: `${here.map(sideWords).join('; ')}. This is no trial: growers tip the trees that lag, so the two differed before the tip.`,
    });
  }
  return fields;
}

/** `7 of 9 (80 % interval 59–90 in 100)`. */
export function shareWords({ count, of, low, high }: Share): string {
  return `${count} of ${of} (80 % interval ${Math.round(low * 100)}–${Math.round(high * 100)} in 100)`;
}

function sideWords({ cultivar, tipped, untipped }: SideBySide): string {
  const side = (name: string, { trees, withFruitlets, picked }: Side) =>
    `${name} ${countWords(trees, 'tree')}, fruitlets on ${withFruitlets.count}, picked from ${picked.count}`;
  return `${cultivar}: ${side('tipped', tipped)}; ${side('untipped', untipped)}`;
}

/** The machine's view. */
export function learnedData({ spans, tips, sides }: LearnedFigures): Record<string, unknown> {
  return {
    spans: spans.map(({ cultivar, learned }) => ({ cultivar, ...learned })),
    tips,
    sides,
  };
}
