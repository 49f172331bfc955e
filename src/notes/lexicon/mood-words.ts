import { wordSet } from './word-set.ts';

export const HABIT = wordSet(`
  used always usually normally historically traditionally previously formerly
`);

/** Before "for": what a tree has not got. */
export const BEGGING = wordSet(
  'begging crying screaming pleading desperate gasping longing calling shouting asking',
);
/** With "moving it …": a time to come. */
export const LATER = wordSet('autumn fall winter later tomorrow soon');
export const ASKED_WORK = wordSet(`
  water feed pick pinch tip nip net cover move repot prune spray mulch check
`);
/** After "come": a time to come. */
export const COMING = wordSet(`
  january february march april may june july august september october november december jan feb mar
  apr jun jul aug sep sept oct nov dec spring summer autumn fall winter monday tuesday wednesday
  thursday friday saturday sunday next the
`);
export const BY_NOW = wordSet('soon early late');
export const IN_GROWTH = wordSet(
  'leaf leaves growth bud full green business action fruit its her his place there',
);
export const GONE = wordSet('last previous past prior other');
/** Words in -ing that tell of no doing. */
export const NO_DOING = wordSet('everything something anything nothing evening morning during spring');
export const SEASONS = wordSet('year years season seasons summer summers');
export const EVERY = wordSet('every each most some');
export const RECURRING = wordSet('year years season summer winter july august');
