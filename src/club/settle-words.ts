import { daysBetween } from '../engine/day.ts';
import { recordedSpan } from '../engine/learning.ts';
import type { ObservationKind } from '../engine/observation.ts';
import type { DateOrder } from '../notes/contract.ts';
import type { Standing } from '../records/standing.ts';
import {
  harvestOfStanding,
  harvestWords,
  lastUsefulFruitlet,
  lateFruitWords,
  RIPE_SIGNS,
} from './harvest-words.ts';
import { countWords, dayWords, lengthWords, rangeWords } from './words.ts';

/** What a note changed of a tree's prospects, in a few sentences at most. */
export function settleWords(before: Standing, after: Standing, order: DateOrder): string[] {
  const { tree, result, input } = after;
  const was = before.result;
  if (result.fruit.present && !was.fruit.present) {
    return [fruitWords(after, order), ...present(lateFruitWords(after, order)), ...pickWords(before, after)];
  }
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
      `Look at ${tree.name} on ${rangeWords(result.lookFrom ?? input.today, result.lookTo ?? input.today, order)}; I will ask then what came of it.`,
    ];
  }
  if (
    result.fruit.ripeningOn !== null &&
    was.fruit.ripeningOn === null &&
    result.ripeFrom !== null &&
    result.ripeTo !== null
  ) {
    return [
      `That narrows the first ripe figs to ${rangeWords(result.ripeFrom, result.ripeTo, order)}. ${RIPE_SIGNS}`,
    ];
  }
  const picks = [...pickWords(before, after), ...woodWords(before, after)];
  if (picks.length > 0) return picks;
  const last = lastUsefulFruitlet(after);
  if (last !== null && input.today > last && noted(before, after, 'fruitlets')) {
    return [
      `Those that show this late have no time left to ripen on ${tree.name}: take them off, and the older ones have more.`,
    ];
  }
  if (result.verdict === 'tip' && was.verdict !== 'tip') {
    return [`Its decision date has come: ask me "should I tip ${tree.name}?"`];
  }
  return [];
}

/** The season's picking so far, and what the first pick makes of the tree for the club. */
function pickWords(before: Standing, after: Standing): string[] {
  if (!noted(before, after, 'picked')) return [];
  const { main, breba } = harvestOfStanding(after);
  const units = after.observations.findLast(({ unit }) => unit !== null)?.unit;
  const metric = units === 'g' || units === 'kg' ? 'C' : 'F';
  const so = [harvestWords(main, 'fig', metric), harvestWords(breba, 'breba', metric)].filter(
    (part) => part !== null,
  );
  const total = main.picks + breba.picks > 1 ? [`So far this season: ${so.join(', and ')}.`] : [];
  const { seen, pickedOn } = after.result.fruit;
  if (before.result.fruit.pickedOn !== null || pickedOn === null || seen === null) return total;
  const days = recordedSpan(seen, pickedOn);
  if (days === null) return total;
  return [...total, `${days} days from first fruitlet to first ripe fig.${learnedWords(before, after)}`];
}

/** What a new record makes of the club's knowledge of the cultivar, once there is any. */
function learnedWords({ span: was }: Standing, { span: is, cultivar, tree }: Standing): string {
  if (is.basis !== 'learned' || is.records === was.records) return '';
  const name = cultivar?.name ?? tree.cultivar ?? 'this cultivar';
  return ` That makes ${countWords(is.records ?? 0, 'club record')} of ${name}, and ${is.planning} days to plan it with.`;
}

/** Cuttings of this season so far, and how their lineage is kept. */
function woodWords(before: Standing, after: Standing): string[] {
  const { tree, observations } = after;
  if (noted(before, after, 'rooted')) {
    return [
      `Once potted on, give each its place with /tree add name: and its name, from:${tree.name}, and its lineage is kept.`,
    ];
  }
  const taken = observations.filter(({ kind }) => kind === 'cuttings');
  if (!noted(before, after, 'cuttings') || taken.length < 2) return [];
  const count = taken.reduce((sum, row) => sum + (row.count ?? 0), 0);
  return count === 0 ? [] : [`So far this season: ${countWords(count, 'cutting')} from ${tree.name}.`];
}

function noted(before: Standing, after: Standing, kind: ObservationKind): boolean {
  const known = new Set(before.observations.map(({ id }) => id));
  return after.observations.some((row) => row.kind === kind && !known.has(row.id));
}

function present(words: string | null): string[] {
  return words === null ? [] : [words];
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
