import { wordSet } from './word-set.ts';

/** Common first names that are no everyday word with an s behind them ("marks", "bills" are left out). */
const FIRST_NAMES = wordSet(`
  aaron abdul abigail adam adele adrian agnes ahmed aidan aisha alan albert alejandro alex alexander alexandra alexei
  alfie alfred ali alice alicia alison allan allen amanda amber amelia amina amir amy ana andre andrea andreas andrew
  andy angela angie angus anita anna anne annie anthony antonio arash archie arjun arthur ashley audrey barbara barbie
  barney barry bea beatrice becca becky ben benny bernard bernie bert beryl beth betty beverley billy bob bobby boris
  brad brandon brenda brian bridget bruce bryan caitlin cameron carla carlo carlos carmen carol caroline carrie catherine
  cathy cecil charlie charlotte chen cheryl chloe chris christina christine cindy claire clare claude clive colette
  colin connor courtney craig cynthia daisy dan daniel danny daphne darren dave david dawid deb debbie deborah deepak
  deirdre denise dennis derek diana diane diego dmitri dmitry dom dominic donald donna doreen doris dorothy doug douglas
  duncan dylan eddie edith edna edward eileen elaine eleanor elena eli elizabeth ella ellen ellie elsie emily emma eric
  erin ernie esther ethan eugene eva evan evelyn fatima felix fiona flo florence fran frances francesca francis fred
  freda freddie gabriel gail gareth garry gary gavin geoff george georgia gerald gerry gina giovanni giulia gladys glen
  glenda glenn gloria gordon graham greg gregory greta gwen hamid hannah harold harriet harry hassan hazel heather
  hector heidi helen helga henry hilda holly howard hugh hugo ian ida ingrid irene isaac isabel isla ivan ivor ivy jackie
  jacob jade jake james jamie jan jane janet janice jason javier jean jeff jeffrey jen jenna jennifer jenny jeremy jerry
  jess jesse jessica jessie jill jim jimmy joan joanna joanne joe joel johan john johnny jon jonathan jorge jose josef
  joseph josh joshua juan judith judy julia julian julie justin karen karl kate kath kathleen kathy katie kay keith
  kelly ken kenneth kenny kerry kev kevin kim kirsten kyle larry laura lauren laurie leanne len lenny leo leon les lesley
  leslie lewis liam lilian lily linda lisa liz lizzie lloyd lois lorna lorraine lou louis louisa louise luca lucas lucia
  lucy luigi luis luke lynn lynne mabel maggie malcolm mandy marco marcus margaret margie maria marian marie marilyn
  mario marion marjorie marko martha martin marty mary matilda matt matteo matthew maureen maurice mavis megan meera
  mehmet melanie melissa mia michael michelle miguel mike millie miriam mohammed moira molly monica morag muhammad
  muriel mustafa nadia nancy naomi natalie natasha nathan neil nell nellie nigel nikki nina noah noel nora norah norma
  norman oliver olivia olga omar oscar owen pablo paddy pam pamela paolo patricia patrick paul paula pauline pedro peggy
  percy pete peter phil philip phoebe phyllis pierre polly priya rachel raj ralph ramon ravi raymond rebecca reg
  reggie rhona ricardo richard ricky rita robbie robert roberta roger roland ron ronald ronnie rory rosa rosemary rosie
  ross roy ruby rupert russ russell ruth ryan sal sally sam samantha samir samuel sandra sanjay sara sarah scott sean
  sergio shane sharon shaun sheila shirley sid sidney simon sofia sonia sophie stacey stan stanley stella steph stephanie
  stephen steve steven stewart stuart sunil susan susie suzanne sven sylvia tamara tania tanya tara ted terence teresa
  terry thelma theo theresa thomas tim timothy tina tobias toby todd tom tommy toni tony tracey tracy trevor tricia
  valerie vanessa vera vernon veronica vicky victor victoria vikram vince vincent violet viv vivian vlad walter wanda
  wayne wendy wilf wilfred winnie yasmin yolanda yuki yusuf yvonne zach zara zoe
`);

/** "daves", "karens", "wendys": a first name with the possessor's s and no apostrophe. */
export function isPossessorName(typed: string): boolean {
  const word = typed.toLowerCase();
  return word.endsWith('s') && (FIRST_NAMES.has(word.slice(0, -1)) || FIRST_NAMES.has(word));
}
