/** More words by class, in the form of `word-classes.ts`: phones, slang and dialects. A class may stand on several lines. */
export const MORE_WORD_CLASSES: readonly (readonly [name: string, words: string])[] = [
  [
    // Where in the garden a tree stands.
    'PLACE',
    'wall fence shed gate door doors doorway doorstep house garage carport hut patio corner steps stairs path drive driveway porch deck decking window windowsill back front side yard garden greenhouse glasshouse conservatory polytunnel hedge bed border sun shade terrace balcony pergola trellis verandah veranda alley alleyway courtyard letterbox mailbox chimney downpipe trampoline gazebo archway',
  ],
  ['THIEF', 'cockies maggies kookaburra kookaburras'],
  ['FRUIT', 'greenie greenies greeny'],
  ['FRUITLET', 'greenie greenies greeny'],
  ['WILL', 'supposing assuming presuming'],
  [
    'THIEF',
    'brushtail brushtails ringtail ringtails cocky cockies roos galahs kookaburra kookaburras drongo drongos boobook mynas myna bandicoots bilby critturs varmint varmints critter packrat packrats roofrat roofrats',
  ],
  ['THIEF', 'someones somebodys somethings'],
  [
    'NODE',
    'armpit armpits crotch crotches elbow elbows knuckle knuckles junction junctions petiole petioles',
  ],
  [
    'BUMP',
    'bobble bobbles nipple nipples wart warts zit zits button buttons nib nibs budlet budlets dimple dimples',
  ],
  ['BUD', 'budlet budlets'],
  ['EMPTY', 'incoming bulletin bulletins alert dispatch recap intel gossip scoop flash'],
  ['TIPPED', 'stoped stopt tipd tippd nippd pinchd'],
  ['FOODISH', 'brekky brekkie brekkers smoko lunchbox fruitbowl porridge muesli yoghurt yogurt ploughmans'],
  [
    'OTHERS',
    'ex exes flatmate roommate housemate housemates tenant tenants fil mil bil sil nanna nannas yiayia yaya teta abuela abuelo oma opa ouma oupa dadi nani baba grampa gramps grampy papaw mamaw meemaw pawpaw poppy neighbs nextdoors stepmum stepmom coworkers workmate workmates cobber vicar postie influencer youtuber vendor seller',
  ],
  [
    'SAYS',
    'bet bets wager wagers speculated speculates hinted hints grumbles grumbled quipped joked jokes mutters muttered teased assures assured argued argues maintains maintained',
  ],
];
