export interface FileText {
  readonly text: string;
  /** Said where the letters had to be guessed. */
  readonly note: string | null;
}

/** The text of a list that was chosen: UTF-8, UTF-16 with its mark, or else the old Windows letters of western Europe, and then said so. */
export function readFileText(bytes: Uint8Array): FileText {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { text: new TextDecoder('utf-16le').decode(bytes), note: null };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { text: new TextDecoder('utf-16be').decode(bytes), note: null };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), note: null };
  } catch {
    const text = new TextDecoder('windows-1252').decode(bytes);
    return { text, note: 'This file does not say which letters it uses; it was read as western European. Look at the names with accents.' };
  }
}
