import { wordSet } from './word-set.ts';

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
export const IN_GROWTH = wordSet(
  'leaf leaves growth bud full green business action fruit its her his place there',
);
/** Words in -ing that tell of no doing. */
export const NO_DOING = wordSet('everything something anything nothing evening morning during spring');
export const SEASONS = wordSet('year years season seasons summer summers');
