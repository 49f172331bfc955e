/**
 * Words of the garden by class, in the form of `word-classes.ts`: what harms a tree and how, what is given to it,
 * put on it or done with it. The fields of animals, insects and diseases follow WordNet 3.1 (hyponyms of mammal,
 * bird, insect, plant disease), as far as a garden meets them.
 */
export const WORK_WORD_CLASSES: readonly (readonly [name: string, words: string])[] = [
  // --- what harms
  [
    // Insects, mites and molluscs that are news by themselves.
    'TROUBLE',
    'greenfly blackfly greenflies blackflies medfly medflies curculio curculios vinegarfly sawflies froghopper froghoppers spittlebug spittlebugs planthopper planthoppers treehopper treehoppers leafcutter leafcutters leafminers leafroller looper bagworm bagworms tentworm tentworms cutworm cutworms fruitworm wireworm wireworms inchworm inchworms sapsuckers sapsucker rootworm spidermite springtails sciarid sciarids termite termites woodworm cockchafer cockchafers chinch phylloxera blistered blistering blisters blister puckered scarab scarabs figeater figeaters midge midges budmoth mothy carpophilus silverleaf redspider webbed thrip aphis virus viruses grubby maggoty mitey buggy',
  ],
  [
    'TROUBLE',
    'verticillium fusarium phytophthora pythium armillaria cercospora xanthomonas rhizoctonia sclerotinia septoria alternaria aspergillus endosepsis smut gall galls smutty mosaicky viral virused necrosis necrotic mottling mottled blotched cankered mildewy mildewed rusty-leaved leafspot leafspots blackspot brownspot sootymold edema oedema pathogen dampened wilts withers shrivels rots splits cracks moulds molds',
  ],
  [
    'PEST',
    'aphid greenfly blackfly medfly medflies beetle borer nematode wasp slug earwig hornet hornets weevil weevils curculio curculios leafminers leafminer psyllids psyllid locusts locust grasshoppers grasshopper katydids gnats gnat midges moths moth maggots grubs larvae eggs webs webbing leafhoppers leafhopper planthoppers froghoppers stinkbugs stinkbug sawfly sawflies webworms webworm cutworms bagworms loopers termites termite canker cankers blight blackspot leafspot mosaic virus whiteflies thrip botrytis cockroaches chafers chafer lanternfly spider spiders mealybug bug ladybugs nematode dieback fungi',
  ],
  [
    // Animals that raid: trouble only with what they did.
    'THIEF',
    'badger badgers fox foxes hedgehog hedgehogs mole moles hare hares polecat stoat weasel weasels ferret ferrets marten martens skunk skunks armadillo armadillos coyote coyotes elk moose caribou antelope antelopes kudu bushbuck pig pigs hog hogs boar boars javelina javelinas peccary cow cows cattle calf calves bullock bullocks heifer sheep lamb lambs goat goats horse horses pony donkey donkeys mule llama alpaca alpacas kangaroo kangaroos wallaby wallabies roo roos wombat wombats bandicoot bandicoots koala quokka monkey monkeys baboon baboons ape marmot marmots porcupine porcupines beaver beavers muskrat nutria hamster chipmunk gerbil rodent rodents shrew shrews dormouse dormice groundhog cat cats dog dogs puppy puppies pup kitten kittens pooch mutt labrador terrier spaniel collie tomcat kitty iguana iguanas lizard lizards gecko geckos tortoise tortoises turtle turtles snake toad',
  ],
  [
    'THIEF',
    'jay jays bluejay bluejays thrush thrushes sparrow sparrows finch finches bullfinch bullfinches rook rooks jackdaw jackdaws raven ravens pigeon woodpigeon woodpigeons dove doves parakeet parakeets cockatiel galah galahs corella corellas rosella rosellas lorikeet currawong currawongs silvereye silvereyes waxeye waxeyes honeyeater honeyeaters wattlebird wattlebirds bowerbird bowerbirds mynah mynahs myna mynas bulbul bulbuls mousebird mousebirds hornbill hornbills toucan turkey turkeys peacock peacocks peahen peafowl pheasant pheasants partridge quail quails grouse goose geese duck ducks chook rooster roosters cockerel hen chick bantam bantams guineafowl emu emus ostrich gull gulls seagull seagulls woodpecker woodpeckers flicker flickers oriole orioles tanager tanagers waxwing waxwings cardinal cardinals thrasher thrashers catbirds towhee towhees bluebird bluebirds grosbeak cowbirds grackle crow heron swan owl hawk',
  ],
  [
    'THIEF',
    'greenfly blackfly aphids aphid mites beetle caterpillar caterpillars grasshopper grasshoppers locust locusts katydid katydids cicada cicadas worm worms borer borers maggot maggots grub grubs larva larvae earwig earwigs weevil weevils moth moths flies fly bees bee bug bugs leafhoppers armyworms cutworms cutworm webworms hornworm hornworms tentworms termites termite nematodes slug snail psyllids thrips whitefly scale mealybugs bagworms loopers looper sawfly chafers chafer pest pests vermin varmint varmints rascal rascals summat summats sumthing sumthin sth bandit bandits burglar vandal vandals intruder intruders scrumper scrumpers git gits scrote scrotes toerag toerags scumbag lowlife crook crooks thug thugs',
  ],
  [
    // Weather, machines and people's play: what breaks a tree.
    'FORCE',
    'wind winds windstorm gale gales gust gusts storm storms thunderstorm hail hailstones hailstorm hurricane tornado cyclone typhoon derecho squall squalls blizzard snow ice downpour deluge flood floods lightning monsoon haboob sandstorm nor-easter noreaster northerly southerly sirocco mistral heat heatwave sun drought football soccer ball basketball frisbee trampoline drone bike scooter mower lawnmower strimmer trimmer weedwhacker weedeater whippersnipper tractor digger car van truck lorry trolley wheelbarrow ladder',
  ],
  [
    // People and what they play with, clumsy about a tree.
    'CLUMSY',
    'football soccer ball basketball frisbee trampoline drone bike bicycle scooter postman postie courier builder builders scaffolder scaffolders roofer roofers decorator decorators contractor contractors gardener kid kids toddler toddlers child children boy boys girl girls grandson granddaughter grandkids grandchild nephew niece lads yobs hooligans drunk visitor visitors guest guests someone somebody idiot husband wife hubby son daughter',
  ],
  [
    // Eating and robbing, past and going on.
    'GNAWED',
    'ate eaten eating eats scoffed scoffing gobbled gobbling devoured devouring munched munching munches nibbled nibbling nibbles chewed chewing chews chomped chomping chomps gnawed gnawing gnaws pecked pecking pecks browsed browsing grazed grazing bit bitten biting bites stung stinging bored boring bores tunnelled tunneled tunnelling tunneling tunnels burrowed burrowing burrows mined mining rasped rasping skeletonised skeletonized skeletonising skeletonizing defoliated defoliating stripped stripping strips raided raiding raids robbed robbing plundered plundering pillaged pillaging ransacked looted looting stole stolen stealing pilfered filched demolished demolishing annihilated obliterated decimated decimating infested infesting colonised colonized invaded invading sucked sucking snacked snacking feasted feasting gorged gorging wolfed scarfed guzzled partied partying',
  ],
  [
    // Breaking and spoiling, as animals and weather do.
    'WRECKED',
    'shredded shredding tore torn tearing ripped ripping shred slashed destroyed destroying wrecked wrecking ruined ruining spoiled spoilt spoiling trashed trashing ravaged ravaging savaged savaging mauled mauling mangled mangling damaged damaging attacked attacking hammered hammering dug digging uprooted uprooting scratched scratching scraped scraping clawed clawing debarked girdled girdling ringbarked peed peeing weed pissed pooped pooing crapped trampled trampling stomped flattened flattening crushed crushing knocked knocking toppled toppling bowled blew blown blowing snapped snapping broke broken breaking cracked split smashed smashing shattered battered battering thrashed thrashing lashed tossed threw thrown pushed pulled yanked kicked kicking bumped reversed ran crashed drove clipped caught took taken cut chopped sliced nipped nipping snipped topped tipped dropped bruised dented pocked pitted scarred scorched scorching burnt burned burning frazzled cooked cooking fried frying baked roasted toasted bleached singed parched drowned drowning flooded flooding bent bending buckled rocked cleaned cleared polished used stripped backed',
  ],
  [
    // What clumsy people do to a tree.
    'SMASHED',
    'knocked knocking toppled kicked kicking broke broken snapped smashed shattered crushed flattened trampled trampling stomped trod stepped sat fell crashed ran reversed backed bumped bent tore ripped uprooted vandalised vandalized wrecked ruined trashed destroyed drove hit',
  ],

  ['SNIPPED', 'thumbnailed thumbed fingernailed scissored sheared plucked'],

  ['EMPTY', 'dieu sacre bleu zut mamma mia crikey blimey'],
  ['DROPPED', 'yeeted yeet'],
  ['APEX', 'topknot topknots'],
  ['SHOOT', 'topknot topknots'],
  ['SNIPPED', 'guillotined axed skimmed shaved whizzed zipped whisked'],
  ['SAYS', 'convinced adamant'],
  ['WILL', 'owe owes owed'],
  ['OTHERS', 'grandads grandpas nans grannies council city parks hoa church school'],
  // --- what is given, and how
  [
    // Feeds and dressings that mean nothing else in a garden.
    'FEEDSTUFF',
    'fert ferts fertiliser fertilizer feed plantfood manure compost seaweed kelp greensand emulsion fishmeal bonemeal biochar potash epsom gypsum dolomite lime limestone calmag chelate chelates chelated sequestrene sequestered ironite azomite rockdust humate humic fulvic alfalfa lucerne comfrey nettle guano frass castings vermicast vermicompost wormcast wormcasts leafmould leafmold bokashi phosphate superphosphate sulphate sulfate nitrate urea ammonium nitrogen potassium phosphorus magnesium calcium micronutrients microelements nutrients nutrient nutes mycorrhizae mycorrhiza mycorrhizal rootgrow inoculant probiotic growmore phostrogen miracle-gro charlie seasol powerfeed blood bone hoof pellets granules prills spikes spike tonic molasses slurry topdressing biosolids',
  ],
  [
    // Ground covers.
    'FEEDSTUFF',
    'mulch straw hay peastraw woodchip woodchips sawdust seagrass muck dung poo poop droppings topsoil',
  ],
  [
    // What feeds or covers only where it was put.
    'SOILSTUFF',
    'chips bark cardboard gravel grit pebbles perlite vermiculite coir loam ash ashes coffee grounds eggshells eggshell peelings clippings leafage soil mix medium sand peat pumice zeolite tea salts water rainwater bathwater salt',
  ],
  [
    'CAREOBJ',
    'calmag chelate chelated chelates sequestrene comfrey bokashi guano frass leafmould bonemeal potassium magnesium nutes nutrients urea superphosphate biosolids',
  ],
  [
    // Things put on, over, under or by a tree to keep it well.
    'GEAR',
    'net nets netting mesh fleece organza bag bags baggie baggies sock socks stocking stockings tights pantyhose curtain curtains pillowcase pillowcases sleeve sleeves cage cages cloche cloches cover covers cloth shadecloth sheet sheets blanket blankets quilt duvet burlap hessian sacking bubblewrap tarp tarpaulin canopy umbrella brolly parasol awning screen windbreak fence fencing chickenwire wire guard guards collar collars wrap jacket tent greenhouse stake stakes cane canes post posts support supports trellis prop props brace tie ties twine string rope strap straps clips bricks brick block blocks feet castors casters dolly saucer saucers tray trays wheels plate trap traps bait baits decoy decoys scarecrow dripper drippers emitter emitters irrigation sprinkler olla ollas heatmat heater mothballs mousetrap mousetraps rattrap rattraps',
  ],
  [
    // Things that keep raiders off only where they were put up.
    'DECOY',
    'owl hawk snake tape ribbon ribbons foil cds cd balls soap hair bell bells pinwheel pinwheels windmill windmills spikes lights fairylights lamp radio streamers flags balloon balloons bottles kite eyes rags rag tin mirror mirrors',
  ],
  [
    // Ways of putting.
    'PUTTING',
    'put puts putting placed placing set setting laid laying layed spread spreading scattered scattering sprinkled sprinkling strewed strewn poured pouring tipped tipping emptied emptying dumped dumping chucked chucking threw throwing thrown tossed tossing slung slinging flung flinging lobbed lobbing bunged bunging shoved shoving stuck sticking popped popping plonked plonking plopped slapped slapping whacked whacking lashed dolloped ladled spooned shovelled shoveled shovelling shoveling forked barrowed heaped heaping piled piling packed packing tucked tucking worked working dug digging mixed mixing raked raking watered brushed painted dusted dusting sprayed spraying squirted squirting misted drenched rubbed dabbed smeared smearing applied applying added adding gave giving given dosed treated hung hanging draped draping strung stringing wrapped wrapping tied tying fixed fixing fitted fitting rigged rigging erected installed installing hooked pinned clipped clipping secured pegged slipped slipping pulled pulling stretched threaded wound wedged hammered drove banged pushed poked sank sunk buried planted built building made constructed attached strapped lined ringed topdressed mulched fed',
  ],
  [
    'TROUBLE',
    'gnat gnats junebug junebugs maybug maybugs cockchafer cockchafers chafer chafers figeater figeaters',
  ],
  ['PEST', 'junebug junebugs maybug maybugs cockchafer cockchafers chafer chafers figeater figeaters'],
  ['SNIPPED', 'deadheaded deadheading'],
  ['PRUNED', 'deadheaded'],
];
