/** More words by class, in the form of `word-classes.ts`: phones, slang and dialects. A class may stand on several lines. */
export const MORE_WORD_CLASSES: readonly (readonly [name: string, words: string])[] = [
  [
    'NODE',
    'armpit armpits crotch crotches elbow elbows knuckle knuckles junction junctions petiole petioles',
  ],
  [
    'BUMP',
    'bobble bobbles nipple nipples wart warts zit zits button buttons nib nibs budlet budlets dimple dimples',
  ],
  ['BUD', 'budlet budlets'],
  ['TIPPED', 'stoped stopt tipd tippd nippd pinchd'],
];
