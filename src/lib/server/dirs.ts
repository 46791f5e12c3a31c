import { resolve } from 'node:path';

/** Where this server keeps what it has worked out: DATA_DIR, else ./data. */
export const dataDir = (): string => resolve(process.env.DATA_DIR || 'data');

/** Where the exhibit's files are: CONTENT_DIR, else ./content. */
export const contentDir = (): string => resolve(process.env.CONTENT_DIR || 'content');
