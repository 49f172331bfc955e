import { outlookDecisionDate } from '../engine/outlook-decision.ts';
import type { PreparedWarmth } from '../engine/past-seasons.ts';
import { groupBy } from '../group-by.ts';
import type { DateOrder } from '../notes/contract.ts';
import type { Standing } from '../records/standing.ts';
import { dayWords, listSome, listWords } from './words.ts';

/**
 * Overwintered embryos at the shoot tips, the larger unripe ones taken off in autumn: Royal Horticultural
 * Society, fig pruning. At least five leaves: National Botanic Garden of Wales.
 */
export const OVERWINTER_WORDS =
  'Where summers stay too cool to ripen a main crop, as in the United Kingdom, the figs that ripen outdoors are those that were pea-sized at the shoot tips in autumn and overwintered: take off the larger unripe ones before winter and keep the pea-sized. Growers there pinch new shoots in early summer, once they have five leaves, to make such embryos for next year.';

const MOST_NAMED = 8;

/** Where no date can be counted back: the last day of tipping by the outlook, tree by tree; empty where none is asked. */
export function outlookDates(
  record: PreparedWarmth,
  standings: readonly Standing[],
  order: DateOrder,
): string[] {
  const cool = standings.filter(({ result }) => result.timing === 'no-heat');
  const byDate = groupBy(cool, ({ span, season }) => outlookDecisionDate(record, span, season));
  const dated = [...byDate].flatMap(([date, group]) =>
    date === null ? [] : [`${dayWords(date, order)} for ${namesOf(group)}`],
  );
  const none = byDate.get(null);
  return [
    ...(dated.length === 0
      ? []
      : [
          `By the outlook, the last day of tipping from which four of five past seasons would have ripened figs before frost is ${listWords(dated)}.`,
        ]),
    ...(none === undefined
      ? []
      : [
          `No day of tipping would have ripened ${namesOf(none)} before frost in four of five past seasons, or too few seasons are on record to tell.`,
        ]),
  ];
}

function namesOf(group: readonly Standing[]): string {
  return listSome(
    group.map(({ tree }) => tree.name),
    MOST_NAMED,
  );
}
