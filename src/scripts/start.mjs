// npm start: installs, builds, serves. Settings: see README.md.
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
// as large as the largest scan that staff send in (content/scanUpload.ts); hooks.server.ts holds everything else to far less
process.env.BODY_SIZE_LIMIT ??= '300000000';

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

const { DESK_FROM = '', ORIGIN = '', PROTOCOL_HEADER = '' } = process.env;
if (!['', 'here', 'screens', 'network'].includes(DESK_FROM))
	process.stderr.write(
		`DESK_FROM is "${DESK_FROM}", but must be screens or network: the desk stays closed to other machines.\n`,
	);
else if (DESK_FROM === 'network' && !ORIGIN.startsWith('https:') && PROTOCOL_HEADER === '')
	process.stderr.write(
		'DESK_FROM=network: the desk can be opened from other machines, and nothing here says that they come by https.\n' +
			'Without it the passphrase can be read on its way. DEVELOPERS.md, "Who may enter the desk", says what to do.\n',
	);

if (!existsSync(CONTENT_DIR))
	giveUp(`There is no content folder at ${CONTENT_DIR}. Set CONTENT_DIR to yours.`);

ensureInstalled();
ensureBuilt();
await import(pathToFileURL(path.join(ROOT, 'build', 'index.js')).href);
const shown = HOST === '127.0.0.1' || HOST === '0.0.0.0' || HOST === '::' ? 'localhost' : HOST;
process.stdout.write(`Tooth Table is open at http://${shown}:${PORT}   (content: ${CONTENT_DIR})\n`);
tellSystemd(`http://${HOST === '0.0.0.0' || HOST === '::' ? '127.0.0.1' : HOST}:${PORT}`);
