import type { DoubtLine } from './doubt-words.ts';

/** What else bears fruit, is picked or is pinched out. */
const PLANT =
  'tomato|tomatoes|tom|toms|cucumber|cucumbers|bean|beans|plum|plums|apple|apples|peach|peaches|pear|pears|lemon|lemons|lime|limes|orange|oranges|grape|grapes|pepper|peppers|chilli|chillies|chillis|chili|chilies|courgette|courgettes|zucchini|squash|pumpkin|pumpkins|melon|melons|watermelon|cherry|cherries|apricot|apricots|mulberry|mulberries|persimmon|persimmons|pomegranate|pomegranates|avocado|avocados|blueberry|blueberries|strawberry|strawberries|raspberry|raspberries|blackberry|blackberries|potato|potatoes|onion|onions|currant|currants|blackcurrants|redcurrants|gooseberry|gooseberries|quince|quinces|olive|olives|mango|mangoes|loquat|loquats|feijoa|feijoas|guava|guavas|citrus|vine|grapevine|banana|bananas|passionfruit|kiwi|nectarine|nectarines|almond|almonds|walnut|walnuts|hazel|elderberries|rhubarb|radish|radishes|carrot|carrots|lettuce|lettuces|spinach|kale|corn|basil|mint|herbs|roses|rose|sunflower|sunflowers|dahlia|dahlias|fuchsia|fuchsias|geraniums|petunias|peas|aubergine|aubergines|eggplant|eggplants|okra|lychee|pawpaw|papaya|medlar|crabapple|crabapples';

/** Verbs of the trade done to other things, fruit of other plants, and trees called by their fruit. */
export const DONE_TO_OTHER_THINGS: readonly DoubtLine[] = [
  [
    'figure here',
    [
      // A pot that goes over, or is set straight.
      'tipped DET? TREE|PRO upright|level|straight|sideways|forward|forwards',
      'TREE|it has|have|had tipped|stopped|topped $',
      'TREE|it tipped|toppled in|by|with|during DET? SIZE? wind|winds|gale|gales|storm|gust|gusts|breeze|night',
      'tip|tips jar|jars|top|run|burn|truck|lorry|shop',
      'tipped|tipping|tip DET? SIZE? rest|remainder|remains|dregs|half|last|contents|leftovers|whole of? ~ feed|water|can|tea|compost|seaweed|mulch|grit|bag|bucket|tonic|bath',
      // Accidents.
      'lost ~ APEX ~ to|in ~ frost|wind|winds|gale|storm|hail|deer|rabbits|rabbit|slugs|snails|birds|mower|cold|heat|sun|scorch|borer|rot',
      'knocked|bashed|cracked|crushed|whacked|hit ~ top|tops|tip|tips|leader|leaders|growing',
      // Weights of what is no fruit.
      'pot|trunk|plant|root|rootball|tub is|weighs|weighed|was|at|must ~ WEIGHT',
      'lifted|carried|shifted|lugged|dragged|heaved|moved|wheeled|hauled WEIGHT of? TREE|pot|compost|soil|mulch|manure',
      'lost WEIGHT',
      // Parts that are no fruit.
      'PICKED|HARVEST|TAKEN|GOT|CONTAINER DET? NUM|MEASURE|few|some|all|CONTAINER? of? SIZE? LEAF|SUCKER|CUTTING',
      'NUM|few|some|couple off|from DET? TREE ~ to|for root|rooting|graft|grafting|propagate|propagating|cuttings|scions|strike|air|budding',
      // Other plants and foods.
      'sweet|garden|snow|green|sugar|mushy peas|pea',
      'EATEN|had|PICKED NUM|few|some|couple|more sandwiches|biscuits|cookies|cakes|burgers|pies|sausages|tacos|beers|crisps|chips|pastries|croissants|bananas|apples|tomatoes',
      `PICKED|HARVEST|EATEN|TAKEN|TIPPED|SNIPPED|DROPPED|GOT DET? NUM? SIZE? ${PLANT}`,
      `on|off|from DET|NUM ${PLANT}`,
      `my|the|our|a|an|her|his|that|this SIZE? ${PLANT} tree`,
      `${PLANT} trees|vine|vines|bush|bushes|plant|plants`,
      `^ DET? SIZE? ${PLANT} ~~ loaded|covered|laden|dripping|heaving|sagging|groaning|smothered|plastered|bearing|dropped|dropping|fruited|fruiting|set|has|have|had|lost|full|heaving|picked|pinched|tipped|topped|stopped`,
      // Fruit that lies there.
      'FRUIT down on|under|off|by|from DET? TREE',
      'BREBA|FRUIT ~~ is|was|are|were just|only|actually|really|probably? a|an leaf|bud|gall|shoot|bump|leaf-bud|leafbud',
      'picked DET? TREE to|because|cause|cos|coz|as|over|out|since|off|up',
      'picked up DET? NUM|few|some? SIZE? pot|pots|bag|bags|tub|tubs|saucer|saucers|stake|stakes|cane|canes|net|nets|label|labels|cutting|cuttings|tree|trees|plant|plants|mites|scale|TREE|rooted|bargain|parcel',
      'ate|eat|eaten at|out DET|home|work|mums|dads|theirs|again',
      'TREE ate|eats|drank|guzzled|gobbled|drinks|drunk ~ its|feed|water|budget|compost|fertiliser|fertilizer|space|time|money|paycheck',
      'GOT NUM TREE now|altogether|trees|plants|already|here',
      // Lost, but no fruit.
      'lost|lose|losing ~ hope|patience|interest|touch|track|faith|heart|label|labels|photos|notes|data|files|saucer|vigour|vigor|power|signal|wifi|keys|weight|leaf|leaves|branch|limb|cuttings|cutting|roots|bark|plot|will|bet|battle|war|race|game',
      'lost everything|all in|to|when|after DET SIZE? hard|computer|phone|crash|fire|flood|divorce|update|move',
      // Trees called by their fruit.
      '^ my|our FRUIT TREE',
      'NUM FRUIT|figtrees in pots|tubs|containers|ground',
      'NUM FRUIT to repot|move|plant|prune|feed|water|net|sell|pot|rehome|give|swap|go|spray|wrap|overwinter|stake|tip|pinch',
      'NUM FRUIT delivered|arrived|shipped|planted|potted|ordered|repotted|moved|wrapped|watered|sprayed|pruned|fed|netted|rooted|grafted|sold|bought',
      'not|no|hardly|never a|any|one|your|the FRUIT tree|trees|variety|person|fan|expert|lover|grower|year|plant|bush',
      'not|no|hardly|never FRUIT tree|trees|bush|plant|person|expert|grower',
      // Of varieties, not of a tree today.
      'TREE does|do|sets|makes|bears|gives|produces only|mostly|mainly|just? BREBA',
      'only|mostly|mainly|always|just does|do|sets|makes|bears|gives|produces|does BREBA|FRUIT',
      'few|some|NUM|couple|handful off|from DET? TREE blew|fell|blown|dropped|were|got|was|is|are ~ down|off|knocked|ground|floor|away',
      'nothing got|touched|touches|hurt|hurts|attacked|bothers|bothered|bit|bites|eats|survived|works|worked|helps|helped|stops|stopped|escapes|escaped',
      'loaded|load|loading DET? TREE onto|into|in|up|on|for|to',
      'FRUIT taste|dry|keep|make|freeze|cook|travel|store|sell|tend',
      'FRUIT on|off|from DET? TREE taste|dry|keep|make|freeze|cook|travel|store|sell|tend',
      'on paper $',
    ],
  ],
  ['figure on', [`PICKED|HARVEST|EATEN|GOT DET? NUM? SIZE? ${PLANT}`]],
  [
    'plan here',
    [
      'BREBA|FRUIT crop? expected|predicted|forecast|anticipated|due|promised|wanted|needed|missing|required|advertised|guaranteed|wanted',
      'can|could|must|may wait',
      'before long',
      'have|has|had to wait',
      'TIPPING|PICKING|harvesting|eating|taking ~~ is|are|was|seems|feels|sounds pointless|overrated|premature|hard|difficult|fiddly|tedious|boring|fun|easy|important|essential|vital|optional|recommended|advised|allowed|forbidden|banned|risky|best|better|wrong|key|worth|scary|stressful',
    ],
  ],
  [
    'denied before',
    [
      'stop|quit|cease|avoid|avoids|avoided|avoiding|without|skip|skipping TIPPING|PICKING|taking|eating|harvesting|removing|cutting|snipping',
    ],
  ],
  [
    'figure sentence',
    [
      'a|another|one|total|absolute|big|complete lie|fib|myth|joke|rumour|rumor|fantasy|fiction|hoax|prank',
      'april fool|fools',
      '^ false|fake|myth|joke|lie|fiction|untrue|rumour|rumor|hypothetical|example|eg|test|testing|sample|quote',
      'not that DET? TREE',
      'not mean|imply that? DET? TREE',
      '^ i|we? was|were sure|certain|convinced|positive',
    ],
  ],
  [
    'figure text',
    [
      `those|that|they|these|it was|were DET? ${PLANT}`,
      'oh no|wait it|they|that is|are|was|were fine|ok|okay|there|under|hiding|still|not',
    ],
  ],
  [
    'other text',
    [
      'that|it|this|those|they was|were|is DET? OTHERS $',
      "that|it|this|those|they was|were|is DET? OTHERS 's",
    ],
  ],
  [
    'past sentence',
    [
      "TREE 's? best|worst|record|top|previous|biggest year|season|crop|haul|tally|total|score|number|effort|figure|summer ~ was|is|stands|of|remains",
      'over the years|decades|seasons',
      '^ as a|an SIZE? baby|sapling|whip|youngster|seedling|stick|cutting|yearling',
      'in|at its|the|her|his|their last|old|previous|former|original|smaller|tiny pot|container|spot|place|home|bed|tub|corner|garden',
    ],
  ],
  ['plan on', ['time DET? TREE fruited|set|ripened|dropped|had|got|gave|cropped|did|was|is|were']],
  [
    'if sentence',
    ['the day|moment|minute|second|instant that? the TREE ~ HAVE|ripens|fruits|sets|drops|is|gets'],
  ],
  [
    'told sentence',
    [
      'they|some|people|folk|folks|books|experts|others say|claim|reckon|think|tell|recommend|suggest|write',
      'story|legend|tale|rumour|rumor|gossip goes|has',
      'on|in the|its|that|this|her|his packet|label|tag|box|poster|card|cover|screen|show|programme|channel|telly|clip',
      'promise|swear|assure me|us|you',
    ],
  ],
  [
    'other sentence',
    [
      'they|people|folks|neighbours|neighbors|others|everyone|everybody pick|tip|pinch|take|eat|harvest|stop|nip|drop',
      'some|a|the|next|that|those kid|kids|lad|lads|boy|boys|girl|girls|yob|yobs|teenager|teenagers|youth|youths|chancer|thief|thieves nicked|stole|pinched|took|had|swiped|helped|swiped|robbed|raided|scrumped',
    ],
  ],
  [
    'asked sentence',
    [
      'looks|look|seems|seem|feels|sounds|appears as though|if',
      'advice|question|questions|help|query|tips on|about|with|re TIPPING|PICKING|taking|eating|harvesting|removing|cutting|snipping',
    ],
  ],
  [
    'asked sentence',
    [
      'it seems|appears that? DET? TREE',
      'all i|we know',
      'far as i|we know|remember|recall',
      'yes or no',
      'TIPPING|PICKING|taking|eating|harvesting ~~ anyone|how|why|thoughts|yes|worth',
    ],
  ],
  ['if sentence', ['in my mind|head|dreams|imagination', 'in another|some universe|life|world']],
  [
    'plan on',
    [
      'am|are|is TIPPING|PICKING|taking|eating|harvesting ~~ on|tomorrow|next|this DATE?',
      'recommended|suggested|suggest|recommend TIPPING|PICKING|taking|eating|harvesting',
    ],
  ],
  ['denied before', ['for|against TIPPING|PICKING|taking|eating|harvesting']],
  [
    // Over a comma too.
    'figure sentence',
    [
      'off|from DET? TREE suckers|sucker|cuttings|cutting|leaves|scions|sticks|shoots $',
      'off|from DET? TREE suckers|sucker|cuttings|cutting|leaves|scions|sticks|shoots that is|was',
      'sold|ordered|bought|planted|repotted|moved|watered|fed|potted|rehomed|adopted|sprayed|pruned|gave ~ NUM FRUIT a|an|one|two|NUM|TREE',
      'gave|give|giving away NUM FRUIT a|an|one|two|NUM|TREE',
      'i|we have NUM FRUIT TREE|a|an|one|all|now|here',
    ],
  ],
  ['past text', ['^ remember|recall|reminisce _ $', '^ remember|recall the _ $']],
  [
    'asked sentence',
    ['quick|another|one q|question|query', '^ is|are|was|were WEIGHT|FRUIT|BREBA', 'before or after'],
  ],
  [
    'plan here',
    [
      'FRUIT to come|follow',
      'budget|room|space|capacity|hungry|enough for ~ NUM|FRUIT',
      'can take|carry|hold|bear|support|manage|ripen|produce|give|feed|handle ~ NUM|FRUIT',
    ],
  ],
  [
    // Said of a variety, of any year.
    'figure sentence',
    [
      'no way it|its|that|the|this|i|they|he|she|TREE',
      'FRUIT ~ when|once ripe|ready|picked|dried|cooked',
      'can not beat',
      'by nature',
    ],
  ],
  [
    'plan on',
    [
      'better be|have|come|get|see FRUIT',
      'help|make|get|coax|encourage|let it|them|her|him to? set|fruit|ripen|crop|bear|produce|drop|have',
    ],
  ],
  [
    // Sayings, and what is no lack of fruit.
    'figure sentence',
    [
      'no tip|tips|sun|water|pain|heat|gain|rain|feed|food|work|bees|wasps|light|patience no FRUIT',
      'more|bigger|better|extra|less _ more|bigger|better|no|fewer FRUIT',
      'no more? FRUIT for you|them|birds|THIEF|DET',
      'not|hardly enough FRUIT',
      'not DET? TREE FRUIT',
      'fruit and veg|veggies|vegetables|flowers|nut|nuts|flower',
      'i beg|implore|pray',
      'gave|given|lost|left|leave|leaving|surrendered|sacrificed|conceded ~ to|for DET? THIEF',
    ],
  ],
  [
    'figure here',
    [
      '^ heaving|groaning|dripping|bursting|packing|stuffing DET? TREE',
      'back|knees|shoulders|table|shelves|shelf|arms is|are groaning|heaving|aching',
      'loaded nachos|fries|potato|potatoes|skins|question|word|dice|gun',
      'NUM TREE to DET swap|sale|nursery|show|tip|skip|raffle|auction',
    ],
  ],
  [
    'other sentence',
    [
      'at|in|from DET? plant|garden|car|boot|bring|club|spring? sale|raffle|swap|auction|nursery|fete|centre|center|marketplace',
    ],
  ],
];
