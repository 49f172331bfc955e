import { loadMeasure } from './measure.ts';
import { fileName } from './names.ts';
import { type Picture, WIDTH } from './picture.ts';
import { paint } from './render.ts';
import { treeAlt } from './tree-alt.ts';
import { treeDrawing, treeFacts } from './tree-drawing.ts';
import type { TreePictureInput } from './tree-input.ts';

/**
 * A tree's season: its notes on a time line, its ripe window against heat end and first frost, its decision
 * date and today. Never throws for what a member typed.
 */
export async function drawTree(input: TreePictureInput): Promise<Picture> {
  const measure = await loadMeasure();
  const facts = treeFacts(input);
  const drawing = treeDrawing(input, facts, measure);
  return {
    name: fileName('tree', input.tree, input.season.label),
    bytes: await paint(drawing, measure),
    alt: treeAlt(input, facts),
    width: WIDTH,
    height: drawing.height,
  };
}
