import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyRequest } from 'fastify';
import { FileRoom } from '../../platform/http/file-room.js';
import { Callers } from './callers.js';
import { notSignedIn } from './not-signed-in.js';

/** A type of file that some route takes. */
export interface FileType {
  readonly type: string;
  readonly limitBytes: number;
  /** Whether one takes far more room than it has bytes, while it is looked through. */
  readonly isCostly?: boolean;
}

/**
 * Asks who sends a file before any of it is read, and whether there is room for it: files are far larger than messages,
 * and a stranger, or a member who sends many at once, could fill the memory with those that are refused afterwards.
 * @param smallBytes as large as a body may be that is read from anybody.
 */
export function refuseFilesWithoutRoom(
  app: NestFastifyApplication,
  types: readonly FileType[],
  smallBytes: number,
): void {
  const [callers, room] = [app.get(Callers), app.get(FileRoom)];
  app
    .getHttpAdapter()
    .getInstance()
    .addHook('onRequest', async (request, reply) => {
      const file = types.find(({ type }) => request.headers['content-type']?.toLowerCase().startsWith(type));
      if (!file?.isCostly && !mayBeLarge(request, smallBytes)) return;
      const caller = await callers.of(request, null);
      if (!caller) throw notSignedIn();
      // What no route takes is refused unread.
      if (file) room.take(caller.accountId, roomFor(file, request), request, reply);
    });
}

function mayBeLarge({ headers }: FastifyRequest, smallBytes: number): boolean {
  // Messages have a limit of their own.
  if (headers['content-type']?.startsWith('application/json')) return false;
  const length = headers['content-length'];
  return length === undefined ? headers['transfer-encoding'] !== undefined : Number(length) > smallBytes;
}

/** As many bytes as are announced; as many as there may be where none are, or where they are the least of it. */
function roomFor({ limitBytes, isCostly }: FileType, { headers }: FastifyRequest): number {
  const announced = Number(headers['content-length'] ?? limitBytes);
  return isCostly || !(announced <= limitBytes) ? limitBytes : announced;
}
