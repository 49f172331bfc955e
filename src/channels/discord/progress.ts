import { describeError } from '../../log.ts';
import type { Exchange } from './exchange.ts';
import type { Kit } from './kit.ts';
import { editOriginal } from './post.ts';
import { renderSentence } from './render.ts';

export interface Progress {
  /** Shows how far long work has come, in place of the placeholder; not oftener than it can be read. */
  readonly show: (text: string) => void;
  /** Waits for what is being shown, so that it cannot come after the answer. */
  readonly end: () => Promise<void>;
}

const EVERY_MS = 2500;

export function progressIn(kit: Kit, { ticket, waiting }: Exchange): Progress {
  let last = performance.now();
  let showing: Promise<unknown> = Promise.resolve();
  let ended = false;
  return {
    show: (text) => {
      // A pressed button has no placeholder: its message must stay as it is.
      if (ended || waiting === 'button' || performance.now() - last < EVERY_MS) return;
      last = performance.now();
      showing = editOriginal(kit.rest, ticket, renderSentence(text)).catch((error: unknown) =>
        kit.log.debug({ error: describeError(error) }, 'progress not shown'),
      );
    },
    end: async () => {
      ended = true;
      await showing;
    },
  };
}
