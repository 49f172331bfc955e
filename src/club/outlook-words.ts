import type { SupposedOutlook } from '../records/outlook.ts';
import { countWords } from './words.ts';

/** "With a tip today, 14 of the last 30 seasons would have ripened it in the heat, 26 before frost." */
export function outlookSentence({ outlook, supposes, unbroken }: SupposedOutlook): string {
  const when = supposes === 'tip-today' ? 'With a tip today' : 'From the fruitlets it has';
  const seasons = countWords(outlook.seasons, 'season');
  const of = unbroken ? `of the last ${seasons}` : `of ${seasons} on record`;
  return `${when}, ${outlook.inHeat} ${of} would have ripened it in the heat, ${outlook.beforeFrost} before frost (an estimate by degree-days).${leftOutWords(outlook.leftOut)}`;
}

/** "outlook 14 of 30 in the heat, 26 before frost", for a list. */
export function outlookBrief({ outlook }: SupposedOutlook): string {
  return `outlook ${outlook.inHeat} of ${countWords(outlook.seasons, 'season')} in the heat, ${outlook.beforeFrost} before frost`;
}

function leftOutWords(leftOut: readonly string[]): string {
  return leftOut.length === 0 ? '' : ` ${countWords(leftOut.length, 'season')} with gaps left out.`;
}

export function outlookData({ outlook, supposes }: SupposedOutlook): Record<string, unknown> {
  const { seasons, inHeat, beforeFrost } = outlook;
  return { seasons, inHeat, beforeFrost, if: supposes };
}
