import type { DoubtLine } from './doubt-words.ts';

/** Frames a record may stand in that make it no news: captions, games, boxes to tick, sums still open, general truths. */
export const FRAMES: readonly DoubtLine[] = [
  [
    'figure text',
    [
      '^ DET? photo|pic|picture|video? caption|title|poem|haiku|limerick|lyric|lyrics|password|motto|slogan|tagline|hashtag|pun|riddle|crossword|anagram|novel|essay|chapter',
      'fake news',
      '^ for example|instance',
      'would|will be nice|lovely|great|good|amazing|brilliant|ideal|wonderful|fab|perfect|something $',
      'final|half-time|halftime|current|latest? score|scores|scoreline|standings|leaderboard',
    ],
  ],
  [
    'figure sentence',
    [
      'see DET? TREE? thread|below|above|post|link|log|notes|sheet|attached|photo|photos|pic|pics',
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
    // Harm, bookkeeping and store cupboards.
    'figure here',
    [
      'APEX ~ frosted|frozen|burnt|burned|scorched|singed|blackened|rotted|died|blown|wilted|withered off|back|out|away',
      'counted|counting|count NUM SIZE? APEX',
      'stopped at DET? border|customs|airport|checkpoint|gate|door|lights|kerb|fence|roots|first|last',
      "growth|sap|flow|drip|rot|leak 's|is|has|have been? stopped",
      'pinched|stopped|topped for light|space|water|room|time|money|cash|air|sun',
      'pinched look|face|expression|appearance|feel',
      'helped myself|ourselves to ~ compost|soil|feed|water|mulch|pot|spot|canes|wood|cuttings',
      'bagged NUM SIZE? FRUIT on',
      'bagged ~~ organza|mesh|muslin|against',
      'PICKED|TAKEN|SNIPPED|composted|DROPPED ~ frosted|frostbitten|rotten|mouldy|moldy|soured|manky|shrivelled|shriveled|mummified|mummies FRUIT|ones',
      'composted ~ FRUIT',
      'ate|eaten|scoffed|finished|opened ~~ jam|chutney|preserve|preserves|compote|cordial',
      '^ TREE jam|chutney|compote for|on|with',
      'defrosted|thawed|defrosting|thawing',
    ],
  ],
  [
    'figure sentence',
    [
      'sat|trod|trampled|stood|jumped|leaned|leant|landed|stepped|knelt|rolled|flopped on|in|into|onto ~~ APEX gone|off|broken|snapped|bent',
    ],
  ],
  [
    'figure here',
    [
      '^ fig and|n',
      'NUM fewer|less FRUIT',
      'minus NUM FRUIT',
      'no|not|zero DET? SIZE? chance|hope|prayer|prospect|danger of FRUIT',
      'giving a|two fig|figs|toss about|for',
      'in|on|from the|an|their|its SIZE? ad|advert|advertisement|brochure|listing|leaflet|flyer|catalogue|catalog|trailer|mural|calendar',
    ],
  ],
  [
    'denied here',
    [
      'TIPPED|PICKED|SNIPPED|DROPPED by DET? _? CLUMSY|FORCE|PEST|THIEF|OTHERS',
      'TIPPED|PICKED by some|person|persons|parties|hand unknown?',

      'PICKED|TIPPED|GOT|TAKEN|EATEN|HAVE sod|bugger|naff|eff|fuck|feck|jack|sweet|diddly all|fa|nothing|squat',
    ],
  ],
  [
    'denied text',
    [
      'THIEF party|raid|visit|visits|feast|attack|attacks|banquet|buffet|invasion ~~ picked|stripped|cleaned bare|clean',
    ],
  ],
  [
    'figure here',
    [
      'picked for|to DET? _? show|exhibition|display|bench|competition|demo|trial|team|honour|prize|raffle|auction|sale',
    ],
  ],
  [
    'denied sentence',
    ['thanks|thank|cheers|ta|blame|damn|bloody|flaming|curse|cursed to|of? you? DET? SIZE? THIEF'],
  ],
  [
    'denied text',
    [
      'wrong tree|plant|pot|chat|group|thread|window|fig $',
      'only|just? kidding $',
      'courtesy of DET? SIZE? THIEF',
      '^ delete|undo|scrap|remove|erase|cancel|disregard that|this|last|my|the entry|record|message|msg|note|post|one?',
    ],
  ],
  ['plan text', ['that is|was DET dream|goal|hope|aim|fantasy|plan|idea $']],
  [
    'plan sentence',
    [
      '^ budget|allow|assume|figure|estimate NUM',
      '^ shopping|grocery|groceries|supermarket list',
      'harvest|picking|tipping|pinching day|time|season|date|week|window|month is|are|begins|begin|starts|start|coming|due|soon|approaching|approaches|nears|near|looms|looming|beckons',
      'harvest|picking|tipping|pinching due|begins|begin|starts|start|coming|soon|approaching|approaches|nears|looms|looming|beckons|imminent|expected|forecast|tomorrow|tbc',
      'day|days|week|weeks|month|months|sleeps to|until|till|before ~ harvest|picking|tipping|TREE',
      'can|could|may|might|must|shall|will|would|should be PICKED|TIPPED|SNIPPED|DROPPED|eaten|harvested|gathered',
      'no FRUIT till|until|before',
    ],
  ],
  ['told sentence', ['^ fwd|fw']],
  [
    'past sentence',
    ['i|we ever PICKED|EATEN|had|grew|saw|tried|set', 'year|years to the|DATE', 'anniversary of'],
  ],
  ['other sentence', ['friend|mate|neighbour|neighbor|cousin|colleague|pal|buddy of me|mine|ours|us']],
  ['asked sentence', ['^ any FRUIT|FRUITLET', 'tbc|tba|tbd', 'y and']],
  [
    'if sentence',
    [
      'worried|worry|concerned|anxious|nervous|alarmed|scared|afraid|frightened|terrified|petrified|fearing|feared|fear|panicking|panicked|fretting|fretted that? DET? TREE|it|they|i|we',
    ],
  ],
];
