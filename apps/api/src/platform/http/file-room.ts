import { Inject, Injectable } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Config } from '../../config/config.js';
import { CONFIG } from '../../config/config.token.js';
import { Refusal } from '../errors/refusal.js';
import { Gauges } from '../operations/gauges.js';
import { whenServed } from './served.js';

const MIB = 1024 * 1024;
/** No file may be larger, and no account may have more of them in memory at a time. */
export const LARGEST_FILE_BYTES = 32 * MIB;
/** So large a file comes in, or is written, in a few seconds over a good line. */
const WAIT_S = 5;

class TooManyFiles extends Refusal {
  override readonly retryAfterSeconds = WAIT_S;

  constructor() {
    super(
      'files.too-many',
      'too-many-requests',
      'Another file of yours is on its way already. Send one after the other.',
    );
  }
}

class NoRoomForFiles extends Refusal {
  override readonly retryAfterSeconds = WAIT_S;

  constructor() {
    super('files.no-room', 'unavailable', 'Too many large files are on their way. Try again in a moment.');
  }
}

/**
 * Room in the memory of this process for whole files, which are held there while they come in or leave. It is taken
 * before the first byte is read or written, and given back when the request has been served.
 */
@Injectable()
export class FileRoom {
  private readonly byOwner = new Map<string, number>();
  private readonly most: number;
  private inUse = 0;

  constructor(@Inject(CONFIG) { fileRoomMib }: Pick<Config, 'fileRoomMib'>, gauges: Gauges) {
    this.most = fileRoomMib * MIB;
    gauges.add({
      name: 'loamledger_file_bytes',
      help: 'Room in memory that is set aside for files on their way.',
      read: () => this.inUse,
    });
  }

  /**
   * Sets `bytes` aside for a file of the account until the request has been served.
   * @throws TooManyFiles, or NoRoomForFiles where others have it all.
   */
  take(accountId: string, bytes: number, request: FastifyRequest, reply: FastifyReply): void {
    const own = this.byOwner.get(accountId) ?? 0;
    if (own + bytes > LARGEST_FILE_BYTES) throw new TooManyFiles();
    if (this.inUse + bytes > this.most) throw new NoRoomForFiles();
    this.change(accountId, bytes);
    whenServed(request, reply, () => this.change(accountId, -bytes));
  }

  /** Bytes that are set aside. */
  get taken(): number {
    return this.inUse;
  }

  private change(accountId: string, bytes: number): void {
    const own = (this.byOwner.get(accountId) ?? 0) + bytes;
    if (own > 0) this.byOwner.set(accountId, own);
    else this.byOwner.delete(accountId);
    this.inUse += bytes;
  }
}
