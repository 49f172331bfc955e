import { fold } from './fold.ts';
import type { Gazetteer } from './gazetteer.ts';

/** A question for a town: its name, and what stood after it ("Oregon", "US"). All folded. */
export interface PlaceQuery {
  readonly name: string;
  readonly qualifiers: readonly string[];
}

/** What people call countries and divisions besides their names; ISO 3166-2 for Canada and Australia. */
const ALIASES: Record<string, readonly string[]> = {
  US: ['usa', 'u s', 'u s a', 'america', 'united states of america'],
  GB: ['uk', 'u k', 'great britain', 'britain'],
  NL: ['holland'],
  CZ: ['czech republic'],
  'CA.01': ['ab'],
  'CA.02': ['bc'],
  'CA.03': ['mb'],
  'CA.04': ['nb'],
  'CA.05': ['nl'],
  'CA.07': ['ns'],
  'CA.08': ['on'],
  'CA.09': ['pe', 'pei'],
  'CA.10': ['qc'],
  'CA.11': ['sk'],
  'CA.12': ['yt'],
  'CA.13': ['nt'],
  'CA.14': ['nu'],
  'AU.01': ['act'],
  'AU.02': ['nsw'],
  'AU.03': ['nt'],
  'AU.04': ['qld'],
  'AU.05': ['sa'],
  'AU.06': ['tas'],
  'AU.07': ['vic'],
  'AU.08': ['wa'],
};

const countryNames = new Intl.DisplayNames(['en'], { type: 'region' });
const shortCountryNames = new Intl.DisplayNames(['en'], { type: 'region', style: 'short' });
/** Names looked at in one scan; only a letter or two with a division behind it meets so many. */
const MOST_HITS = 8_000;

/** Ways to read a text: as a name with what follows the commas, then with its last words split off. */
export function queriesOf(text: string): readonly PlaceQuery[] {
  const [first = '', ...rest] = text
    .split(',')
    .map(fold)
    .filter((part, i) => i === 0 || part !== '');
  if (first === '') return [];
  const whole = { name: first, qualifiers: rest };
  const words = first.split(' ');
  const split = [1, 2, 3].flatMap((last) =>
    words.length > last
      ? [{ name: words.slice(0, -last).join(' '), qualifiers: [words.slice(-last).join(' '), ...rest] }]
      : [],
  );
  return [whole, ...split];
}

/** How a town's name must answer the query's: its own name or a further one, whole or only its beginning. */
export interface Match {
  readonly name: 'own' | 'further';
  readonly how: 'exact' | 'prefix';
}

/** At most `limit` towns that match, the most populous first. */
export function scan(gazetteer: Gazetteer, query: PlaceQuery, { name, how }: Match, limit: number): number[] {
  const { keys } = gazetteer;
  const found: number[] = [];
  const start = (name === 'own' ? '\n' : '\t') + query.name;
  // Most of what is typed begins no name of this kind; one look tells.
  const first = keys.indexOf(start);
  if (first < 0) return [];
  // A whole name ends where a further one or the next town begins.
  for (const needle of how === 'prefix' ? [start] : [`${start}\n`, `${start}\t`]) {
    const bytes = Buffer.from(needle);
    let taken = 0;
    let at = keys.indexOf(bytes, first);
    for (let hits = 0; at >= 0 && hits < MOST_HITS && taken < limit; hits++) {
      const place = placeAt(gazetteer, at);
      if (query.qualifiers.every((qualifier) => lies(gazetteer, place, qualifier, how))) {
        if (found.at(-1) !== place) found.push(place);
        taken++;
      }
      at = keys.indexOf(bytes, at + 1);
    }
  }
  return [...new Set(found)].sort((a, b) => a - b).slice(0, limit);
}

export function nameOf({ names, nameAt }: Gazetteer, place: number): string {
  return new TextDecoder().decode(names.subarray(nameAt[place], nameAt[place + 1]));
}

export function regionOf({ region, regions, regionNames }: Gazetteer, place: number): string | null {
  return regionNames.get(regions[region[place] ?? 0] ?? '') ?? null;
}

export function countryCodeOf({ country, countries }: Gazetteer, place: number): string {
  return countries[country[place] ?? 0] ?? '';
}

/** "Portland, Oregon, US" */
export function labelOf(gazetteer: Gazetteer, place: number): string {
  const name = nameOf(gazetteer, place);
  const region = regionOf(gazetteer, place);
  const country = shortCountryNames.of(countryCodeOf(gazetteer, place)) ?? '';
  return [name, region === name ? null : region, country].filter((part) => part !== null).join(', ');
}

export function countryName(code: string): string {
  return countryNames.of(code) ?? code;
}

function placeAt({ keyAt, count }: Gazetteer, position: number): number {
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if ((keyAt[middle] ?? 0) <= position) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Names and codes that a country or a division goes by, folded; few, so worked out once. */
const known = new Map<string, readonly string[]>();

function lies(gazetteer: Gazetteer, place: number, where: string, how: 'exact' | 'prefix'): boolean {
  const code = countryCodeOf(gazetteer, place);
  const region = gazetteer.regions[gazetteer.region[place] ?? 0] ?? '';
  const called = [
    ...namesOf(code, () => [countryName(code), shortCountryNames.of(code) ?? '', code]),
    ...namesOf(region, () => [gazetteer.regionNames.get(region) ?? '', divisionCode(region)]),
  ];
  return called.some((name) => name === where || (how === 'prefix' && name.startsWith(where)));
}

function namesOf(key: string, names: () => readonly string[]): readonly string[] {
  const before = known.get(key);
  if (before) return before;
  const folded = [...names().map(fold), ...(ALIASES[key] ?? [])].filter((name) => name !== '');
  known.set(key, folded);
  return folded;
}

/** GeoNames numbers most divisions; only codes of letters, as the United States', are what people write. */
function divisionCode(region: string): string {
  const code = region.slice(3);
  return /^[A-Z]+$/.test(code) ? code : '';
}
