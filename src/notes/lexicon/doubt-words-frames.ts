import type { DoubtLine } from './doubt-words.ts';

/** Frames a record may stand in that make it no news: captions, games, boxes to tick, sums still open, general truths. */
export const FRAMES: readonly DoubtLine[] = [
  [
    'figure text',
    [
      '^ DET? photo|pic|picture|video? caption|title|poem|haiku|limerick|lyric|lyrics|password|motto|slogan|tagline|hashtag|pun|riddle|crossword|anagram|novel|essay|chapter',
      'fake news',
      'final|half-time|halftime|current|latest? score|scores|scoreline|standings|leaderboard',
    ],
  ],
  [
    'figure sentence',
    [
      'in|of the|our|this|my? growth|popularity|beauty|naming|name|club|photo? race|league|contest|competition|quiz|poll|vote|sweepstake|raffle|championship',
      '^ PICKED|TIPPED|DROPPED FRUIT|trees|shoots|plants ~~ do|does|will|can|never|ripen|ripens|keep|keeps|branch|branches|need|needs',
      '^ TIPPED|PICKED FRUIT|trees|shoots|plants like|such',
      '^ no|zero FRUIT ~~ is|would|be ADV? normal|usual|typical|standard|expected|fine',
      'stopped|stop|stopping at|by|near|beside|outside DET? TREE to|for|and|on',
      'stopped|stop|stopping at|by|near|beside|outside DET? TREE $',
      'topped|topping|tops|topping-out measure',
      'topped|topping NUM|one|two|three|four|five|six|seven|eight foot|feet|ft|metre|metres|meter|meters|m|inches|cm|degrees',
    ],
  ],
  [
    'figure here',
    [
      'giving a|two fig|figs|toss about|for',
      'in|on|from the|an|their|its SIZE? ad|advert|advertisement|brochure|listing|leaflet|flyer|catalogue|catalog|trailer|mural|calendar',
    ],
  ],
  [
    'denied here',
    [
      'PICKED|TIPPED|GOT|TAKEN|EATEN|HAVE sod|bugger|naff|eff|fuck|feck|jack|sweet|diddly all|fa|nothing|squat',
    ],
  ],
  [
    'denied text',
    [
      'only|just? kidding $',
      '^ delete|undo|scrap|remove|erase|cancel|disregard that|this|last|my|the entry|record|message|msg|note|post|one?',
    ],
  ],
  [
    'plan sentence',
    [
      '^ shopping|grocery|groceries|supermarket list',
      'harvest|picking|tipping|pinching day|time|season|date|week|window|month is|are|begins|begin|starts|start|coming|due|soon|approaching|approaches|nears|near|looms|looming|beckons',
      'harvest|picking|tipping|pinching due|begins|begin|starts|start|coming|soon|approaching|approaches|nears|looms|looming|beckons|imminent|expected|forecast|tomorrow|tbc',
      'day|days|week|weeks|month|months|sleeps to|until|till|before ~ harvest|picking|tipping|TREE',
      'can|could|may|might|must|shall|will|would|should be PICKED|TIPPED|SNIPPED|DROPPED|eaten|harvested|gathered',
      'no FRUIT till|until|before',
    ],
  ],
  ['other sentence', ['friend|mate|neighbour|neighbor|cousin|colleague|pal|buddy of me|mine|ours|us']],
  ['asked sentence', ['^ any FRUIT|FRUITLET', 'tbc|tba|tbd', 'y and']],
  [
    'if sentence',
    [
      'scared|afraid|frightened|terrified|petrified|fearing|feared|fear|panicking|panicked|fretting|fretted that? DET? TREE|it|they|i|we',
    ],
  ],
];
