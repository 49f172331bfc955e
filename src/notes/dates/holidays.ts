import { easter } from 'date-easter';
import type { Hemisphere } from '../../engine/season.ts';
import { dayNumber, type Span, single, spanOf, weekdayNumber } from './span.ts';
import { turnBySeason, turnOfSun } from './sun.ts';
import { nthWeekday, weekdayAfter, weekdayBefore } from './weekdays.ts';

/**
 * Holidays by name. One row each: the names people type (without "day" where it may be left off, apostrophes
 * dropped), and the rule. RULES §8: the United States' unless the name is another nation's own.
 *
 * Rules are written out here and not taken from a holiday library at run time: the one well-kept library covering
 * these (date-holidays) loads the calendars of every country, some 30 MB with its astronomy. It is the reference
 * the tests compare with. Easter comes from date-easter.
 */
type Rule = (year: number, hemisphere: Hemisphere) => number | null;

const on =
  (month: number, dayOfMonth: number): Rule =>
  (year) =>
    dayNumber(year, month, dayOfMonth);
const nth =
  (n: number, weekday: number, month: number): Rule =>
  (year) =>
    nthWeekday(year, month, weekday, n);
const fromEaster =
  (days: number): Rule =>
  (year) =>
    easterOf(year) + days;
const shifted =
  (rule: Rule, days: number): Rule =>
  (year, hemisphere) => {
    const day = rule(year, hemisphere);
    return day === null ? null : day + days;
  };

function easterOf(year: number): number {
  const { month, day } = easter(year);
  return Date.UTC(year, month - 1, day) / 86_400_000;
}

const SUN = 0;
const MON = 1;
const TUE = 2;
const THU = 4;

const ROWS: readonly (readonly [names: string, rule: Rule])[] = [
  // United States: 5 U.S.C. § 6103(a), and observances of the same calendar.
  ['new years day|new year day|new years|new year', on(1, 1)],
  [
    'mlk day|mlk|mlk jr day|martin luther king day|martin luther king jr day|martin luther king',
    nth(3, MON, 1),
  ],
  ['groundhog day|groundhogs day|ground hog day', on(2, 2)],
  ['lincolns birthday|lincoln day', on(2, 12)],
  ['valentines day|valentine day|valentines|st valentines day|vday', on(2, 14)],
  ['presidents day|president day|washingtons birthday', nth(3, MON, 2)],
  [
    'st patricks day|st patrick day|saint patricks day|st patricks|st paddys day|paddys day|st pattys day|st pats day|saint pats day|saint pats|st pats|st paddys|st patrick',
    on(3, 17),
  ],
  ['april fools day|april fools|april fool', on(4, 1)],
  ['pi day', on(3, 14)],
  ['tax day', on(4, 15)],
  ['patriots day', nth(3, MON, 4)],
  ['earth day', on(4, 22)],
  ['arbor day', nth(-1, 5, 4)],
  ['may day', on(5, 1)],
  ['cinco de mayo', on(5, 5)],
  ['mothers day|mother day|mothers', nth(2, SUN, 5)],
  ['memorial day|memorial', nth(-1, MON, 5)],
  ['flag day', on(6, 14)],
  ['juneteenth|juneteeth|june teenth', on(6, 19)],
  ['fathers day|father day', nth(3, SUN, 6)],
  ['independence day|fourth of july|july fourth|july the fourth|4th july', on(7, 4)],
  ['labor day|labour day', nth(1, MON, 9)],
  ['patriot day', on(9, 11)],
  ['columbus day|indigenous peoples day', nth(2, MON, 10)],
  ['halloween|haloween|hallowen|hallowe en|halloweeen|all hallows eve', on(10, 31)],
  ['all saints day|all saints|all hallows', on(11, 1)],
  ['all souls day|day of the dead', on(11, 2)],
  ['election day', shifted(nth(1, MON, 11), 1)],
  ['veterans day|veteran day|vets day|remembrance day|armistice day|veterans', on(11, 11)],
  ['thanksgiving day|thanksgiving|thxgiving|turkey day|thanksgivin', nth(4, THU, 11)],
  ['thanks giving', nth(4, THU, 11)],
  ['black friday', shifted(nth(4, THU, 11), 1)],
  ['cyber monday', shifted(nth(4, THU, 11), 4)],
  ['christmas eve|xmas eve|chrismas eve', on(12, 24)],
  ['christmas day|christmas|xmas day|xmas|chrismas|christmass|x mas', on(12, 25)],
  ['new years eve|new year eve|nye', on(12, 31)],
  ['leap day', on(2, 29)],
  ['groundhog', on(2, 2)],
  // The moveable feasts of the Western church, counted from Easter Sunday.
  ['mardi gras|fat tuesday|shrove tuesday|pancake day|pancake tuesday', fromEaster(-47)],
  ['ash wednesday', fromEaster(-46)],
  ['mothering sunday', fromEaster(-21)],
  ['palm sunday', fromEaster(-7)],
  ['maundy thursday|holy thursday', fromEaster(-3)],
  ['good friday|good fri|easter friday', fromEaster(-2)],
  ['holy saturday|easter saturday|easter sat|easter eve', fromEaster(-1)],
  ['easter sunday|easter day|easter', fromEaster(0)],
  ['easter monday|easter mon|easter bank holiday', fromEaster(1)],
  ['ascension day', fromEaster(39)],
  ['whit sunday|whitsun|pentecost', fromEaster(49)],
  ['whit monday', fromEaster(50)],
  // United Kingdom: Banking and Financial Dealings Act 1971, schedule 1, and old custom.
  ['burns night', on(1, 25)],
  ['st davids day', on(3, 1)],
  ['st georges day|saint georges day', on(4, 23)],
  ['early may bank holiday|may day bank holiday|may bank holiday|first may bank holiday', nth(1, MON, 5)],
  ['spring bank holiday|late may bank holiday|whitsun bank holiday|second may bank holiday', nth(-1, MON, 5)],
  [
    'august bank holiday|summer bank holiday|late august bank holiday|late summer bank holiday|bank holiday in august',
    nth(-1, MON, 8),
  ],
  ['midsummer eve|midsummers eve', on(6, 23)],
  ['midsummer day|midsummers day|midsummers|midsummer', on(6, 24)],
  ['michaelmas', on(9, 29)],
  ['bonfire night|guy fawkes night|guy fawkes day|guy fawkes|fireworks night', on(11, 5)],
  ['st andrews day', on(11, 30)],
  ['boxing day|st stephens day', on(12, 26)],
  // Canada: Holidays Act, R.S.C. 1985, c. H-5. Australia and New Zealand: the states' and the national acts.
  ['victoria day', (year) => weekdayBefore(Date.UTC(year, 4, 25) / 86_400_000, MON)],
  ['canada day|dominion day', on(7, 1)],
  ['canadian thanksgiving|canadian thanksgiving day|thanksgiving in canada', nth(2, MON, 10)],
  ['australia day|aussie day|oz day|aus day', on(1, 26)],
  ['anzac day|anzac', on(4, 25)],
  ['melbourne cup day|melbourne cup|cup day', nth(1, TUE, 11)],
  ['waitangi day', on(2, 6)],
  // Turns of the sun, by the member's own hemisphere.
  ['summer solstice', (year, hemisphere) => turnBySeason('summer', year, hemisphere)],
  ['winter solstice', (year, hemisphere) => turnBySeason('winter', year, hemisphere)],
  ['june solstice', (year) => turnOfSun('june', year)],
  ['december solstice', (year) => turnOfSun('december', year)],
  ['spring equinox|vernal equinox', (year, hemisphere) => turnBySeason('spring', year, hemisphere)],
  [
    'autumn equinox|fall equinox|autumnal equinox',
    (year, hemisphere) => turnBySeason('autumn', year, hemisphere),
  ],
];

/** Names by their first word, each as its list of words, longest first. */
const byFirstWord = new Map<string, { words: string[]; rule: Rule }[]>();
/** The longest word of every name: without one of these there is no holiday in a text. */
export const holidayCores = new Set<string>();
for (const [names, rule] of ROWS) {
  for (const name of names.split('|')) {
    const words = name.split(' ');
    const first = words[0] ?? '';
    const list = byFirstWord.get(first) ?? [];
    list.push({ words, rule });
    list.sort((a, b) => b.words.length - a.words.length);
    byFirstWord.set(first, list);
    holidayCores.add(words.toSorted((a, b) => b.length - a.length)[0] ?? '');
  }
}

export function startsHoliday(word: string): boolean {
  return byFirstWord.has(word);
}

/** Shortest names that are also common words or cut short; in prose the word "day" has to be there. */
const NEEDS_DAY = new Set([
  'thanks giving',
  'mothers',
  'memorial',
  'veterans',
  'valentines',
  'groundhog',
  'anzac',
  'mlk',
  'new year',
  'all hallows',
  'midsummers',
  'st patrick',
  'cup day',
  'april fool',
]);

export interface HolidayName {
  /** How many words the name has. */
  readonly words: number;
  readonly rule: Rule;
  readonly short: boolean;
}

/** The longest holiday name that starts with the words `wordAt(0)`, `wordAt(1)`, … */
export function findHoliday(wordAt: (i: number) => string | undefined): HolidayName | null {
  const first = wordAt(0);
  const names = first === undefined ? undefined : byFirstWord.get(first);
  if (!names) return null;
  for (const { words, rule } of names) {
    if (words.every((word, i) => wordAt(i) === word)) {
      return { words: words.length, rule, short: NEEDS_DAY.has(words.join(' ')) };
    }
  }
  return null;
}

export function holidaySpan(rule: Rule, year: number, hemisphere: Hemisphere): Span | null {
  const day = rule(year, hemisphere);
  return day === null ? null : single(day);
}

/** The weekend a holiday belongs to: Saturday and Sunday, with the holiday itself where it adjoins them. */
export function holidayWeekend(day: number): Span {
  const weekday = weekdayNumber(day);
  if (weekday === MON) return spanOf(day - 2, day);
  if (weekday === 5) return spanOf(day, day + 2, day + 1);
  if (weekday === 4) return spanOf(day, day + 3, day + 2);
  const saturday = weekday === 0 ? day - 1 : weekday === 6 ? day : weekdayAfter(day, 6);
  return spanOf(saturday, saturday + 1);
}
