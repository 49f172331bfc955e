import type { Ask } from '../notes/contract.ts';
import type { Tree } from '../records/schema.ts';
import { KIND_LABELS } from './event-words.ts';
import type { Button } from './reply.ts';
import { listWords } from './words.ts';

export interface Question {
  readonly title: string;
  readonly text: string;
  readonly buttons: readonly Button[];
}

const MOST_CHOICES = 5;

/** The one question that a note leaves, with a button for each likely answer: `answer:<note id>:…`. */
export function askWords(ask: Ask, noteId: number, roster: readonly Tree[]): Question {
  const button = (label: string, part: string): Button => ({ label, action: `answer:${noteId}:${part}` });
  switch (ask.what) {
    case 'tree': {
      const trees = ask.trees
        .flatMap((id) => roster.find((tree) => tree.id === id) ?? [])
        .slice(0, MOST_CHOICES);
      // With few trees any of them may be meant.
      const offered = trees.length > 0 || roster.length > MOST_CHOICES ? trees : roster;
      return {
        title: 'Which tree?',
        text: treeQuestion(trees, roster, offered.length > 0),
        buttons: offered.map((tree) => button(tree.name, `tree:${tree.id}`)),
      };
    }
    case 'kind': {
      const kinds = ask.kinds.slice(0, MOST_CHOICES);
      return {
        title: 'What did you see?',
        text: 'I could not tell what it was, so nothing was logged of it. Press what fits, or write it in other words.',
        buttons: kinds.map((kind) => button(KIND_LABELS[kind], `kind:${kind}`)),
      };
    }
    case 'date':
      return {
        title: 'Which day?',
        text: `${ask.phrase === undefined ? 'I could not place the day' : `I could not place "${ask.phrase}"`}, so nothing was logged of it. Press one, or type the day, such as "June 20".`,
        buttons: [button('Today', 'on:0'), button('Yesterday', 'on:1')],
      };
    case 'crop':
      return {
        title: 'Brebas or main crop?',
        text: 'Brebas sit on last year’s wood, below the leaves; the main crop sits on this year’s green shoots, at the leaves.',
        buttons: [button('Brebas', 'crop:breba'), button('Main crop', 'crop:main')],
      };
  }
}

function treeQuestion(trees: readonly Tree[], roster: readonly Tree[], isOffered: boolean): string {
  if (roster.length === 0) {
    return 'You have no trees on your list yet, so nothing was logged. Add one with /tree add name: and its name, then send the note again.';
  }
  if (trees.length === 0) {
    const how = isOffered ? 'Press it, or type its name' : 'Type its name as your list has it';
    return `I could not tell which of your trees that is, so nothing was logged of it. ${how}; a new one is added with /tree add.`;
  }
  if (trees.length === 1) return `Did you mean ${trees[0]?.name}? Press it, or type another name.`;
  return `That could be ${listWords(trees.map(({ name }) => name))}. Press the one you mean, or type its name.`;
}
