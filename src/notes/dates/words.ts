import { wordSet } from '../lexicon/word-set.ts';

/**
 * The words of dates, with the spellings people use. To teach a spelling, add it to its row; typing slips of one
 * letter in the long names (`firday`, `agust`) are understood without a row.
 */

const table = <T>(rows: readonly (readonly [T, string])[]): ReadonlyMap<string, T> =>
  new Map(rows.flatMap(([value, words]) => words.split(' ').map((word) => [word, value] as const)));

/** 1–12. */
export const MONTHS = table<number>([
  [1, 'january jan janurary janury'],
  [2, 'february feb febuary feburary'],
  [3, 'march mar marhc mrach'],
  [4, 'april apr apirl arpil aprl'],
  [5, 'may'],
  [6, 'june jun juen jnue junee'],
  [7, 'july jul juyl jly jully'],
  [8, 'august aug agust augst agusut agost'],
  [9, 'september sept sep septmber'],
  [10, 'october oct octobr'],
  [11, 'november nov novemeber'],
  [12, 'december dec decemeber'],
]);

/** 0 (Sunday) to 6. */
export const WEEKDAYS = table<number>([
  [0, 'sunday sun sundy'],
  [1, 'monday mon mondy'],
  [2, 'tuesday tues tue teusday tuseday'],
  [3, 'wednesday wed weds wednsday wensday wendsday wensdy'],
  [4, 'thursday thurs thur thu thrusday thursay'],
  [5, 'friday fri firday fridy'],
  [6, 'saturday sat saterday satday'],
]);

export type Unit = 'day' | 'week' | 'fortnight' | 'month' | 'year';

export const UNITS = table<Unit>([
  ['day', 'day days dys'],
  ['week', 'week weeks wk wks weeek weke'],
  ['fortnight', 'fortnight fortnights'],
  ['month', 'month months mth mths mo mos'],
  ['year', 'year years yr yrs'],
]);

export const NUMBERS = table<number>([
  [1, 'one a an'],
  [2, 'two couple coupla'],
  [3, 'three'],
  [4, 'four'],
  [5, 'five'],
  [6, 'six'],
  [7, 'seven'],
  [8, 'eight'],
  [9, 'nine'],
  [10, 'ten'],
  [11, 'eleven'],
  [12, 'twelve dozen'],
  [13, 'thirteen'],
  [14, 'fourteen'],
  [15, 'fifteen'],
  [16, 'sixteen'],
  [17, 'seventeen'],
  [18, 'eighteen'],
  [19, 'nineteen'],
  [20, 'twenty'],
  [30, 'thirty'],
  [40, 'forty'],
  [50, 'fifty'],
  [60, 'sixty'],
  [70, 'seventy'],
  [80, 'eighty'],
  [90, 'ninety'],
  [100, 'hundred'],
]);

export const ORDINALS = table<number>([
  [1, 'first'],
  [2, 'second'],
  [3, 'third'],
  [4, 'fourth forth'],
  [5, 'fifth'],
  [6, 'sixth'],
  [7, 'seventh'],
  [8, 'eighth'],
  [9, 'ninth'],
  [10, 'tenth'],
  [11, 'eleventh'],
  [12, 'twelfth'],
  [13, 'thirteenth'],
  [14, 'fourteenth'],
  [15, 'fifteenth'],
  [16, 'sixteenth'],
  [17, 'seventeenth'],
  [18, 'eighteenth'],
  [19, 'nineteenth'],
  [20, 'twentieth'],
  [30, 'thirtieth'],
]);

export type Part = 'early' | 'mid' | 'late' | 'start' | 'end';

export const PARTS = table<Part>([
  ['early', 'early erly'],
  ['mid', 'mid middle'],
  ['late', 'late'],
  ['start', 'beginning start begining beggining beginnig'],
  ['end', 'end'],
]);

export type SeasonName = 'spring' | 'summer' | 'autumn' | 'winter';

export const SEASONS = table<SeasonName>([
  ['spring', 'spring'],
  ['summer', 'summer'],
  ['autumn', 'autumn fall'],
  ['winter', 'winter'],
]);

/** Whole days from today. */
export const DAY_WORDS = table<number>([
  [0, 'today tody todya tday tonight tonite tdy'],
  [-1, 'yesterday yesterdays yesterdy ystrday ysterday yestrday yday yest ystdy ystrdy yesturday yestaday'],
  [1, 'tomorrow tomorow tommorow tommorrow tmrw tmr tmrow tomoz tomo tmoro tmorrow'],
]);

export const LAST = new Set(['last', 'past', 'previous', 'lst']);
export const NEXT = new Set(['next', 'following', 'nxt']);
export const THIS = new Set(['this', 'coming', 'current']);
export const TIMES_OF_DAY = wordSet(
  'morning mornings morn am afternoon arvo pm evening eve night nights nite lunchtime noon midday',
);
export const WEEKENDS = new Set(['weekend', 'wkend', 'wknd', 'weeknd', 'weekened', 'wekend']);
export const TO = new Set(['to', '-', '–', '—', 'through', 'thru', 'until', 'till', 'til']);

export const AROUND = wordSet(
  'around about bout circa roughly approx approximately ~ abt near aroud arround',
);
export const BEFORE_RANGE = new Set(['from', 'between', 'btw', 'btwn']);
/** "over the weekend". */
export const OVER = new Set(['over', 'at', 'during', 'on', 'across']);

/** Words without a meaning of their own that a phrase may begin with. */
export const STARTS: ReadonlySet<string> = new Set([
  ...LAST,
  ...NEXT,
  ...THIS,
  ...AROUND,
  ...BEFORE_RANGE,
  ...OVER,
  ...'the teh in same night half now final'.split(' '),
]);

/** Names long enough that one slipped letter still leaves no other word. */
const SLIPPABLE = [
  'january february april august september october november december',
  'sunday monday tuesday wednesday thursday friday saturday yesterday tomorrow',
  'thanksgiving halloween christmas juneteenth weekend fortnight',
]
  .join(' ')
  .split(' ');

/** Real words that are one letter away from a date word. */
const REAL_WORDS = wordSet(
  'sundry sundae frida aril avril augusta aprils augusts octobers weekends fortnights sundays mondays tuesdays wednesdays thursdays fridays saturdays',
);

/** Every string one insertion, deletion, substitution or swap away from a name in `SLIPPABLE`. */
let slips: Map<string, string> | null = null;

function slipsOf(): Map<string, string> {
  const found = new Map<string, string>();
  const letters = 'abcdefghijklmnopqrstuvwxyz';
  for (const word of SLIPPABLE) {
    // The first letter is kept: "nonday" and "sunday" would meet otherwise.
    for (let i = 1; i <= word.length; i++) {
      const head = word.slice(0, i);
      const tail = word.slice(i);
      found.set(head + tail.slice(1), word);
      if (tail.length > 1) found.set(head + tail.charAt(1) + tail.charAt(0) + tail.slice(2), word);
      for (const letter of letters) {
        if (tail) found.set(head + letter + tail.slice(1), word);
        found.set(head + letter + tail, word);
      }
    }
  }
  for (const word of REAL_WORDS) found.delete(word);
  return found;
}

/** `word` as the date word it is one slip away from, or itself. `mendSlip('firday') //=> 'friday'` */
export function mendSlip(word: string): string {
  if (word.length < 5 || word.length > 13) return word;
  slips ??= slipsOf();
  return slips.get(word) ?? word;
}
