import { createServer, type RequestListener, type Server } from "node:http";
import {
  type AddressInfo,
  createServer as createTcpServer,
  type Socket,
  type Server as TcpServer,
} from "node:net";

export interface Loopback {
  readonly url: string;
  readonly port: number;
  close(): Promise<void>;
}

/** An HTTP server on a free loopback port. */
export function serveHttp(listener: RequestListener): Promise<Loopback> {
  const server = createServer(listener);
  return opened(server, () => server.closeAllConnections());
}

/** A bare TCP server on a free loopback port, for what an HTTP server would be too polite to send. */
export function serveTcp(onSocket: (socket: Socket) => void): Promise<Loopback> {
  const sockets = new Set<Socket>();
  const server = createTcpServer((socket) => {
    sockets.add(socket);
    socket.on("error", () => undefined).on("close", () => sockets.delete(socket));
    onSocket(socket);
  });
  return opened(server, () => {
    for (const socket of sockets) socket.destroy();
  });
}

/** Any server that listens, with what ends its connections. */
export async function opened(server: Server | TcpServer, hangUp: () => void): Promise<Loopback> {
  await new Promise<void>((ready) => {
    server.listen(0, "127.0.0.1", ready);
  });
  const { port } = server.address() as AddressInfo;
  const close = () =>
    new Promise<void>((closed) => {
      server.close(() => closed());
      hangUp();
    });
  return { url: `http://127.0.0.1:${port}`, port, close };
}
