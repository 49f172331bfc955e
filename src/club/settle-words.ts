import { daysBetween } from '../engine/day.ts';
import type { DateOrder } from '../notes/contract.ts';
import type { Standing } from '../records/standing.ts';
import { dayWords, lengthWords, rangeWords } from './words.ts';

/** What a note changed of a tree's prospects, in at most one sentence. */
export function settleWords(before: Standing, after: Standing, order: DateOrder): string[] {
  const { tree, result, input } = after;
  const was = before.result;
  if (result.fruit.present && !was.fruit.present) return [fruitWords(after, order)];
  if (was.fruit.present && !result.fruit.present) {
    const { decisionDate, verdict } = result;
    if (verdict === 'tip')
      return [
        `That opens the decision on ${tree.name} again, and its date has come: ask me "should I tip ${tree.name}?"`,
      ];
    if (verdict === 'watch' && decisionDate !== null) {
      return [
        `That opens the decision on ${tree.name} again: watch it until ${dayWords(decisionDate, order)}.`,
      ];
    }
    return verdict === 'let-grow' ? [`It is too late to start new figs on ${tree.name} this season.`] : [];
  }
  if (result.tippedOn !== null && result.tippedOn !== was.tippedOn && result.verdict === 'await') {
    return [
      `Look at ${tree.name} from ${rangeWords(result.lookFrom ?? input.today, result.lookTo ?? input.today, order)}; I will ask then what came of it.`,
    ];
  }
  if (
    result.fruit.ripeningOn !== null &&
    was.fruit.ripeningOn === null &&
    result.ripeFrom !== null &&
    result.ripeTo !== null
  ) {
    return [
      `The first should be ripe about ${rangeWords(result.ripeFrom, result.ripeTo, order)}: soft, hanging down, and coming away when lifted.`,
    ];
  }
  if (result.verdict === 'tip' && was.verdict !== 'tip') {
    return [`Its decision date has come: ask me "should I tip ${tree.name}?"`];
  }
  return [];
}

/** "That settles 7 July: first figs about 14–24 September, three weeks inside your heat." */
function fruitWords({ result }: Standing, order: DateOrder): string {
  const { decisionDate, ripeFrom, ripeTo, heatEnd } = result;
  const settles =
    decisionDate === null ? 'No need to tip it' : `That settles ${dayWords(decisionDate, order)}`;
  if (ripeFrom === null || ripeTo === null) return `${settles}.`;
  const figs = `${settles}: figs about ${rangeWords(ripeFrom, ripeTo, order)}`;
  if (heatEnd === null) return `${figs}.`;
  const spare = daysBetween(ripeTo, heatEnd);
  switch (result.timing) {
    case 'in-heat':
      return spare < 2
        ? `${figs}, just inside your heat.`
        : `${figs}, ${lengthWords(spare)} inside your heat.`;
    case 'edge':
      return `${figs}, the last of them after your heat ends on ${dayWords(heatEnd, order)}.`;
    case 'after-heat':
      return `${figs}, after your heat ends on ${dayWords(heatEnd, order)}: expect them less sweet.`;
    case 'after-frost':
      return `${figs}, which is after your usual first frost: without cover most will not make it.`;
    default:
      return `${figs}.`;
  }
}
