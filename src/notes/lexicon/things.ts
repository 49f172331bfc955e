import { wordSet } from './word-set.ts';

/**
 * Everyday things, beasts and people that are no part of a fig tree: a number before one, or a verb of the trade
 * with one for its object or its doer, says nothing of figs or shoots ("king has 3 visitors", "dropped the phone").
 */
const LINES: readonly string[] = [
  // house and yard
  'chair chairs bench benches table tables ladder ladders barrow barrows wheelbarrow wheelbarrows can cans saucer saucers bin bins skip trailer hose hoses reel sprinkler sprinklers timer timers tap taps valve valves butt butts drum drums barrels pallet pallets plank planks post posts panel panels gate gates hinge hinges latch bolt bolts screw screws nail washer washers hammock swing swings slide trampoline sandpit birdbath feeder feeders statue gnome gnomes sundial pond liner pump pumps filter dripper drippers emitter emitters fitting fittings connector connectors',
  'lamp lamps light lights lantern candle candles bottle bottles glass glasses vase vases umbrella parasol gazebo tent curtain curtains cushion cushions rug carpet sofa bed mattress pillow duvet fridge freezer oven kettle toaster blender mixer spoon spoons whisk tin tins lid lids plug plugs',
  'phone phones wallet purse key keys ring rings watch watches earring earrings lens camera cameras tripod drone drones battery batteries charger cable cables radio speaker laptop tablet book books magazine magazines newspaper letter letters parcel parcels envelope stamp card cards ticket tickets receipt bill bills coin coins tenner fiver cash pen pens pencil pencils marker markers label labels tag tags sticker stickers',
  'hat hats coat coats scarf boot boots shoe shoes sock socks glove gloves jumper jacket apron',
  'saw saws hammer axe mattock fork forks spade spades shovel shovels rake rakes trowel trowels dibber sieve riddle secateurs pruners loppers shears snips clippers knife knives scissors twine string wire wires chain peg pegs clip clips tie ties cane canes stake stakes trellis arch pergola cloche cloches net nets netting fleece mesh membrane tarp tarpaulin sheet sheets rope',
  'brick bricks slab slabs tile tiles stone stones rock rocks pebble pebbles rubble gravel sand cement paint bleach ash embers charcoal ball balls frisbee kite bat racket bike bikes scooter pram pushchair car cars van truck lorry bus train plane tractor digger mower strimmer chainsaw shredder wheel wheels castor castors caster casters',
  // beasts that eat no figs, and those that do
  'dog dogs puppy cat cats kitten kittens rabbit rabbits hamster tortoise hen hens chicken chickens cockerel duck ducks goose geese pigeon pigeons crow crows magpie magpies fox foxes badger badgers hedgehog hedgehogs vole voles mole moles toad toads frog frogs newt newts snake snakes lizard lizards gecko geckos snail snails slug slugs caterpillar caterpillars beetle beetles ant ants wasp wasps bee bees bumblebee hornet hornets spider spiders ladybird ladybirds ladybug ladybugs butterfly butterflies moth moths fly flies dragonfly grasshopper grasshoppers cricket crickets mantis nest nests hive egg eggs chick chicks feather feathers aphid aphids weevil weevils grub grubs maggot maggots larva larvae earwig earwigs worm worms mealybug mealybugs hummingbird hummingbirds finch finches sparrow sparrows robin robins wren wrens',
  // what else grows, is cooked or cut
  'weed weeds moss lichen mushroom mushrooms toadstool toadstools nettle nettles bramble brambles bindweed ivy hedge lawn grass dandelion dandelions daisy daisies flower flowers bloom blooms rose roses dahlia dahlias lavender rosemary basil mint thyme sage parsley log logs stump seed seeds seedling seedlings sapling saplings shrub shrubs log',
  'beer beers wine coffee tea juice cola milk water soup pasta pizza burger burgers sausage sausages bacon ham steak fish prawn prawns sandwich sandwiches bread toast butter biscuit biscuits cracker crackers cookie cookies cake cakes pie pies chocolate chocolates sweet sweets icecream crisps chips donut donuts croissant pasty nuts',
  'scab scabs spot spots hole holes crack cracks wound wounds scar scars bruise bruises blister blisters mark marks scratch scratches gall galls web webs cobweb cobwebs thorn thorns',
  // people
  'visitor visitors guest guests people person persons neighbour neighbours neighbor neighbors friend friends fan fans admirer admirers follower followers customer customers buyer buyers offer offers bid bids owner owners kid child children baby toddler builder builders gardener gardeners postman postie courier plumber painter painters tenant',
  // what is counted of other matters
  'photo photos pic pics picture pictures snap snaps shot shots video videos selfie selfies comment comments like likes reply replies message messages question questions mention mentions vote votes star stars point points mile miles hour hours minute minutes seconds day days week weeks month months year years season seasons summer summers winter winters degree degrees inch inches foot feet metre metres meter meters litre litres liter liters gallon gallons problem problems issue issues reason reasons thing thing type types kind kinds sort sorts name names nickname nicknames idea ideas hint hints subject topic plan plans try tries attempt attempts chance chances goes turn turns job jobs chore chores task tasks step steps trip trips visit visits',
  'sucker suckers trunk trunks root roots rootlet rootlets pot pots tub saucer layer layers graft grafts bud buds node nodes leaf leaves flush flushes',
];

/** Names of such things. */
export const THINGS: ReadonlySet<string> = wordSet(LINES.join(' '));
