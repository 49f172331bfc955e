import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { escapeText, splitText } from '../../../src/channels/discord/escape.ts';
import { isLong, renderBrief, renderReply } from '../../../src/channels/discord/render.ts';
import { reply } from '../../../src/club/reply.ts';
import { asShown, DiscordClub } from '../../support/discord/club.ts';
import { checkMessage } from '../../support/discord/limits.ts';
import { checkBody } from '../../support/discord/schemas.ts';

const NASTY = fc.string({
  unit: fc.oneof(
    { weight: 3, arbitrary: fc.constantFrom(...'*_~`|<>[]()@#:-+.\\/!&1 \n') },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        '@everyone',
        '@here',
        '<@123456789012345678>',
        '<@&1>',
        '```',
        '||',
        '<t:1:R>',
        '<a:x:1>',
        'https://evil.example',
        '[x](https://evil.example)',
        '# ',
        '> ',
        '-# ',
        '1. ',
        '- ',
      ),
    },
    { weight: 1, arbitrary: fc.string({ unit: 'grapheme', minLength: 1, maxLength: 2 }) },
  ),
});

/** Marks that stand without a backslash of their own, and so would mean something to Discord. */
function activeMarks(escaped: string): string[] {
  const plain = escaped.replaceAll(/\\[^0-9A-Za-z\s]/g, 'x').replaceAll(/<#\d{15,21}>/g, '');
  return plain.match(/[*_~`|<>[\]@#\\]|:\/\/|^\s*(?:[-+]|\d+\.)\s/gm) ?? [];
}

describe('text a member types', () => {
  it('keeps no mark that Discord gives a meaning to, and reads as it was typed', () => {
    fc.assert(
      fc.property(NASTY, (text) => {
        const escaped = escapeText(text);
        expect(activeMarks(escaped)).toEqual([]);
        const unseen = /(?!\n)\p{Cc}|[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;
        expect(asShown(escaped)).toBe(text.replaceAll(unseen, ' ').replaceAll('\u200b', ''));
      }),
      { numRuns: 2000 },
    );
  });

  it('is split without breaking an escape, and without losing anything but spaces', () => {
    fc.assert(
      fc.property(NASTY, fc.integer({ min: 20, max: 200 }), (text, limit) => {
        const pieces = splitText(escapeText(text), limit);
        expect(pieces.every((piece) => piece.length <= limit)).toBe(true);
        for (const piece of pieces)
          expect(activeMarks(piece).filter((mark) => !/\s$/.test(mark))).toEqual([]);
        const bare = (all: string) => all.replaceAll(/\s/g, '');
        expect(bare(pieces.map(asShown).join(''))).toBe(bare(asShown(escapeText(text))));
      }),
      { numRuns: 2000 },
    );
  });

  it('in any place of any reply makes a message that Discord takes and that pings nobody', () => {
    const parts = fc.record({
      title: NASTY,
      text: fc.oneof(
        NASTY,
        NASTY.map((text) => text.repeat(200)),
      ),
      fields: fc.array(fc.record({ name: NASTY, value: NASTY }), { maxLength: 60 }),
      buttons: fc.array(fc.record({ label: NASTY, action: fc.string({ minLength: 1, maxLength: 90 }) }), {
        maxLength: 30,
      }),
    });
    fc.assert(
      fc.property(parts, (given) => {
        const made = reply(given);
        const options = {
          ownerId: '123456789012345678',
          clubId: 7,
          ...(isLong(made) && { paging: { id: 3, page: 1 } }),
        };
        const { body } = renderReply(made, options);
        expect(checkBody('message-create', body)).toEqual([]);
        expect(checkMessage(body)).toEqual([]);
        expect(body.allowed_mentions).toEqual({ parse: [] });
        const brief = renderBrief({ ...made, brief: given.text || 'x' }, options).body;
        expect(checkMessage(brief)).toEqual([]);
        expect(brief.allowed_mentions).toEqual({ parse: [] });
      }),
      { numRuns: 500 },
    );
  });
});

describe('through the whole assistant', () => {
  let club: DiscordClub;
  beforeAll(async () => {
    club = await DiscordClub.open();
  });
  afterAll(() => club.close());

  it('no name or note pings, breaks formatting or reaches a log', async () => {
    const name = '@everyone **Alma** <@123456789012345678>';
    await club.run('tree add', { name, cultivar: 'Alma' });
    await club.run('note', { text: `3 fruitlets, said @here ||hush-word||`, tree: name });
    await club.say(`3 fruitlets on ${name} hush-word`);
    await club.run('tree show', { tree: 'hush-word' });
    const list = await club.run('tree list');
    expect(list.all).toContain(name);
    for (const sent of club.discord.posted) {
      const { content, embeds } = sent.api;
      const texts = [
        content,
        ...embeds.flatMap((e) => [
          e.title,
          e.description,
          ...(e.fields ?? []).flatMap((f) => [f.name, f.value]),
        ]),
      ];
      for (const text of texts) expect(activeMarks(text ?? '')).toEqual([]);
    }
    for (const { path, body } of club.discord.requests) {
      const mentions = JSON.stringify(body ?? {}).match(/"allowed_mentions":\{[^}]*\}/g) ?? [];
      for (const allowed of mentions) expect(allowed, path).toBe('"allowed_mentions":{"parse":[]}');
    }
    const log = club.logged.join('');
    for (const word of ['Alma', 'hush-word', 'everyone', club.discord.token, 'token-'])
      expect(log).not.toContain(word);
    club.discord.assertClean();
  });
});
