import type { Saying } from './sayings.ts';

/** "harvest: ronde 11, alma 3": the heading says what was done with all that follows. */
export function spreadHeadings(sayings: readonly Saying[]): void {
  sayings.forEach((heading, h) => {
    const next = sayings[h + 1];
    const hit = heading.hits[0];
    if (!hit || heading.mentions.length > 0 || next?.clause.join !== 'colon' || heading.items.length > 5)
      return;
    if (heading.items.some((item) => item.quantity)) return;
    let given = false;
    for (let k = h + 1; k < sayings.length; k++) {
      const saying = sayings[k];
      if (!saying || saying.clause.sentence !== heading.clause.sentence) break;
      if (saying.mentions.length === 0 || saying.hits.some((each) => each.kind !== 'fruitlets')) continue;
      const end = saying.items.length;
      saying.hits = [{ kind: hit.kind, at: [], first: end, last: end, core: end }];
      saying.count = saying.items.find((item) => item.quantity)?.quantity ?? null;
      given = true;
    }
    if (given) {
      heading.hits = [];
      heading.dropped = true;
    }
  });
}

/** "last year's wood gave 3 figs, eaten": what was told of before is what was eaten. */
export function eatWhatWasThere(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const eaten = saying.hits[0];
    if (eaten?.kind !== 'picked' || saying.hits.length !== 1 || saying.mentions.length > 0) return;
    if (
      saying.items.some((item) => item.quantity || item.classes.has('FRUIT')) &&
      !saying.items.some((item) => item.text === 'bites' || item.text === 'bite')
    )
      return;
    for (let k = s - 1; k >= 0; k--) {
      const before = sayings[k];
      if (!before || before.clause.sentence !== saying.clause.sentence) return;
      const shown = before.hits.find((hit) => hit.kind === 'fruitlets' || hit.kind === 'ripening');
      if (!shown) continue;
      before.hits = before.hits.map((hit) => (hit === shown ? { ...hit, kind: 'picked' as const } : hit));
      before.date ??= saying.date;
      saying.hits = [];
      saying.dropped = true;
      return;
    }
  });
}

/** "round thing at the node on the ronde, fig?": the fragment asks what the thing before it is. */
export function markRiddles(sayings: readonly Saying[]): void {
  for (const saying of sayings) {
    if (!saying.clause.asked || saying.mentions.length > 0 || saying.items.length > 3) continue;
    if (saying.items.some((item) => ['how', 'many', 'when', 'why', 'no', 'any'].includes(item.text)))
      continue;
    if (!saying.items.some((item) => ['FRUIT', 'LEAF', 'BUD'].some((name) => item.classes.has(name))))
      continue;
    if (saying.items.some((item) => item.classes.has('RIPE') || item.classes.has('PICKED'))) continue;
    for (const other of sayings) {
      if (other.clause.sentence !== saying.clause.sentence || other === saying) continue;
      other.hits = other.hits.filter(
        (hit) => !['fruitlets', 'buds-single', 'buds-double', 'leafed-out', 'ask-kind'].includes(hit.kind),
      );
      other.hits.push({
        kind: 'ask-kind',
        at: [],
        first: other.items.length,
        last: other.items.length,
        core: other.items.length,
      });
    }
    saying.hits = [];
    saying.dropped = true;
  }
}
