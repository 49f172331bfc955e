import { isAnyOf } from './item.ts';
import { type Saying, silence } from './sayings.ts';

/** "every one on the ground, the ronde figs": what was told of, named behind it. */
export function nameFigsBehind(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const before = sayings[s - 1];
    if (!before || before.clause.sentence !== saying.clause.sentence || saying.clause.join !== 'comma')
      return;
    if (before.mentions.length > 0 || saying.mentions.length !== 1 || saying.mentionAt > 1) return;
    if (
      !before.hits.some((hit) => FATES.has(hit.kind)) ||
      saying.hits.some((hit) => hit.kind !== 'fruitlets')
    )
      return;
    if (
      !saying.items.every(
        (item) => item.type === 'tree' || isAnyOf(item, ['FRUIT', 'DET']) || item.text === "'s",
      )
    )
      return;
    if (!saying.items.some((item) => item.classes.has('FRUIT'))) return;
    before.mentions = saying.mentions;
    before.breba ||= saying.breba;
    silence(saying);
  });
}

const FATES: ReadonlySet<string> = new Set(['dropped', 'picked', 'ripening', 'trouble']);
