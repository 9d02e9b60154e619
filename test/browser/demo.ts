import { browserTest } from './openBrowser.ts';

/** A page on an invented practice of its own. One server per file; the page is not signed in yet. */
export const demoTest = browserTest;
