import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** Path of a Chromium program, or undefined. */
export function findChromium() {
  const places = [process.env.CHROMIUM_PATH, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
  return places.find((place) => place && existsSync(place));
}

/** Folder that holds initdb and postgres, the newest where there are several, or undefined. */
export function findPostgres() {
  const debian = '/usr/lib/postgresql';
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)) : [];
  const places = [process.env.EBBLINE_POSTGRES_BIN, ...versions.map((version) => join(debian, version, 'bin'))];
  return places.find((place) => place && existsSync(join(place, 'initdb')) && existsSync(join(place, 'postgres')));
}
