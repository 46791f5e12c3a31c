// npm start: installs, builds, serves. Settings: PORT, HOST, CONTENT_DIR, DATA_DIR.
import { existsSync } from 'node:fs';
import net from 'node:net';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { ROOT, ensureBuilt, ensureInstalled, giveUp } from './setup.mjs';
import { tellSystemd } from './tellSystemd.mjs';

process.env.NODE_ENV = 'production';
process.env.PORT ??= '4173';
process.env.HOST ??= '127.0.0.1';
process.env.CONTENT_DIR = path.resolve(process.env.CONTENT_DIR ?? path.join(ROOT, 'content'));
process.env.DATA_DIR = path.resolve(process.env.DATA_DIR ?? path.join(ROOT, 'data'));

const { PORT, HOST, CONTENT_DIR } = process.env;
if (!/^\d{1,5}$/.test(PORT) || Number(PORT) > 65535 || Number(PORT) === 0)
	giveUp(`PORT is "${PORT}", but must be a number from 1 to 65535, for example PORT=4173.`);

await new Promise((resolve) => {
	const probe = net.createServer();
	probe.once('error', (/** @type {NodeJS.ErrnoException} */ error) =>
		error.code === 'EADDRINUSE'
			? giveUp(
					`Port ${PORT} is already in use: perhaps Tooth Table is running in another window.`,
					`Close that one, or choose another: PORT=${Number(PORT) + 1} npm start`,
				)
			: giveUp(`Cannot listen on ${HOST}:${PORT} (${error.code ?? error.message}).`),
	);
	probe.listen(Number(PORT), HOST, () => probe.close(resolve));
});

if (!existsSync(CONTENT_DIR))
	giveUp(`There is no content folder at ${CONTENT_DIR}. Set CONTENT_DIR to yours.`);

ensureInstalled();
ensureBuilt();
await import(pathToFileURL(path.join(ROOT, 'build', 'index.js')).href);
const shown = HOST === '127.0.0.1' || HOST === '0.0.0.0' || HOST === '::' ? 'localhost' : HOST;
process.stdout.write(`Tooth Table is open at http://${shown}:${PORT}   (content: ${CONTENT_DIR})\n`);
tellSystemd(`http://${HOST === '0.0.0.0' || HOST === '::' ? '127.0.0.1' : HOST}:${PORT}`);
