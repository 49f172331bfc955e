import { addDays } from '../engine/day.ts';
import { toFahrenheit } from '../engine/record-summary.ts';
import { midSeason } from '../engine/season.ts';
import { BREBA_KILL_C, type ColdStat, WOOD_KILL_C } from '../engine/winter-cold.ts';
import type { DateOrder } from '../notes/contract.ts';
import type { Member } from '../records/schema.ts';
import type { Standing } from '../records/standing.ts';
import { countWords, listWords, monthDayWords } from './words.ts';

/** How the reader writes dates and degrees, and what the record says of winters. */
export interface WinterReader {
  readonly order: DateOrder;
  readonly units: 'F' | 'C';
  readonly cold: NonNullable<Member['summary']>['cold'] | null;
}

export function winterReaderOf(member: Member, order: DateOrder): WinterReader {
  return { order, units: member.units, cold: member.summary?.cold ?? null };
}

/** Where no frost is known, figs rest from this long after midsummer's parting day until this long before. Ours, days. */
const REST_AFTER_DAYS = 110;
const REST_BEFORE_DAYS = 130;

/** Whether it is the season of rest, by frosts where they are known. */
export function isResting({ input, season }: Standing): boolean {
  const { today, garden, observations } = input;
  const middle = midSeason(season);
  const leafless = !observations.some(({ kind, on }) => kind === 'leafed-out' && on <= today);
  const fall = garden.firstFrost ?? addDays(middle, REST_AFTER_DAYS);
  const spring = garden.lastFrost ?? addDays(middle, -REST_BEFORE_DAYS);
  return today >= fall || (today < spring && leafless);
}

/** A tree's winter in sentences: its cuttings, its shape and what that costs, its cover. */
export function winterWords(standing: Standing, reader: WinterReader): string[] {
  return [cuttingWords(standing), pruningWords(standing), coverWords(standing, reader)].filter(
    (words) => words !== null,
  );
}

/** The same for many trees at once, each thing said once. */
export function winterGroupWords(standings: readonly Standing[], reader: WinterReader): string[] {
  const pick = (test: (standing: Standing) => boolean) => standings.find(test);
  const named = (test: (standing: Standing) => boolean) => {
    const names = standings.filter(test).map(({ tree }) => tree.name);
    const more = names.length - MOST_NAMES;
    return more > 0 ? `${names.slice(0, MOST_NAMES).join(', ')} and ${more} more` : listWords(names);
  };
  const forWood = ({ tree }: Standing) => tree.purpose !== 'fruit';
  const forFruit = ({ tree }: Standing) => tree.purpose !== 'wood';
  const outdoors = ({ tree }: Standing) => tree.kept === 'ground';
  const potted = ({ tree }: Standing) => tree.kept === 'pot';
  const paragraphs: string[] = [];
  if (pick(forWood)) paragraphs.push(`Cuttings (${named(forWood)}): ${CUTTING_WOOD}`);
  if (pick(forFruit)) {
    const brebas = pick((one) => forFruit(one) && bearsBrebas(one)) ? ` ${BREBA_PRICE}` : '';
    paragraphs.push(`Shape them while they are dormant, and ${PRUNING_PRICE}${brebas} ${PET_CAUTION}`);
  }
  if (pick(outdoors)) paragraphs.push(`In the ground (${named(outdoors)}): ${woodWords(reader)}`);
  if (pick(potted)) paragraphs.push(`In pots (${named(potted)}): ${potWords(reader)}`);
  return paragraphs;
}

const MOST_NAMES = 6;

const CUTTING_WOOD = 'pencil-thick dormant wood, 15–30 cm (6–12 in), from late fall to early spring.';

const PRUNING_PRICE =
  'know the price: a main stem headed at about 45 cm (18 in) gives three or four main stems, and little fruit the year after.';

/** Ficin and psoralens in sap and leaves: pages that quote the ASPCA; its own was not seen. */
const PET_CAUTION = 'Clear the trimmings away from pets: sap and leaves make cats and dogs ill.';

const BREBA_PRICE = 'Brebas sit on last year’s wood: every shoot you shorten takes them with it.';

function bearsBrebas({ cultivar }: Standing): boolean {
  return cultivar !== null && cultivar.breba !== null && cultivar.breba !== 'none';
}

/** Which wood to cut. Pencil-thick, 15–30 cm: growers' common practice, no source; a tip's thin wood roots poorly. */
export function cuttingWords({ tree, result }: Standing): string | null {
  if (tree.purpose === 'fruit') return null;
  const tipped =
    result.tippedOn === null ? '' : ' Pass over the thin shoots that grew after the tip; take the leaders.';
  return `Cuttings: ${CUTTING_WOOD}${tipped} Note how many, such as "6 cuttings from ${tree.name}".`;
}

/**
 * Shape and its price. Heading at 45 cm: growers' common practice, no source. Brebas on last year's wood:
 * Auburn/Alabama ACES ANR-1145.
 */
export function pruningWords(standing: Standing): string {
  if (standing.tree.purpose === 'wood') return 'Shape it while it is dormant; for wood that is all gain.';
  return [
    `Shape it while it is dormant, and ${PRUNING_PRICE}`,
    ...(bearsBrebas(standing) ? [BREBA_PRICE] : []),
    PET_CAUTION,
  ].join(' ');
}

/** When the record's winters hurt unprotected wood, and what that means for the cover. */
export function coverWords({ tree, input }: Standing, reader: WinterReader): string | null {
  if (tree.kept === 'cover') return null;
  if (tree.kept === 'pot') return potWords(reader);
  const young = input.tree.firstYear
    ? ` In its first year even ${degrees(-2, reader.units)} to ${degrees(BREBA_KILL_C, reader.units)} hurts it.`
    : '';
  return `${woodWords(reader)}${young}`;
}

/** Frost-free: RHS; 40 °F: UNH Extension 2021. */
function potWords({ units }: WinterReader): string {
  return `A pot freezes through sooner than the ground: keep it frost-free, about ${degrees(4.4, units)} is enough, and barely moist.`;
}

/** Killed to the ground: Ohio State HYG-1439. Warm spell, then freeze: University of Georgia C945. */
function woodWords({ cold, units, order }: WinterReader): string {
  const kill = `At or below ${degrees(WOOD_KILL_C, units)} most figs outdoors are killed to the ground`;
  const wood = cold?.wood;
  if (wood === undefined || wood.winters === 0) {
    return `${kill}. When that comes where you are I could tell from a record of your winters, see /garden weather.`;
  }
  if (wood.firstP10 === null || wood.lastP90 === null) {
    return `${kill}; in the ${countWords(wood.winters, 'winter')} of your record it never got so cold.`;
  }
  const uncover = `take it off after about ${monthDayWords(wood.lastP90, order)}, not in the first warm spell: wood that has woken freezes easiest`;
  return `${kill}; your record has that in ${reachedWords(wood)}. Have the cover on by about ${monthDayWords(wood.firstP10, order)}, and ${uncover}.`;
}

function reachedWords({ reached, winters }: ColdStat): string {
  return reached === winters
    ? `each of its ${countWords(winters, 'winter')}`
    : `${reached} of ${countWords(winters, 'winter')}`;
}

/** `20 °F`, `−7 °C`: whole degrees, since no published figure is finer. */
function degrees(celsius: number, units: 'F' | 'C'): string {
  const value = Math.round(units === 'F' ? toFahrenheit(celsius) : celsius);
  return `${value < 0 ? '−' : ''}${Math.abs(value)} °${units}`;
}
