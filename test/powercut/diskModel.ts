import { readFileSync } from 'node:fs';

/** One thing the program did to a file, in the order it did it. */
export interface DiskOp {
  readonly op: 'W' | 'T' | 'S' | 'C' | 'U' | 'M';
  readonly name: string;
  /** Where a write begins, or the new length. */
  readonly offset: number;
  readonly data: Buffer;
}

const HEAD_BYTES = 15;

/** What `record.c` wrote. */
export function readRecord(file: string): DiskOp[] {
  const bytes = readFileSync(file);
  const ops: DiskOp[] = [];
  for (let at = 0; at < bytes.length; ) {
    const nameEnd = at + HEAD_BYTES + bytes.readUInt16LE(at + 1);
    const dataEnd = nameEnd + bytes.readUInt32LE(at + 11);
    ops.push({
      op: String.fromCharCode(bytes.readUInt8(at)) as DiskOp['op'],
      name: bytes.toString('utf8', at + HEAD_BYTES, nameEnd),
      offset: Number(bytes.readBigUInt64LE(at + 3)),
      data: bytes.subarray(nameEnd, dataEnd),
    });
    at = dataEnd;
  }
  return ops;
}

/** What became of one write that no sync had confirmed: kept, dropped, or some of its sectors. */
export type Fate = 'kept' | 'dropped' | readonly boolean[];

export const SECTOR = 512;

/**
 * A disk as a power cut may leave it: what was synced is there; of every later write to that file each may be there, may not, or may
 * be there in part. Names are made and removed in order.
 */
export class DiskModel {
  private readonly files = new Map<string, { image: GrowingImage; pending: DiskOp[] }>();

  apply(op: DiskOp): void {
    const file = this.files.get(op.name) ?? { image: new GrowingImage(), pending: [] };
    if (op.op === 'U') this.files.delete(op.name);
    else if (op.op === 'M') {
      this.files.delete(op.name);
      this.files.set(op.data.toString(), file);
    } else {
      this.files.set(op.name, file);
      if (op.op === 'C') file.pending.push({ ...op, op: 'T', offset: 0 });
      else if (op.op === 'S') for (const pending of file.pending.splice(0)) file.image.put(pending, 'kept');
      else file.pending.push(op);
    }
  }

  /** Bytes of every file after a cut now; `decide` says what becomes of each unconfirmed write. */
  cut(decide: (op: DiskOp, isLast: boolean) => Fate): Map<string, Buffer> {
    const disk = new Map<string, Buffer>();
    for (const [name, { image, pending }] of this.files) {
      const left = image.copy();
      for (const [index, op] of pending.entries()) left.put(op, decide(op, index === pending.length - 1));
      disk.set(name, left.bytes());
    }
    return disk;
  }
}

class GrowingImage {
  constructor(
    private buffer = Buffer.alloc(0),
    private length = 0,
  ) {}

  copy(): GrowingImage {
    return new GrowingImage(Buffer.from(this.buffer.subarray(0, this.length)), this.length);
  }

  bytes(): Buffer {
    return this.buffer.subarray(0, this.length);
  }

  put({ op, offset, data }: DiskOp, fate: Fate): void {
    if (fate === 'dropped') return;
    if (op === 'T') this.resize(offset);
    else if (fate === 'kept') this.write(offset, data);
    else {
      for (const [sector, isKept] of fate.entries()) {
        if (isKept) this.write(offset + sector * SECTOR, data.subarray(sector * SECTOR, (sector + 1) * SECTOR));
      }
    }
  }

  private write(offset: number, data: Buffer): void {
    if (offset + data.length > this.length) this.resize(offset + data.length);
    data.copy(this.buffer, offset);
  }

  /** What is added is zeros, as on a disk. */
  private resize(length: number): void {
    if (length > this.buffer.length) {
      const wider = Buffer.alloc(Math.max(length, this.buffer.length * 2));
      this.buffer.copy(wider, 0, 0, this.length);
      this.buffer = wider;
    }
    if (length < this.length) this.buffer.fill(0, length, this.length);
    this.length = length;
  }
}
