import { greenFruitWords } from '../club/harvest-words.ts';
import { SAP_CAUTION, verdictWords } from '../club/verdict-words.ts';
import { type WinterReader, winterGroupWords, winterWords } from '../club/winter-words.ts';
import { countWords, dayWords, distanceWords, listWords, rangeWords } from '../club/words.ts';
import type { Day } from '../engine/day.ts';
import type { DateOrder } from '../notes/contract.ts';
import type { NudgeKind } from '../records/schema.ts';
import type { MorningItem } from './compose.ts';

/** Names listed before the rest is only counted. */
const MOST_NAMES = 30;

/** Headline of a message that speaks of one tree. */
export function itemTitle({ nudge, standing }: MorningItem): string {
  const { name } = standing.tree;
  switch (nudge.kind) {
    case 'heads-up':
      return `${name}: two weeks left to see fruitlets`;
    case 'decision':
      return `${name}: time to decide`;
    case 'second-look':
      return `${name}: what came of the tip?`;
    case 'ripe-watch':
      return `${name}: ripe figs from now on`;
    case 'frost':
      return `${name}: frost is two weeks off`;
    case 'dormant':
      return `${name}: winter work`;
  }
}

/** Headline of a message that says the same of several trees. */
export function kindTitle(kind: NudgeKind, trees: number): string {
  const of = countWords(trees, 'tree');
  switch (kind) {
    case 'heads-up':
      return `Two weeks left to see fruitlets on ${of}`;
    case 'decision':
      return `Time to decide on ${of}`;
    case 'second-look':
      return `What came of the tips on ${of}?`;
    case 'ripe-watch':
      return `Ripe figs from now on, on ${of}`;
    case 'frost':
      return `Frost is two weeks off for ${of}`;
    case 'dormant':
      return `Winter work on ${of}`;
  }
}

/** What to say of one tree; `named` where the headline does not name it. */
export function itemParagraphs(
  item: MorningItem,
  today: Day,
  winter: WinterReader,
  named: boolean,
): string[] {
  const words = wordsOf(item, today, winter);
  const [first = '', ...rest] = words;
  return named ? [`${item.standing.tree.name}. ${first}`, ...rest] : [first, ...rest];
}

function wordsOf({ nudge, standing }: MorningItem, today: Day, winter: WinterReader): string[] {
  const { order } = winter;
  const { result, input } = standing;
  const { garden } = input;
  switch (nudge.kind) {
    case 'heads-up':
      return [
        `No fruitlets are on record for it yet, and its decision date is ${dated(result.decisionDate, today, order)}. Go along its new shoots and look at each node. If you see any, tell me, and there is nothing to decide.`,
      ];
    case 'decision':
      // The caution is said once for the whole message.
      return verdictWords(standing, order).paragraphs.filter((paragraph) => paragraph !== SAP_CAUTION);
    case 'second-look':
      return [
        `You tipped it on ${result.tippedOn === null ? 'a day this season' : dayWords(result.tippedOn, order)}. By now a fruitlet may show at the nodes below the cut, or only side branches. What do you see?`,
      ];
    case 'ripe-watch': {
      const window = result.expectedWindow ?? result.window;
      const range = window === null ? 'soon' : `about ${rangeWords(window.from, window.to, order)}`;
      return [
        `Its first figs should ripen ${range}. A ripe one hangs down, gives to the thumb and comes away when lifted; keep birds and wasps off.`,
      ];
    }
    case 'frost':
      return [
        `By past seasons first frost comes ${dated(garden.firstFrost, today, order)}. ${
          result.fruit.present && result.fruit.pickedOn === null
            ? `It still carries fruit. ${greenFruitWords(standing)} `
            : ''
        }${standing.tree.kept === 'pot' ? 'Make room to move the pot under cover.' : 'Have its cover at hand.'}`.trim(),
      ];
    case 'dormant':
      return ['By now it should be at rest.', ...winterWords(standing, winter)];
  }
}

/** The same thing said of many trees at once. */
export function groupParagraphs(
  kind: NudgeKind,
  items: readonly MorningItem[],
  today: Day,
  winter: WinterReader,
): string[] {
  const { order } = winter;
  const said = groupSentence(kind, items, today, order);
  if (kind === 'frost') {
    const green = items.find(
      ({ standing }) => standing.result.fruit.present && standing.result.fruit.pickedOn === null,
    );
    const words = green === undefined ? null : greenFruitWords(green.standing);
    return words === null ? [said] : [said, words];
  }
  if (kind !== 'dormant') return [said];
  return [
    said,
    ...winterGroupWords(
      items.map(({ standing }) => standing),
      winter,
    ),
  ];
}

function groupSentence(kind: NudgeKind, items: readonly MorningItem[], today: Day, order: DateOrder): string {
  const names = items.slice(0, MOST_NAMES).map((item) => nameWithDay(kind, item, order));
  const more = items.length - names.length;
  const trees = listWords(more > 0 ? [...names, `${more} more`] : names);
  switch (kind) {
    case 'heads-up':
      return `No fruitlets are on record yet, and the decision date is two weeks off: ${trees}. Look along their new shoots, and tell me of those that show some.`;
    case 'decision':
      return `The decision date has come and no fruitlets are on record: ${trees}. Look once more. Where you see none, pinch out the growing points of side shoots, and leave the leaders of trees you want wood from. /tip tells the dates of each.`;
    case 'second-look':
      return `You tipped these a week ago and more: ${trees}. What do you see at the nodes below the cuts?`;
    case 'ripe-watch':
      return `The first figs should ripen from now on: ${trees}. A ripe one hangs down, gives to the thumb and comes away when lifted.`;
    case 'frost': {
      const frost = items[0]?.standing.input.garden.firstFrost ?? null;
      return `By past seasons first frost comes ${dated(frost, today, order)}: ${trees}. Pick what is soft, and make room for the pots.`;
    }
    case 'dormant':
      return `By now these should be at rest: ${trees}.`;
  }
}

function nameWithDay(kind: NudgeKind, { standing }: MorningItem, order: DateOrder): string {
  const { tree, result } = standing;
  const on = kind === 'decision' || kind === 'heads-up' ? result.decisionDate : null;
  return on === null ? tree.name : `${tree.name} (${dayWords(on, order)})`;
}

function dated(on: Day | null, today: Day, order: DateOrder): string {
  return on === null ? 'soon' : `about ${dayWords(on, order)}, ${distanceWords(today, on)}`;
}
