import type { OptionDefinition } from './feature.ts';

/** An option with a fixed set of values; each value with what people are shown for it. */
export function choiceOption(
  name: string,
  description: string,
  labels: Readonly<Record<string, string>>,
): OptionDefinition {
  return {
    name,
    type: 'choice',
    description,
    choices: Object.entries(labels).map(([value, label]) => ({ value, label })),
  };
}

/** "Which tree", completed while it is typed. */
export const WHICH_TREE = {
  name: 'tree',
  type: 'text',
  complete: 'tree',
  maxLength: 100,
  description: 'which tree',
} as const satisfies OptionDefinition;
