import type { Clause } from './clauses.ts';
import { wordSet } from './lexicon/word-set.ts';

const OPENS_QUESTION = wordSet(`
  is are am do does did should shall can could would will what why how when where who which anyone
  anybody any
`);

/** A question mark holds for the whole of what it closes: "what are these, figs or buds?" */
export function spreadQuestions(clauses: readonly Clause[]): Clause[] {
  const out = [...clauses];
  for (const first of clauses) {
    const [a, b] = first.items;
    if (
      first.join === 'or' ||
      !['what', 'which', 'whats'].includes(a?.text ?? '') ||
      !['is', 'are', 'am', 'do', 'does', 'did'].includes(b?.text ?? '')
    )
      continue;
    for (let k = clauses.indexOf(first); k < out.length; k++) {
      const each = out[k];
      if (each && each.sentence === first.sentence) out[k] = { ...each, asked: true };
    }
  }
  for (let end = 0; end < out.length; end++) {
    const last = out[end];
    if (!last?.asked) continue;
    for (let k = end; k >= 0; k--) {
      const here = out[k];
      if (!here || here.sentence !== last.sentence) break;
      const opens = OPENS_QUESTION.has(here.items[0]?.text ?? '');
      if (opens || here.join === 'or') {
        for (let j = k; j <= end; j++) {
          const each = out[j];
          if (each) out[j] = { ...each, asked: true };
        }
      }
      // "leaf or fruit?": both halves are asked.
      if (here.join === 'or' && k > 0) {
        const before = out[k - 1];
        if (before && before.sentence === last.sentence) out[k - 1] = { ...before, asked: true };
      }
    }
  }
  return out;
}
