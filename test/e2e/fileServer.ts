import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';

const TYPES: Record<string, string> = {
	'.css': 'text/css',
	'.glb': 'model/gltf-binary',
	'.html': 'text/html',
	'.js': 'text/javascript',
	'.json': 'application/json',
	'.svg': 'image/svg+xml',
	'.webp': 'image/webp',
	'.woff2': 'font/woff2',
	'.mp3': 'audio/mpeg',
};

/** A web server that knows nothing but files, which lie in one folder of its site. */
export async function fileServer(at: string, first: string) {
	let folder = first;
	let away = false;
	const server = createServer((request, response) => {
		if (away) return void request.socket.destroy();
		const { pathname, search } = new URL(String(request.url), 'http://localhost');
		const send = (status: number, headers: Record<string, string>, body: Buffer | string = '') =>
			void response.writeHead(status, headers).end(body);
		if (!pathname.startsWith(at)) return send(404, {});
		const asked = path.join(folder, decodeURIComponent(pathname.slice(at.length)));
		const file = pathname.endsWith('/') ? path.join(asked, 'index.html') : asked;
		readFile(file).then(
			(body) => send(200, { 'content-type': TYPES[path.extname(file)] ?? 'application/octet-stream' }, body),
			(cause: NodeJS.ErrnoException) =>
				cause.code === 'EISDIR' ? send(301, { location: `${pathname}/${search}` }) : send(404, {}),
		);
	});
	await new Promise<void>((listening) => server.listen(0, 'localhost', listening));
	return {
		root: `http://localhost:${(server.address() as AddressInfo).port}${at}`,
		/** From here on other files lie there. */
		serve: (other: string) => void (folder = other),
		/** The network is cut, or back. */
		cut(yes: boolean) {
			away = yes;
			server.closeAllConnections();
		},
		close: () => {
			server.closeAllConnections();
			server.close();
		},
	};
}
