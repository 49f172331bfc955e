import { type AddressInfo, connect, createServer, type Server, type Socket } from 'node:net';

/**
 * A TCP proxy between a client and a server that can fail in the ways networks do: refuse, cut, or fall silent
 * with the connection still standing.
 */
export class FaultProxy {
  readonly #target: { host: string; port: number };
  readonly #server: Server;
  readonly #pairs = new Set<readonly [Socket, Socket]>();
  #mode: 'open' | 'refuse' | 'silent' = 'open';

  private constructor(target: { host: string; port: number }) {
    this.#target = target;
    this.#server = createServer((client) => this.#accept(client));
  }

  static async to(host: string, port: number): Promise<FaultProxy> {
    const proxy = new FaultProxy({ host, port });
    await new Promise<void>((resolve) => proxy.#server.listen(0, '127.0.0.1', resolve));
    return proxy;
  }

  get port(): number {
    return (this.#server.address() as AddressInfo).port;
  }

  /** The server is down: what stands is cut, what comes is cut at once. */
  refuse(): void {
    this.#mode = 'refuse';
    this.cut();
  }

  /** The network swallows everything: nothing is passed on, nothing is closed, new connections stand too. */
  silence(): void {
    this.#mode = 'silent';
    for (const [client, server] of this.#pairs) {
      client.unpipe(server);
      server.unpipe(client);
      client.resume();
      server.resume();
    }
  }

  /** New connections pass again; what was silenced stays so, as a firewall that forgot a connection leaves it. */
  open(): void {
    this.#mode = 'open';
  }

  cut(): void {
    for (const [client, server] of this.#pairs) {
      client.destroy();
      server.destroy();
    }
    this.#pairs.clear();
  }

  async close(): Promise<void> {
    this.cut();
    await new Promise((resolve) => this.#server.close(resolve));
  }

  #accept(client: Socket): void {
    client.on('error', () => {});
    if (this.#mode === 'refuse') {
      client.destroy();
      return;
    }
    const server = connect(this.#target.port, this.#target.host);
    server.on('error', () => client.destroy());
    const pair = [client, server] as const;
    this.#pairs.add(pair);
    client.on('close', () => {
      server.destroy();
      this.#pairs.delete(pair);
    });
    server.on('close', () => client.destroy());
    if (this.#mode === 'silent') {
      client.resume();
      return;
    }
    client.pipe(server);
    server.pipe(client);
  }
}
