import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import type { Saying } from './sayings.ts';

const PARTS = wordSet(`
  some few couple handful most half several lots many another one bunch more loads third quarter
  majority odd hardly barely scarcely
`);

const COMPLETE = wordSet('complete completed total finished done over');
const STAYING = wordSet(`
  rest others remaining left still stayed stay staying stuck hung hanging clung clinging held holding remain remains
  survived surviving
`);

const SAVING = new Set(['except', 'bar', 'barring', 'but', 'save', 'besides', 'excepting', 'minus']);

/** "one", "3", "a couple", "the last two": some that are left. */
function isFew(item: Item | undefined): boolean {
  return (
    item !== undefined &&
    (item.quantity !== undefined ||
      ['one', 'for', 'a', 'the', 'two', 'these', 'those', 'that'].includes(item.text))
  );
}

/** Only part of the fruit came down; all has to be said. */
export function isPartial(saying: Saying, all: readonly Saying[], s: number): boolean {
  const { items } = saying;
  const quantity = items.find((item) => item.quantity);
  // "fig drop is complete"
  if (items.some((item) => item.text === 'drop') && items.some((item) => COMPLETE.has(item.text)))
    return saying.mood.denials.length > 0;
  const later = all.slice(s + 1).filter((each) => each.clause.sentence <= saying.clause.sentence + 1);
  if (
    later.some(
      (each) =>
        // "…, ronde still loaded" is another tree.
        (each.mentions.length === 0 || each.mentions.some(({ ids }) => ids.some((id) => isOf(saying, id)))) &&
        // "…, main crop's hanging on" is the other crop.
        !(each.main && saying.breba) &&
        each.items.some((item) => STAYING.has(item.text)) &&
        !each.items.some((item) => item.classes.has('NONE')) &&
        // "not one left"
        !each.items.some(
          (item, i) =>
            item.text === 'not' && ['one', 'a', 'any', 'single'].includes(each.items[i + 1]?.text ?? ''),
        ),
    )
  )
    return true;
  // "dropped everything but 2": what stayed has become a clause of its own.
  if (later[0]?.clause.join === 'but' && later[0].items.length <= 2 && isFew(later[0].items[0])) return true;
  if (
    items.length <= 2 &&
    !items.some((item) => item.classes.has('FRUIT')) &&
    !all.some(
      (each) =>
        each.clause.sentence === saying.clause.sentence &&
        each.items.some((item) => item.classes.has('FRUIT')),
    )
  )
    return true;
  // "lost its bottom figs only"
  if (
    items.at(-1)?.text === 'only' ||
    items.some((item, i) => isLevel(item) && items[i + 1]?.classes.has('FRUIT'))
  )
    return true;
  // "a fig fell off": one of them.
  if (
    items.some(
      (item, i) => ['a', 'an', 'another', 'the'].includes(item.text) && isOneFig(items, i, item.text),
    )
  )
    return true;
  if (quantity?.quantity?.ofMore) return true;
  // "1/2 the figs fell", "3/4 came down"
  if (items.some((item) => item.text === 'measure' && /^(?:[½¼¾⅓⅔]|\d\s*\/\s*\d)/.test(item.typed)))
    return true;
  // "all dropped except one"
  if (items.some((item, i) => SAVING.has(item.text) && isFew(items[i + 1]) && !isFew(items[i - 1])))
    return true;
  if (quantity && items[items.indexOf(quantity) + 1]?.text === 'of') return true;
  if (
    saying.total ||
    later.some((each) => each.total && each.hits.length === 0 && each.mentions.length === 0)
  ) {
    return items.some((item) => item.text === 'almost' || item.text === 'nearly' || item.text === 'half');
  }
  if (
    items.some(
      (item, i) =>
        PARTS.has(item.text) &&
        !(item.text === 'one' && ['only', 'lone', 'single', 'the'].includes(items[i - 1]?.text ?? '')),
    )
  )
    return true;
  const definite = items.some(
    (item) =>
      [
        'its',
        'the',
        'her',
        'his',
        'their',
        'they',
        'only',
        'lone',
        'single',
        'entire',
        'last',
        'remaining',
      ].includes(item.text) && true,
  );
  const own = items.some(
    (item, i) =>
      (['its', 'her', 'his', 'their', 'only', 'lone', 'single', 'last'].includes(item.text) ||
        item.text === "'s") &&
      i < items.length - 1,
  );
  if (quantity) return !own;
  if (items.some((item) => item.classes.has('DROPPING') || item.classes.has('DROP'))) return true;
  return !(
    definite ||
    saying.breba ||
    (items.some(
      (item) =>
        item.text === 'fruit' ||
        item.text === 'crop' ||
        item.text === 'figlets' ||
        item.text === 'figs' ||
        item.text === 'fruitlets',
    ) &&
      items.some((item) =>
        ['fell', 'fallen', 'gone', 'ground', 'floor', 'aborted', 'dropped', 'shed'].includes(item.text),
      ))
  );
}

/** Which figs of a tree: a part of them. */
function isLevel({ text }: Item): boolean {
  return ['bottom', 'lower', 'lowest', 'top', 'upper', 'topmost', 'smallest', 'biggest'].includes(text);
}

function isOf(saying: Saying, id: number): boolean {
  return saying.mentions.length === 0 || saying.mentions.some(({ ids }) => ids.includes(id));
}

/** "a fig", "a little fig"; "the odd fig". */
function isOneFig(items: readonly Item[], at: number, article: string): boolean {
  const rest = items.slice(at + 1, at + 4);
  const noun = rest.findIndex((item) => ['fig', 'figlet', 'fruitlet', 'breba', 'fruit'].includes(item.text));
  if (
    noun < 0 ||
    rest.slice(0, noun).some((item) => ['only', 'lone', 'single', 'sole', 'last'].includes(item.text))
  )
    return false;
  return article !== 'the'
    ? rest[noun]?.text !== 'fruit'
    : rest.slice(0, noun).some((item) => ['odd', 'occasional'].includes(item.text));
}
