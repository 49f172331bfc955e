import { CARE } from './care.ts';
import { FRUIT } from './fruit.ts';
import { GROWTH } from './growth.ts';
import { HARVEST } from './harvest.ts';
import { IDIOMS } from './idioms.ts';
import { NONE } from './none.ts';
import type { PredicateTable } from './notation.ts';
import { SHOOTS } from './shoots.ts';
import { TROUBLE } from './trouble.ts';

export { type PredicateKind, type PredicateTable, patternWords } from './notation.ts';

/** All phrases; of two that take as many words the earlier wins, so idioms come first. */
export const PREDICATES: PredicateTable = [
  ...IDIOMS,
  ...CARE,
  ...TROUBLE,
  ...SHOOTS,
  ...HARVEST,
  ...NONE,
  ...FRUIT,
  ...GROWTH,
];
