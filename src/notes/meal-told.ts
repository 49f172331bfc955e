import { hitOn } from './hits.ts';
import { isAnyOf } from './item.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isFact } from './mood.ts';
import type { Saying } from './sayings.ts';

const MEALS = wordSet(
  'lunch dinner tea breakfast brekkie brekky supper dessert pudding pud snack brunch elevenses',
);

/** "lunch was bread, ham and the lone ripe kadota": a tree's name on the bill of fare is its fruit. */
export function partOfMeal(sayings: readonly Saying[], s: number): void {
  const saying = sayings[s];
  if (saying?.mentions.length !== 1 || !['and', 'comma'].includes(saying.clause.join)) return;
  if (!saying.hits.every((hit) => hit.kind === 'ripening' || hit.kind === 'fruitlets')) return;
  const heading = sayings.slice(0, s).find((each) => each.clause.sentence === saying.clause.sentence);
  if (!heading || heading.mentions.length > 0 || heading.hits.length > 0 || !isFact(heading.mood)) return;
  const [meal, verb] = heading.items.filter(
    (item) => !isAnyOf(item, ['DET', 'DATE', 'SIZE']) && item.type !== 'date',
  );
  if (!meal || !MEALS.has(meal.text) || !['was', 'is', 'of'].includes(verb?.text ?? '')) return;
  const plain = saying.items.every(
    (item) =>
      item.type === 'tree' ||
      item.quantity !== undefined ||
      isAnyOf(item, ['DET', 'SIZE', 'RIPE', 'FRUIT', 'ADV', 'MY']),
  );
  if (plain && !saying.mood.asks && isFact(saying.mood))
    saying.hits = [
      hitOn(
        'picked',
        saying.items.findIndex((item) => item.type === 'tree'),
      ),
    ];
}
