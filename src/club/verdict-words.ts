import type { BudSign, Timing } from '../engine/verdict.ts';
import type { DateOrder } from '../notes/contract.ts';
import type { Standing } from '../records/standing.ts';
import { dayWords, distanceWords, rangeWords } from './words.ts';

/** A verdict as a grower would say it: the answer in a few words, then why, in paragraphs. */
export interface VerdictWords {
  readonly title: string;
  readonly paragraphs: readonly string[];
}

/** The sap hurts skin in sun; said wherever somebody is about to pinch a shoot. */
export const SAP_CAUTION =
  'The white sap burns skin in the sun and stings eyes: wear gloves and long sleeves, and wash it off at once.';

export function verdictWords(standing: Standing, order: DateOrder): VerdictWords {
  const { result } = standing;
  const { name } = standing.tree;
  switch (result.verdict) {
    case 'set-up':
      return {
        title: 'Your season is not known yet',
        paragraphs: [
          `To say when ${name} must be decided on, I need the last day of reliable heat where you garden. Type it as /garden set heat_end:${order === 'MDY' ? 'October 15' : '15 October'}, or let it be worked out from daily temperatures with /garden weather.`,
        ],
      };
    case 'not-for-fruit':
      return notForFruit(standing);
    case 'leave':
      return leave(standing, order);
    case 'no-deadline':
      return noDeadline(standing);
    case 'await':
      return {
        title: `Wait: ${name} was tipped ${distanceWords(standing.input.today, result.tippedOn ?? standing.input.today)}`,
        paragraphs: [
          `Look for fruitlets on ${rangeOf(result.lookFrom, result.lookTo, order)}, and do not tip it again before then.`,
        ],
      };
    case 'watch':
      return watch(standing, order);
    case 'tip':
      return tip(standing, order);
    case 'let-grow':
      return letGrow(standing, order);
  }
}

function notForFruit({ tree, cultivar }: Standing): VerdictWords {
  if (cultivar?.mainNeedsPollination && !tree.pollinated) {
    const brebas =
      cultivar.breba === null || cultivar.breba === 'none' ? '' : ' Its brebas ripen without that.';
    return {
      title: `Do not tip ${tree.name} for figs`,
      paragraphs: [
        `${cultivar.name} drops its main crop unless it is pollinated, so a tip would bring figs that fall.${brebas} If caprifigs and their wasps reach it, say so with /tree edit tree:${tree.name} pollinated:yes.`,
      ],
    };
  }
  return {
    title: `Do not tip ${tree.name}`,
    paragraphs: [
      'You keep it for wood, and a tipped shoot branches into thin wood that makes poor cuttings.',
    ],
  };
}

function leave({ tree, result }: Standing, order: DateOrder): VerdictWords {
  const { seen, ripeFrom, ripeTo, heatEnd, firstFrost } = result;
  const since =
    seen === null ? 'it has main-crop fruit' : `it has had fruitlets since ${dayWords(seen, order)}`;
  const ripe =
    ripeFrom === null || ripeTo === null
      ? ''
      : ` They should ripen about ${rangeWords(ripeFrom, ripeTo, order)}`;
  const title = `Leave ${tree.name} alone: ${since}`;
  const heat = heatEnd === null ? '' : dayWords(heatEnd, order);
  switch (result.timing) {
    case 'in-heat':
      return {
        title,
        paragraphs: [
          heat === ''
            ? `${ripe.trim()}, and your heat does not end.`
            : `${ripe.trim()}, inside your heat, which lasts until about ${heat}.`,
        ],
      };
    case 'edge':
      return {
        title,
        paragraphs: [
          `${ripe.trim()}: the first inside your heat, the last after it ends about ${heat}. Those will be less sweet.`,
        ],
      };
    case 'after-heat':
      return {
        title,
        paragraphs: [
          `${ripe.trim()}, after your heat ends about ${heat}. Expect them to be less sweet, and the last not to finish; tipping would not make them any faster. Cover, or a pot moved into the warm, helps most.`,
        ],
      };
    case 'after-frost': {
      const frost = firstFrost === null ? 'first frost' : `first frost about ${dayWords(firstFrost, order)}`;
      return {
        title,
        paragraphs: [
          `${ripe.trim()}, after your ${frost}, so without cover most will hang green. Tipping would not make them any faster.`,
        ],
      };
    }
    default:
      return { title, paragraphs: ripe === '' ? [] : [`${ripe.trim()}.`] };
  }
}

function noDeadline({ tree, result }: Standing): VerdictWords {
  if (result.timing === 'endless-heat') {
    return {
      title: `No need to tip ${tree.name}`,
      paragraphs: ['By your record the heat never ends, so its figs have time whenever they come.'],
    };
  }
  return {
    title: `No date can be counted for ${tree.name}`,
    paragraphs: [
      'Your record shows no time of the year when at least half of the days reach your heat mark, so there is no last day of heat to count back from, and I make none up: how past seasons would have ended answers instead. A lower mark can be set with /garden set heat_mark:.',
    ],
  };
}

function watch({ tree, result, input }: Standing, order: DateOrder): VerdictWords {
  const { decisionDate } = result;
  const until =
    decisionDate === null
      ? ''
      : `${dayWords(decisionDate, order)} (${distanceWords(input.today, decisionDate)})`;
  const again =
    result.tippedOn === null
      ? ''
      : ` The tip of ${dayWords(result.tippedOn, order)} has brought no fruitlets yet.`;
  return {
    title: `Not yet: ${tree.name} has until ${until}`,
    paragraphs: [
      `No fruitlets are on record for it this season.${again} Fruit that sets by itself in time is best, so wait and look; on that day decide.`,
      ...budWords(result.budSign),
    ],
  };
}

function tip({ tree, result, input }: Standing, order: DateOrder): VerdictWords {
  const { decisionDate, latestTipDate, heatEnd, timing } = result;
  const due =
    decisionDate === null || decisionDate === input.today
      ? 'Today is its decision date'
      : `Its decision date was ${dayWords(decisionDate, order)} (${distanceWords(input.today, decisionDate)})`;
  const ripe = `A tip today should bring ripe figs from about ${result.ripeFrom === null ? 'then' : dayWords(result.ripeFrom, order)} on`;
  const heat = heatEnd === null ? '' : dayWords(heatEnd, order);
  const late =
    timing === 'late'
      ? `${ripe}. Figs that finish after your heat ends about ${heat} are less sweet, and after ${latestTipDate === null ? 'that' : dayWords(latestTipDate, order)} a tip is too late for any.`
      : `${ripe}; your heat ends about ${heat}.`;
  return {
    title: timing === 'late' ? `Tip ${tree.name} now, if at all: it is late` : `Yes, tip ${tree.name} now`,
    paragraphs: [
      `${due}, and no fruitlets are on record for it this season. ${late}`,
      shootWords(result.shoots ?? 'any'),
      ...budWords(result.budSign),
      SAP_CAUTION,
    ],
  };
}

function letGrow({ tree, result }: Standing, order: DateOrder): VerdictWords {
  const latest =
    result.latestTipDate === null
      ? ''
      : ` The last day a tip could have brought ripe figs was ${dayWords(result.latestTipDate, order)}.`;
  return {
    title: `Let ${tree.name} grow: too late for figs this season`,
    paragraphs: [
      `No fruitlets are on record for it.${latest} Keep its shoots whole: they make next year's wood and cuttings.`,
    ],
  };
}

function shootWords(shoots: 'side' | 'any'): string {
  return shoots === 'side'
    ? 'Pinch out the growing points of side shoots only, and leave the leaders: they are its shape and its cuttings.'
    : 'Start with side shoots and pinch out their growing points; leave a leader or two if you want its shape and cuttings.';
}

function budWords(sign: BudSign): readonly string[] {
  switch (sign) {
    case 'double':
      return ['You noted double buds: one of the two is a fig, so fruit is likely.'];
    case 'single':
      return ['You noted single buds: those are usually a leaf or a shoot, so a tip promises nothing.'];
    case 'none':
      return ['Look at its nodes first: two bumps at a node mean a fig is there, one promises nothing.'];
  }
}

function rangeOf(
  from: Standing['result']['ripeFrom'],
  to: Standing['result']['ripeTo'],
  order: DateOrder,
): string {
  return from === null || to === null ? 'the days ahead' : rangeWords(from, to, order);
}

/** The verdict in a word or two, for lists. */
export function verdictLabel(verdict: Standing['result']['verdict'], timing?: Timing): string {
  switch (verdict) {
    case 'set-up':
      return 'season not known';
    case 'not-for-fruit':
      return 'not for fruit';
    case 'leave':
      return timing === 'after-frost' ? 'leave, likely too late' : 'leave, fruit is set';
    case 'no-deadline':
      return 'no deadline';
    case 'await':
      return 'tipped, look soon';
    case 'watch':
      return 'watch';
    case 'tip':
      return timing === 'late' ? 'tip, late' : 'tip now';
    case 'let-grow':
      return 'let it grow';
  }
}
