import { describe, expect, it } from 'vitest';
import { readNote } from '../../src/notes/index.ts';
import { SETTING } from './setting.ts';

/** A phrase of `lexicon/predicates/` beside what it says of a tree: a new phrase is one line there and one here. */
const PHRASES: readonly (readonly [kind: string, text: string])[] = [
  ['tipped', 'pinched the alma'],
  ['tipped', 'took the tips off the alma'],
  ['tipped', 'nipped out the leaders on the alma'],
  ['tipped', 'alma stopped at 5 leaves'],
  ['tipped', 'gave the alma a pinch'],
  ['fruitlets', 'alma is loaded'],
  ['fruitlets', '3 figlets on the alma'],
  ['fruitlets', 'alma has set fruit'],
  ['no-fruitlets', 'no figs on the alma'],
  ['no-fruitlets', 'nothing on the alma'],
  ['no-fruitlets', 'alma came up empty'],
  ['dropped', 'alma dropped all its figs'],
  ['dropped', 'alma shed the lot'],
  ['picked', '6 off the alma'],
  ['picked', 'ate two figs from the alma'],
  ['picked', 'half a pound off the alma'],
  ['ripening', 'alma figs colouring up'],
  ['ripening', 'necks bending on the alma'],
  ['branched', 'alma only made side shoots'],
  ['buds-double', 'two bumps at a node on the alma'],
  ['buds-single', 'single bud at every node on the alma'],
  ['leafed-out', 'alma in full leaf'],
  ['dormant', 'alma lost its last leaves'],
  ['frost', 'alma got hit by frost'],
  ['trouble', 'rust on the alma'],
  ['trouble', 'birds ate all the figs on the alma'],
  ['care', 'watered the alma'],
  ['care', 'moved the alma into the garage'],
  ['pruned', 'cut the alma back hard'],
  ['cuttings', 'took 5 cuttings from the alma'],
  ['rooted', 'alma cuttings rooted'],
];

describe('phrases', () => {
  it.each(PHRASES)('%s is said by "%s"', (kind, text) => {
    const { logged, ask } = readNote(text, SETTING);
    expect(logged.map((event) => [event.tree, event.kind])).toEqual([[3, kind]]);
    expect(ask).toBeNull();
  });
});
