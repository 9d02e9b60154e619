import { closeSync, fsyncSync, openSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Names inside a data folder and inside a backup folder. */
const DATA_FILE = 'ebbline.db';
export const KEYS_FILE = 'keys.json';
export const LOCK_FILE = 'ebbline.lock';
export const BACKUP_FILE = 'backup.json';

export function dataFileOf(folder: string): string {
  return join(folder, DATA_FILE);
}

/** Whole or not at all, and on the disk when it returns. */
export function writeDurably(file: string, text: string): void {
  const part = `${file}.part`;
  writeFileSync(part, text, { mode: 0o600 });
  syncFile(part);
  renameSync(part, file);
  syncFolder(dirname(file));
}

export function syncFile(file: string): void {
  const handle = openSync(file, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Windows cannot open a folder and does not need this. */
export function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
