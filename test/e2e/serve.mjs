// Serves the built exhibit from a copy of content/, so that tests may edit it.
// The folders are named in the environment of the tests through test/e2e/folders.ts.
import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from '../../src/scripts/setup.mjs';

const work = path.join(ROOT, 'test-results', 'served');
rmSync(work, { recursive: true, force: true });
mkdirSync(work, { recursive: true });
cpSync(path.join(ROOT, 'content'), path.join(work, 'content'), { recursive: true });
process.env.PORT = process.argv[2];
process.env.HOST = '127.0.0.1';
process.env.CONTENT_DIR = path.join(work, 'content');
process.env.DATA_DIR = path.join(work, 'data');
// what test/e2e/staff.ts signs in with
process.env.STAFF_PASSPHRASE_FILE = path.join(work, 'passphrase.txt');
writeFileSync(process.env.STAFF_PASSPHRASE_FILE, 'four teeth on a table\n');
await import('../../src/scripts/start.mjs');
