import { connect, createServer, type AddressInfo, type Socket } from 'node:net';

const HOST = '127.0.0.1';

/** The way between the phone and the service, which a test can cut: also between a request and its answer. */
export interface Line {
  readonly address: string;
  cut(): void;
  /** What is asked from now on reaches nobody, and no refusal comes back: a phone with one bar. */
  hold(): void;
  restore(): void;
  close(): Promise<void>;
}

/** A line to the service at `target`. */
export async function openLine(target: string): Promise<Line> {
  const port = Number(new URL(target).port);
  const open = new Set<Socket>();
  let isCut = false;
  let isHeld = false;
  const server = createServer((phone) => {
    if (isCut) {
      phone.destroy();
      return;
    }
    if (isHeld) {
      open.add(phone);
      phone.on('error', () => phone.destroy());
      return;
    }
    const service = connect(port, HOST);
    for (const [from, to] of [
      [phone, service],
      [service, phone],
    ] as const) {
      open.add(from);
      from.on('error', () => from.destroy());
      from.on('close', () => {
        open.delete(from);
        to.destroy();
      });
      from.pipe(to);
    }
  });
  await new Promise<void>((resolve) => server.listen(0, HOST, resolve));
  const drop = () => open.forEach((socket) => socket.destroy());
  return {
    address: `http://${HOST}:${(server.address() as AddressInfo).port}`,
    cut: () => {
      isCut = true;
      drop();
    },
    hold: () => {
      isHeld = true;
      drop();
    },
    restore: () => {
      isCut = isHeld = false;
    },
    close: async () => {
      drop();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
