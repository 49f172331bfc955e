/** Words of taking, eating and serving fruit, by class, in the form of `word-classes.ts`. */
export const FRUIT_WORD_CLASSES: readonly (readonly [name: string, words: string])[] = [
  // Said of nothing but food.
  [
    'PICKED',
    'scarfed chowed slurped necked scranned scranning munching noshing scoffing guzzling troughed gorged feasted snacked nommed hoovering reaped gleaned scrumped',
  ],
  // Taking: a harvest only with fruit for its object.
  [
    'TAKEN',
    'rounded mustered corralled scrounged rustled took taken grabbed pulled swiped lifted liberated rescued salvaged saved snuck sneaked snook nicked pinched twisted cropped scored bagged landed snagged nabbed copped pocketed collected gathered retrieved fetched brought carried hauled plucked plucking filched pilfered poached yoinked yanked snatched cut clipped snipped removed extracted bagsied claimed procured secured acquired obtained amassed managed netted boxed trousered purloined lopped reaped gleaned scrumped picking harvested picked snaffled selected popped tugged eased raked drew won earned cleared stripped emptied raided robbed scooped',
  ],
  // Eating: a harvest with fruit for its object, or a tree's name for its fruit.
  [
    'EATEN',
    'ate eaten eating munched scoffed devoured demolished wolfed necked inhaled chomped crunched nibbled tasted sampled savoured savored gobbled guzzled polished downed hoovered slurped scarfed noshed nommed swallowed tucked feasted gorged snacked dined lunched breakfasted supped stuffed consumed despatched dispatched troughed',
  ],
  // Kept, cooked or shared: with a number or the word for figs.
  [
    'SERVED',
    'tried enjoyed finished shared split cooked stewed jammed roasted grilled baked dried drying dehydrated candied froze frozen sold gifted juiced pickled preserved pureed blitzed served',
  ],
  // A tree that gives.
  [
    'YIELDS',
    'yielded yields gave gives given produced offered delivered coughed handed surrendered released parted supplied provided rewarded treated blessed presented donated contributed relinquished dished churned forked served',
  ],
  [
    'CONTAINER',
    'esky eskyful cooler coolerful billycan lunchbox capful capfuls bowl bowlful bowls basket basketful baskets bucket bucketful buckets punnet punnets colander colanderful plate plateful plates tray trayful trays bag bagful bags hatful hat handful handfuls fistful fistfuls pocketful pocketfuls pockets tub tubful tubs box boxful boxes crate crates pail pailful jar jars pint pints quart quarts mess slew batch jug cupful cup saucerful sackful sack trug trugful trugs armful armfuls apron apronful pile heap stack mountain bunch load loads haul feed batch panful pan dish dishful sieve bounty glut crateful carrier shirtful capful mug',
  ],
  [
    'FOODISH',
    'bbq barbecue barbie braai cookout potluck cheeseboard sink dehydrator jam tart chutney crumble pie cake galette smoothie ham prosciutto parma brie feta ricotta mascarpone stilton gorgonzola cream icecream granola oats cereal pancakes waffles crackers fridge freezer belly tum tummy mouth gob cakehole gullet pudding pud brunch elevenses lunchtime teatime breakfast picnic nibbles starter starters mains entree platter board fruitbowl fruitsalad compote preserves conserve marmalade sorbet gelato bruschetta pizza focaccia sandwich sandwiches sarnie sarnies yoghurt weetbix weetabix muesli overnight-oats porridge',
  ],
  [
    'FOODISH',
    'cookout bbq barbecue barbie braai potluck party bacon pancetta salami honey walnuts pecans pastry crumpets scones burrata gorgonzola camembert hummus tagine trifle custard clafoutis frangipane upside-down cobbler parfait',
  ],
  // Family, who eat at the grower's table.
  [
    'KIN',
    'mum mums mom mother dad dads father sister brother gran grandma granddad grandad grandpa nana nan nonna nonno wife husband kids kid hubby missus partner girlfriend boyfriend son daughter toddler grandkids grandson granddaughter niece nephew',
  ],
  ['NEG', 'nary divil zippo zilcho bupkis bubkis nix nuffin diddlysquat'],
  ['NONE', 'zippo zilcho bupkis bubkis nix nuffin diddlysquat'],
  ['DROPPED', 'droped dropd droppped dorpped drpped yeeted yeet chundered hurled lobbed flung'],
  ['PICKED', 'piked pickd pikced picced picekd pciked harvestd havested etten eatn'],
  [
    'HOUSE',
    'grandbabies grandbaby grandkiddies kiddies kiddie kiddos kiddo bairn bairns grandbairn grandbairns wean weans littlun littluns nippers nipper lads lasses tots sprog sprogs grandchildren grandchild ankle-biters',
  ],
  [
    'KIN',
    'grandbabies grandbaby grandkiddies kiddies kiddie kiddos kiddo bairn bairns grandbairn grandbairns wean weans littlun littluns nippers nipper lads lasses tots sprog sprogs grandchildren grandchild',
  ],
  ['EMPTY', 'dieu yeah yep yup nah och ach aye ooh aww awww eek yikes crikey blimey strewth'],
  [
    'SIZE',
    'lonely teensy weeny titchy dinky pathetic puny scrawny weedy respectable gorgeous scrummy whopping giant monster enormous massive',
  ],
  ['TREEWORD', 'blighter blighters bleeder bleeders'],
  ['RIPEN', 'ripning ripnin ripenin'],
  ['RIPE', 'riper ripest overripe'],
  ['RIPE', 'riped rpe rip ripd'],
  ['RIPE', 'rippe ripee'],
  ['KIN', 'auntie aunty aunt uncle cousin'],
];
