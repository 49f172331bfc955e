import { addDays, type Day, daysBetween } from '../engine/day.ts';
import { addHarvests, type Harvest, harvestOf } from '../engine/harvest.ts';
import type { Crop } from '../engine/observation.ts';
import { isForFruit } from '../engine/tree-season.ts';
import type { DateOrder } from '../notes/contract.ts';
import type { Standing } from '../records/standing.ts';
import { countWords, dayWords, rangeWords } from './words.ts';

/** UC IPM, figs: harvesting. */
export const RIPE_SIGNS =
  'Ripe ones are soft, droop on their stems and come away when lifted; milky sap at the stem means not yet, and one picked too green never ripens.';

/** Splitting: CRFG Fig Fruit Facts and UF/IFAS HS27. */
const SPLIT_ADVICE =
  'Figs split when rain comes while they ripen: before rain pick what is soft, and use split ones the same day.';

/** Souring: UC IPM fig pest management. */
const SOUR_ADVICE =
  'Souring gets in at the eye, with dried-fruit beetles and vinegar flies: pick as soon as figs are ripe, and clear away the spoiled ones, fallen ones too.';

/** Rates and dates are the label's business: Ostiole names none. */
const SPRAY_CAUTION =
  'Sprays and ripening aids only as their label says: use none whose label does not list figs, and where the law asks for a licence leave it to those who have one.';

/** What can be done about spoiled figs, told by the words of a note on trouble. Nothing for other trouble. */
export function troubleAdvice(text: string): string | null {
  const advice = [
    ...(/\b(split|crack|burst)/i.test(text) ? [SPLIT_ADVICE] : []),
    ...(/\b(sour|ferment|vinegar|beetle)/i.test(text) ? [SOUR_ADVICE] : []),
  ];
  return advice.length === 0 ? null : advice.join(' ');
}

/** What to keep in mind before reaching for a bottle, where a note speaks of one. */
export function sprayCaution(text: string): string | null {
  return /\b(spray|ethephon|ethrel|pesticide|fungicide|insecticide|copper|ripening aid|oil(ed|ing)?)\b/i.test(
    text,
  )
    ? SPRAY_CAUTION
    : null;
}

/** The picks of this season, brebas and main crop apart. */
export function harvestOfStanding({
  observations,
  input,
  result,
}: Standing): Readonly<Record<Crop, Harvest>> {
  return harvestOf({
    observations: observations.map((row) => ({
      kind: row.kind,
      on: row.day,
      crop: row.crop,
      count: row.count,
      unit: row.unit,
      order: row.id,
    })),
    mainCropFrom: result.mainCropFrom,
    spanFrom: input.tree.span.from,
    ...(input.tree.bearsBrebas === undefined ? {} : { bearsBrebas: input.tree.bearsBrebas }),
  });
}

export function totalHarvest(standing: Standing): Harvest {
  const { main, breba } = harvestOfStanding(standing);
  return addHarvests(main, breba);
}

/** `14 figs and 1.2 kg`; null when nothing was picked. Weights in the reader's system. */
export function harvestWords(harvest: Harvest, what: 'fig' | 'breba', units: 'F' | 'C'): string | null {
  if (harvest.picks === 0) return null;
  const parts: string[] = [];
  if (harvest.figs > 0) parts.push(countWords(harvest.figs, what));
  if (harvest.grams > 0) parts.push(weightWords(harvest.grams, units));
  return parts.length === 0 ? `${what}s` : parts.join(' and ');
}

export function weightWords(grams: number, units: 'F' | 'C'): string {
  const [amount, unit] =
    units === 'F'
      ? grams < 453.6
        ? [grams / (453.59237 / 16), 'oz']
        : [grams / 453.59237, 'lb']
      : grams < 1000
        ? [grams, 'g']
        : [grams / 1000, 'kg'];
  const rounded = unit === 'g' ? Math.round(amount) : Math.round(amount * 10) / 10;
  return `${rounded} ${unit}`;
}

/**
 * How far ripening has come, in one sentence: the window, or what signs made of it. Null without main-crop
 * fruit, and once it is picked.
 */
export function ripeningWords({ result, input }: Standing, order: DateOrder): string | null {
  const { fruit, ripeFrom, ripeTo, expectedWindow } = result;
  if (!fruit.present || fruit.pickedOn !== null || ripeFrom === null || ripeTo === null) return null;
  if (fruit.ripeningOn !== null) {
    const was =
      expectedWindow === null || sameWindow(expectedWindow, { from: ripeFrom, to: ripeTo })
        ? ''
        : `, where the days alone said ${rangeWords(expectedWindow.from, expectedWindow.to, order)}`;
    return `Ripening was seen on ${dayWords(fruit.ripeningOn, order)}, which narrows the first ripe figs to ${rangeWords(ripeFrom, ripeTo, order)}${was}.`;
  }
  const opens = daysBetween(input.today, ripeFrom);
  return opens > 0
    ? `The first figs should ripen about ${rangeWords(ripeFrom, ripeTo, order)}; swelling, colour or a drooping neck will narrow that.`
    : `Ripe figs are due now, until about ${dayWords(ripeTo, order)}.`;
}

/**
 * The last day on which a fruitlet that shows can still be ripe before the warmth is over, at the quickest;
 * null where the heat has no end.
 */
export function lastUsefulFruitlet({ result, span }: Standing): Day | null {
  return result.lastWarmth === null ? null : addDays(result.lastWarmth, -span.from);
}

/**
 * Which fruitlets to keep when there is not time for all, said while something still can be done. Null when the
 * fruit has time, or when nothing is known of the season's end.
 *
 * Order of ripening: Condit 1955, Hilgardia 23(11), on the order of set.
 */
export function lateFruitWords(standing: Standing, order: DateOrder): string | null {
  const { result, input } = standing;
  const { fruit, timing } = result;
  if (!fruit.present || !isForFruit(input.tree) || fruit.pickedOn !== null) return null;
  const last = lastUsefulFruitlet(standing);
  const late = timing === 'edge' || timing === 'after-heat' || timing === 'after-frost';
  if (!late || last === null) return null;
  const newest =
    input.today > last
      ? 'any that show from now on have no time left'
      : `any that show after about ${dayWords(last, order)} have no time left`;
  return `Keep the lowest on each shoot, which set first and ripen first; ${newest}.`;
}

/**
 * What cover gains for such fruit, as far as anybody has measured: Çalışkan et al. 2024, Ege Ziraat Derg. 61
 * (10–13 days), UNH Extension 2021 (two weeks of picking past the frost outdoors).
 */
export function coverGainWords(standing: Standing): string | null {
  const { tree, result } = standing;
  const late = result.timing === 'after-heat' || result.timing === 'after-frost' || result.timing === 'edge';
  if (!late || tree.coverDays > 0 || result.fruit.pickedOn !== null) return null;
  return 'A tunnel ripened figs 10 to 13 days sooner in one trial, and gave about two weeks of picking past the frost in another. What a warm wall gains nobody has measured.';
}

/** Fruit still green when frost is two weeks off. */
export function greenFruitWords({ result }: Standing): string | null {
  if (!result.fruit.present) return null;
  return 'Figs that have begun to soften or colour finish indoors or under cover; hard green ones do not, so let them go. Growth stops with the first freezing nights.';
}

function sameWindow(a: { from: Day; to: Day }, b: { from: Day; to: Day }): boolean {
  return a.from === b.from && a.to === b.to;
}
