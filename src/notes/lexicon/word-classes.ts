import { FRUIT_WORD_CLASSES } from './word-classes-fruit.ts';
import { MORE_WORD_CLASSES } from './word-classes-more.ts';
import { WORK_WORD_CLASSES } from './word-classes-work.ts';

/**
 * The words the grammar knows, by class. A word may stand in several classes; patterns and moods refer to
 * the class names (capitals). A new word is one more entry on a line here.
 */
export const WORD_CLASSES: readonly (readonly [name: string, words: string])[] = [
  // --- small words
  ['DET', 'the a an my our this these those its some any every each another your his her their teh'],
  ['MY', 'my our mine ours me i we us'],
  ['PRO', 'it they them this that these those one ones he she both all themselves itself him'],
  ['AND', 'and plus then'],
  [
    'PREP',
    'on in at by near from off of to onto into under behind beside over with for against along across around round outside inside next',
  ],
  ['BE', 'is are was were be been being am looks look looking seems appears stays'],
  [
    'HAVE',
    'has have had having got gets shows showing show showed carrying carries holding holds sporting boasting bearing wearing',
  ],
  ['AUX', 'is are was were do does did has have had can could will would should shall may might am'],
  ['NOW', 'now already currently today finally presently'],
  [
    'ADV',
    'just now already finally also too well really quite very so still again only even all properly fully nicely completely absolutely totally almost nearly about quickly both today yesterday gone right early late back down there here',
  ],
  [
    'SIZE',
    'little tiny small lil wee big fat huge tall baby green hard good nice decent perfect lovely proper new young old first second last next few several many more other best ripe sweet juicy plump beautiful gorgeous fresh little early late measly lousy whole single lone sole solitary perfect wild main proud dear pea marble sized size dark purple brown yellow single',
  ],

  // --- what grows
  [
    'FRUIT',
    'fig figs figlet figlets figgies figgy figlette figlettes fruitlet fruitlets fruit fruits fruitling fruitlings babies syconia syconium breba brebas breva brevas brebba brebbas crop crops',
  ],
  ['FRUITLET', 'figlet figlets figlette figlettes fruitlet fruitlets fruitlings figgies figlettes babies'],
  ['BREBA', 'breba brebas breva brevas brebba brebbas'],
  [
    'BUD',
    'bud buds bump bumps nub nubs nubbin nubbins nodule nodules bulge bulges pimple pimples lump lumps knob knobs',
  ],
  [
    'BUMP',
    'bump bumps swelling swellings nub nubs nubbin nubbins nodule nodules bulge bulges pimple pimples lump lumps knob knobs thing things thingy thingies growth growths dot dots blob blobs bits something somethings nobble nobbles pip pips',
  ],
  ['LEAF', 'leaf leaves foliage leafs'],
  [
    'SHOOT',
    'shoot shoots sideshoot sideshoots side-shoots lateral laterals leader leaders tip tips top tops branch branches branchlet branchlets branching stem stems limb limbs arm arms growth point points apex apical apicals terminal terminals end ends head heads twig twigs meristem stalks stalk whip whips trunk main mains upright uprights growers sides spur spurs leading growing',
  ],
  [
    'APEX',
    'tip tips top tops point points apex apical apicals terminal terminals end ends head heads meristem meristems leader leaders growing',
  ],
  [
    'BRANCH',
    'branch branches lateral laterals sideshoot sideshoots shoot shoots side sides fork forks stems stem arms suckers',
  ],
  ['NODE', 'node nodes axil axils joint joints leafnode'],
  ['WOOD', 'wood stick canes cane'],
  ['SUCKER', 'sucker suckers limb limbs deadwood crossing watersprout watersprouts basal'],
  ['CUTTING', 'cutting cuttings stick sticks scion scions scionwood budwood clone clones starts'],
  ['ROOT', 'root roots rootlets'],
  [
    'FOODISH',
    'breakfast lunch dinner tea supper dessert snack pudding toast cheese jam salad kitchen bowl plate bucket basket punnet colander tub jar',
  ],

  // --- doings
  [
    'TIPPED',
    'tipped pinched nipped stopped topped detipped decapitated beheaded deheaded tiped pinchd nippd',
  ],
  ['TIP', 'tip pinch nip stop top tips pinches'],
  ['TIPPING', 'tipping pinching nipping stopping topping'],
  [
    'SNIPPED',
    'headed nobbled docked snipped clipped cut trimmed lopped chopped removed took taken whipped lost rubbed knocked broke pulled had',
  ],
  ['SNIP', 'snip clip cut trim lop chop remove take'],
  [
    'PICKED',
    'picked harvested ate eaten eated scoffed scoff nabbed snaffled devoured munched plucked gathered collected gobbled guzzled demolished polished snarfed noshed grabbed pulled enjoyed tasted sampled hoovered picked swiped wolfed nommed noms savored savoured inhaled chomped crunched',
  ],
  ['PICKING', 'picking harvesting eating'],
  ['PICK', 'pick harvest eat'],
  ['GOT', 'got had took brought'],
  ['HARVEST', 'harvest haul picking pickings yield harvests'],
  [
    'DROPPED',
    'dropped dropt aborted shed shedded jettisoned ditched cast fell fallen threw binned chucked lost drooped',
  ],
  ['DROPPING', 'dropping aborting shedding falling losing throwing'],
  ['DROP', 'drop drops abort aborts shed sheds lose loses'],
  ['FALLEN', 'fell fallen gone off ground floor dropped down hit bare'],
  [
    'WATERED',
    'watered watering water fed feed feeding fertilized fertilised fertilizing fertilising fertilized fertigated drenched soaked irrigated hosed misted mulched mulching dressed topdressed dosed potted repotted uppotted repositioned rehoused wheelbarrowed barrowed trolleyed dollied planted transplanted moved wheeled shifted carried lugged hauled dragged marched trundled rolled relocated turned rotated netted bagged meshed covered covering uncovered wrapped unwrapped fleeced shaded sheltered staked tied weeded sprayed dusted treated limed composted manured washed wiped rinsed scrubbed cleaned swept plonked heeled sunk unpotted upsized downsized replanted resited restaked retied remulched refed resprayed rewatered rewrapped underplanted quenched doused dunked saturated chelated defrosted deslugged handpicked limewashed whitewashed aerated scarified top-dressed side-dressed sidedressed unboxed hardened deadleafed defoliated stripped dethatched propped trellised espaliered gave given squished squashed hosing spraying potting repotting moving netting mulch mulches watering fertilize spritzed sunk divided inspected drizzled bottom-watered trained',
  ],
  [
    'PRUNED',
    'pruned prooned prunned pruend pruning thinned thinning hacked lopped trimmed reduced shortened coppiced stumped desuckered suckered deshooted limbed tidied cleaned sawed sawn hardpruned trimming',
  ],
  ['LEAFED', 'leafout leafed leaved leafing budbreak unfurled unfurling sprouted sprouting awoke'],
  [
    'RIPEN',
    'ripening ripen ripens softening soften softened colouring coloring coloured colored colour color blushing blushed swelling swelled swollen swell plumping plumped plump sagging ballooning ballooned purpling darkening yellowing browning squishy squidgy',
  ],
  ['RIPE', 'ripe ripened soft'],
  ['BRANCHED', 'branched branching forked forking'],
  ['ROOTED', 'rooted rooting struck callused calloused'],
  ['DORMANT', 'dormant dormancy asleep leafless hibernating'],
  ['FROST', 'frost frosts frosted frosty freeze freezes froze frozen freezing frostbite frostbitten'],
  [
    'TROUBLE',
    'rust lurgy mosaic fmv fmd blight canker scale mites mite aphid aphids beetle beetles ants borer borers nematodes nematode rkn mildew mould mold moldy mouldy rot rotting rotted rotten wilting wilted wilt droopy drooping-leaves scorched scorch sunburn sunburned sunburnt sunscald burnt burned fried crispy crisp crisped toppled snapped cracked split splits splitting splitted soured souring sour fermented fermenting fermentation weeping oozing wasps wasp hornets hornet birds bird blackbirds blackbird starlings starling squirrel squirrels rat rats mouse mice raccoon raccoons racoon racoons coon coons possum possums opossum deer gopher gophers vole voles rabbit rabbits groundhog groundhogs woodchuck parrots parrot cockatoos cockatoo lorikeets bats grackles grackle mockingbird mockingbirds robin robins crow crows magpie magpies pigeons catbird chewed chewing chomped munching nibbled holes spots spotted spotting spotty hail hailed hailstones hailstorm windburn shredded battered blown broken breakage damage damaged damaging stolen stole thief thieves theft pinchers slugs slug snail snails caterpillar caterpillars thrips whitefly whiteflies mealybug mealybugs mealies psyllid psyllids leafminer chlorosis chlorotic yellowed deficiency diseased disease sick sickly infested infestation fungus fungal anthracnose botrytis shrivelled shriveled shrivelling shriveling shrivel mummified bug bugs fly flies maggots maggot larvae larva grubs grub earwig earwigs weevil weevils grasshopper grasshoppers katydid leafhopper leafhoppers hoppers worm worms webbing webs sap-sucking dieback dying died dead perished waterlogged waterlogging rotting-roots overwatered crisping gummosis blackened stunted cooked curl curled curling distorted snapped critters critter vandalised vandalized vandals wormy drowned sunscorch heatstroke stung lantern lanternflies lanternfly psylla spider spidermites cankers wounds wound knocked flattened uprooted ringbarked girdled limp flagging flopped flop floppy scab scabby lesions lesion blotches blotchy burn bleached torn tattered ragged scald',
  ],
  [
    'PEST',
    'mites mite aphid aphids beetle beetles ants borer borers nematodes wasps birds blackbirds starlings squirrel squirrels rats rat mice raccoon raccoons possum possums deer scale rust mildew mould mold slugs snails snail caterpillars caterpillar thrips whitefly whiteflies mealybug mealybugs mealies flies fly bugs hoppers earwigs lanternflies weeds frost sun heat wind hail rain rot fungus',
  ],
  [
    'THIEF',
    'birds bird blackbirds blackbird starlings starling squirrel squirrels rat rats mouse mice raccoon raccoons racoon racoons coon coons possum possums opossum deer gopher gophers wasps wasp ants parrots parrot cockatoos cockatoo lorikeets bats grackle grackles mockingbird mockingbirds robin robins crow crows magpie magpies pigeons catbird hornets hornet someone somebody thief thieves critter critters something slugs snails groundhog groundhogs rabbit rabbits beetles chipmunk chipmunks chickens chooks hens wildlife',
  ],
  [
    'CAREOBJ',
    'feed water drink seaweed kelp fertiliser fertilizer compost manure mulch lime pellets granules epsom gypsum tonic soak drench neem netting mesh fleece organza fishmeal bonemeal emulsion shadecloth perlite potash tomato topdressing top-dressing dressing worm-castings castings biochar cover stake trellis tray saucer repot pot soil nets net',
  ],

  // --- how it is meant
  [
    'NEG',
    'not no never without nothing none nada zilch zip zero nope nah neither nor nobody nil hardly barely nowhere refuses refused refusing fails failed unable nought naught sod-all diddly squat minus lacking lacks',
  ],
  ['NONE', 'nothing none nada zilch zip zero nil nought naught nope'],
  [
    'WILL',
    'will would could should shall may might must ought gonna cannot plan plans planning planned want wants wanted wanting wish wishing hope hopes hoping hopefully if unless almost nearly need needs needed needing supposed tempted considering considered contemplating thinking debating expect expects expecting expected waiting await awaiting intend intending meaning meant ready due remind reminder todo shall fancied imagine forecast wondering wonder maybe perhaps possibly probably doubt dream dreaming dreams dreamt pray praying forgot forget postponed postponing delayed delaying putting scheduled schedule resolved vowed promised trying try tried attempt attempted wishlist soonish whether decide deciding undecided regret regretting next unlikely likely threatening threatened fantasising fantasizing daydreaming figuring owe owes pondering mulling forgotten predicted predicting suppose supposedly fingers eventually hankering itching aim aiming',
  ],
  ['HEDGE', 'think thinks thought guess guessing suspect reckon reckons suppose believe swear'],
  [
    'SAYS',
    'bets bet claim claiming texted telling tells messaged reported reportedly heard texts says said reckons swears claims claimed told insists insisted thinks guesses suggests suggested recommends recommended advised advises warned asked asks mentioned wonders according apparently rumour rumor believes figures',
  ],
  [
    'ASK',
    'anyone anybody should shall how why what when where who which does do did is are can could would has have am will whats hows worth any ok okay right too',
  ],
  ['WH', 'how why what when where who which whether'],
  [
    'OTHERS',
    "neighbour neighbours neighbor neighbors neighbour's neighbor's friend friends mate mates buddy pal mum mums mom moms mother dad dads father sister sisters brother brothers uncle uncles aunt aunts auntie aunties gran grans grandma grandmas granddad grandad grandpa nana nan nonna nonno cousin cousins boss colleague colleagues coworker coworkers guy guys bloke lady fella somebody nursery nurseries forum video arboretum botanic botanical botanics allotment neighbours' landlord landlady inlaws stepdad granny stranger's friends' nephew niece",
  ],
  [
    'HOUSE',
    'wife husband kids kid hubby missus partner girlfriend boyfriend son daughter toddler grandkids grandson granddaughter',
  ],
  ['PAST', 'used always usually normally historically traditionally previously'],
  [
    'EMPTY',
    'update updates news report reports hello hi hey big huge great exciting excited guess wow omg yay progress look pics photo photos pic picture status check-in checkin watch space drumroll newsflash finally oh tada ta-da boom woohoo whoop woo check hooray hurrah yes yess latest lol haha ok okay so well',
  ],
  [
    'WEATHER',
    'hot heat heatwave rain rained raining rainy storm storms stormy wind windy humid cold cool warm sunny cloudy degrees drought dry thunderstorm thunder drizzle weather overcast scorcher muggy monsoon showers snow snowed sleet fog breeze sweltering baking temps temperature scorching',
  ],
  [
    'GARDENWIDE',
    'everything everyone everybody all lot entire whole garden yard collection orchard trees plants pots greenhouse rest patio',
  ],
  ['TREEWORD', 'tree trees fig figs plant plants bush pot pots one ones'],
];

const byWord = new Map<string, Set<string>>();
for (const [name, words] of [
  ...WORD_CLASSES,
  ...MORE_WORD_CLASSES,
  ...FRUIT_WORD_CLASSES,
  ...WORK_WORD_CLASSES,
]) {
  for (const word of words.split(' ')) {
    const classes = byWord.get(word);
    if (classes) classes.add(name);
    else byWord.set(word, new Set([name]));
  }
}

const NO_CLASSES: ReadonlySet<string> = new Set();

/** Classes of a word; empty for a word the grammar does not know. */
export function classesOf(word: string): ReadonlySet<string> {
  return byWord.get(word) ?? NO_CLASSES;
}

export function knownWords(): Iterable<string> {
  return byWord.keys();
}
