import { wordSet } from './word-set.ts';

/** Before "to": what follows was done ("managed to tip it"). */
export const FACTIVE = wordSet(`
  managed remembered bothered dared contrived proceeded deigned bottom base head root toe
`);
