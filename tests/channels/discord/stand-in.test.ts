import { crc32, deflateSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checkPng } from '../../support/discord/multipart.ts';
import { type StandIn, startStandIn } from '../../support/discord/stand-in.ts';
import type { StandInChannel, StandInUser } from '../../support/discord/world.ts';

// The stand-in itself: that it refuses what Discord's documentation says Discord refuses.

let discord: StandIn;
let channel: StandInChannel;
let ana: StandInUser;
beforeEach(async () => {
  discord = await startStandIn({ nonceWindowMs: 60_000 });
  channel = discord.channel(discord.addGuild('Fig club', ['figs']));
  ana = discord.addUser('Ana');
});
afterEach(() => discord.stop());

const NOBODY = { allowed_mentions: { parse: [] } };

async function call(method: string, path: string, body?: unknown, token = discord.token) {
  const response = await fetch(`${discord.api}/v10${path}`, {
    method,
    headers: { authorization: `Bot ${token}`, 'content-type': 'application/json' },
    ...(body !== undefined && { body: JSON.stringify(body) }),
  });
  const text = await response.text();
  return { status: response.status, headers: response.headers, body: text === '' ? null : JSON.parse(text) };
}

const send = (body: object) => call('POST', `/channels/${channel.id}/messages`, { ...NOBODY, ...body });

describe('the stand-in refuses with 50035', () => {
  const button = (custom_id: string, label = 'x') => ({ type: 2, style: 2, label, custom_id });
  const row = (...components: object[]) => ({ type: 1, components });
  const embed = (more: object) => ({ embeds: [{ title: 't', ...more }] });
  it.each([
    ['content over 2,000', { content: 'x'.repeat(2001) }],
    ['an embed over 6,000 in all', { embeds: [0, 1].map(() => ({ description: 'x'.repeat(3001) })) }],
    ['a description over 4,096', embed({ description: 'x'.repeat(4097) })],
    ['a field’s value over 1,024', embed({ fields: [{ name: 'n', value: 'x'.repeat(1025) }] })],
    ['26 fields', embed({ fields: Array.from({ length: 26 }, () => ({ name: 'n', value: 'v' })) })],
    ['six rows', { content: 'x', components: Array.from({ length: 6 }, (_, n) => row(button(`b${n}`))) }],
    [
      'six buttons in a row',
      { content: 'x', components: [row(...[1, 2, 3, 4, 5, 6].map((n) => button(`b${n}`)))] },
    ],
    ['a custom id over 100', { content: 'x', components: [row(button('x'.repeat(101)))] }],
    ['a custom id that stands twice', { content: 'x', components: [row(button('a'), button('a'))] }],
    ['a nonce over 25', { content: 'x', nonce: 'x'.repeat(26), enforce_nonce: true }],
    ['a key that the API description does not know', { content: 'x', colour: 3 }],
    ['mentions left to a default', { content: 'x', allowed_mentions: undefined }],
  ])('%s', async (_, body) => {
    expect(await send(body)).toMatchObject({ status: 400, body: { code: 50035 } });
    expect(channel.messages).toEqual([]);
  });

  it('26 choices of a completion', async () => {
    const asked = discord.people.complete({ user: ana, channel }, 'tip', 'tree', '');
    const choices = Array.from({ length: 26 }, (_, n) => ({ name: `n${n}`, value: `v${n}` }));
    const answer = await call('POST', `/interactions/${asked.id}/${asked.token}/callback`, {
      type: 8,
      data: { choices },
    });
    expect(answer).toMatchObject({ status: 400, body: { code: 50035 } });
  });
});

describe('the stand-in', () => {
  it('wants the token, and no empty message', async () => {
    expect((await call('GET', '/users/@me', undefined, 'wrong')).status).toBe(401);
    expect(await send({})).toMatchObject({ status: 400, body: { code: 50006 } });
  });

  it('keeps one message a nonce, and forgets nonces after the window', async () => {
    const body = { content: 'x', nonce: 'n', enforce_nonce: true };
    const [first, second] = [await send(body), await send(body)];
    expect(second.body.id).toBe(first.body.id);
    discord.clock.advance(61_000);
    expect((await send(body)).body.id).not.toBe(first.body.id);
    expect(channel.messages).toHaveLength(2);
  });

  it('takes an acknowledgement within 3 s and once, and the token for 15 minutes', async () => {
    const ask = () => discord.people.command({ user: ana, channel }, 'help');
    const acknowledge = ({ id, token }: { id: string; token: string }) =>
      call('POST', `/interactions/${id}/${token}/callback`, { type: 5, data: { flags: 64 } });
    const edit = ({ token }: { token: string }) =>
      call('PATCH', `/webhooks/${discord.world.applicationId}/${token}/messages/%40original`, {
        ...NOBODY,
        content: 'x',
      });
    const late = ask();
    discord.clock.advance(3001);
    expect(await acknowledge(late)).toMatchObject({ status: 404, body: { code: 10062 } });
    const good = ask();
    expect(await edit(good)).toMatchObject({ status: 404, body: { code: 10015 } });
    expect((await acknowledge(good)).status).toBe(204);
    expect(await acknowledge(good)).toMatchObject({ status: 400, body: { code: 40060 } });
    expect((await edit(good)).status).toBe(200);
    expect(good.original?.ephemeral).toBe(true);
    discord.clock.advance(15 * 60_000);
    expect(await edit(good)).toMatchObject({ status: 401, body: { code: 50027 } });
  });

  it('tells of its rate limits as Discord does', async () => {
    await discord.stop();
    discord = await startStandIn({ globalPerSecond: 2 });
    const answers = [];
    for (let n = 0; n < 3; n++) answers.push(await call('GET', '/users/@me'));
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 429]);
    expect(answers[2]?.headers.get('x-ratelimit-global')).toBe('true');
    expect(answers[2]?.body).toMatchObject({ global: true, retry_after: expect.any(Number) });
  });

  it('takes no picture that is not a whole PNG', () => {
    const chunk = (type: string, data: Buffer) => {
      const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
      const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
      length.writeUInt32BE(data.length);
      sum.writeUInt32BE(crc32(body));
      return Buffer.concat([length, body, sum]);
    };
    const header = Buffer.from([0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0]);
    const signature = Buffer.from('89504e470d0a1a0a', 'hex');
    const parts = [
      chunk('IHDR', header),
      chunk('IDAT', deflateSync(Buffer.alloc(2))),
      chunk('IEND', Buffer.alloc(0)),
    ];
    const png = Buffer.concat([signature, ...parts]);
    expect(checkPng('p', png)).toEqual([]);
    expect(checkPng('p', png.subarray(0, -1))).toEqual(['p: cut off']);
    expect(checkPng('p', Buffer.concat([signature, ...parts.slice(0, 2)]))).toEqual(['p: chunks IHDR IDAT']);
    expect(checkPng('p', Buffer.from('GIF89a'))).toEqual(['p: no PNG signature']);
    png[20] = 9;
    expect(checkPng('p', png)).toEqual(['p: checksum of a chunk']);
  });
});
