import type { ScanProblemCode } from '../../../src/lib/server/scan/scanProblem';
import { ellipticCone } from '../mesh/shapes';
import { changed, joined, latin, utf16 } from './bytes';
import { asPolygons, obj, ply, polygonCone, stlBinary, stlText, text } from './writers';

/** One damaged or hostile file. `code`: what it must be told as; 'fine': it must be read. */
export interface HostileFile {
	what: string;
	file: string;
	bytes: Uint8Array;
	code: ScanProblemCode | 'fine';
}

const cone = ellipticCone(4, 3, [1, 12, 0], 12, 6);

export function hostileStl(): HostileFile[] {
	const good = stlBinary(cone);
	const words = stlText(cone);
	const count = (n: number) => changed(good, (view) => view.setUint32(80, n, true));
	const put = (value: number) => changed(good, (view) => view.setFloat32(84 + 16, value, true));
	const files: [string, Uint8Array, HostileFile['code']][] = [
		['nothing at all', new Uint8Array(0), 'empty'],
		['one byte', Uint8Array.of(0), 'truncated'],
		['cut in the header', good.slice(0, 50), 'truncated'],
		['cut before the count', good.slice(0, 82), 'truncated'],
		['cut within the first triangle', good.slice(0, 100), 'truncated'],
		['cut within a triangle', good.slice(0, 84 + 50 * 40 + 13), 'truncated'],
		['cut between triangles', good.slice(0, 84 + 50 * 40), 'truncated'],
		['only a header, no triangles', good.slice(0, 84).fill(0, 80), 'no-triangles'],
		['2^32 - 1 triangles announced', count(2 ** 32 - 1), 'count-lies'],
		['2^31 triangles announced', count(2 ** 31), 'count-lies'],
		['a count of 0 before triangles', count(0), 'count-lies'],
		['a count that is too small', count(10), 'count-lies'],
		['a few bytes too many', joined(good, new Uint8Array(7)), 'fine'],
		['a corner that is NaN', put(NaN), 'not-a-number'],
		['a corner at infinity', put(Infinity), 'not-a-number'],
		['a corner at 3e38', put(3e38), 'not-a-number'],
		[
			'all corners in one place',
			changed(good, (view) => {
				for (let i = 84; i < good.length; i++) view.setUint8(i, 0);
			}),
			'no-area',
		],
		['text cut in a number', text(words.slice(0, 1000)), 'truncated'],
		['text cut between facets', text(words.slice(0, words.indexOf('\nfacet', 2000) + 1)), 'truncated'],
		[
			'text with a word where a number belongs',
			text(words.replace(/vertex \S+/, 'vertex wide')),
			'not-a-number',
		],
		['text with a NaN', text(words.replace(/vertex \S+/, 'vertex nan')), 'not-a-number'],
		['text with four corners in a facet', text(words.replace(/( *vertex.*\n)/, '$1$1')), 'count-lies'],
		['text without facets', text('solid x\nendsolid x\n'), 'no-triangles'],
		['text of another kind', text('Dear colleague,\nhere is the tooth.\n'), 'not-a-mesh'],
		['text as UTF-16', utf16(words), 'fine'],
		['text with CR only', text(stlText(cone, '\r')), 'fine'],
		['a web page', text('<!DOCTYPE html><html><body>404</body></html>'), 'not-a-mesh'],
		['a ZIP archive', joined(latin('PK\x03\x04'), new Uint8Array(500)), 'not-a-mesh'],
		['a picture', joined(latin('\x89PNG\r\n\x1a\n'), new Uint8Array(500)), 'not-a-mesh'],
		['zeros', new Uint8Array(5000), 'count-lies'],
		['zeros as long as a header', new Uint8Array(84), 'no-triangles'],
	];
	return files.map(([what, bytes, code]) => ({ what, bytes, code, file: 'a.stl' }));
}

export function hostilePly(): HostileFile[] {
	const mesh = polygonCone(4, 12, 12, 4);
	const little = ply(mesh, { encoding: 'binary_little_endian' });
	const words = new TextDecoder().decode(ply(mesh, { encoding: 'ascii' }));
	const head = words.indexOf('end_header') + 11;
	/** the binary file with a changed header */
	const headed = (change: (header: string) => string): Uint8Array => {
		const end = new TextDecoder('latin1').decode(little).indexOf('end_header\n') + 11;
		return joined(
			latin(change(new TextDecoder('latin1').decode(little.subarray(0, end)))),
			little.subarray(end),
		);
	};
	const corners = mesh.positions.length / 3;
	const lists = (face: string): Uint8Array =>
		text(
			'ply\nformat ascii 1.0\nelement vertex 3\nproperty float x\nproperty float y\nproperty float z\n' +
				`element face 1\nproperty list int int vertex_indices\nend_header\n0 0 0\n1 0 0\n0 1 0\n${face}\n`,
		);
	const files: [string, Uint8Array, HostileFile['code']][] = [
		['nothing at all', new Uint8Array(0), 'empty'],
		['three letters', text('ply'), 'truncated'],
		['cut in the header', text(words.slice(0, 60)), 'truncated'],
		['only a header', text(words.slice(0, head)), 'truncated'],
		['text cut among the corners', text(words.slice(0, head + 200)), 'truncated'],
		['text cut among the faces', text(words.slice(0, -40)), 'truncated'],
		['binary cut among the corners', little.slice(0, head + 100), 'truncated'],
		['binary cut among the faces', little.slice(0, -3), 'truncated'],
		['2^31 corners announced', headed((h) => h.replace(/vertex \d+/, 'vertex 2147483648')), 'count-lies'],
		[
			'10^300 faces announced',
			headed((h) => h.replace(/face \d+/, `face 1${'0'.repeat(300)}`)),
			'count-lies',
		],
		['a negative count', headed((h) => h.replace(/face \d+/, 'face -5')), 'count-lies'],
		['a count that is no number', headed((h) => h.replace(/face \d+/, 'face many')), 'count-lies'],
		[
			'a corner too few announced in text',
			text(words.replace(`vertex ${corners}`, `vertex ${corners - 1}`)),
			'count-lies',
		],
		[
			'a corner too many announced in text',
			text(words.replace(`vertex ${corners}`, `vertex ${corners + 1}`)),
			'count-lies',
		],
		[
			'a face too few announced in binary',
			headed((h) => h.replace(/face (\d+)/, (_, n) => `face ${n - 1}`)),
			'fine',
		],
		[
			'half of the faces announced in binary',
			headed((h) => h.replace(/face (\d+)/, (_, n) => `face ${Math.floor(n / 2)}`)),
			'count-lies',
		],
		['an unknown encoding', headed((h) => h.replace('binary_little_endian', 'packed')), 'damaged'],
		['an unknown type', headed((h) => h.replace('float x', 'half x')), 'damaged'],
		[
			'a property before any element',
			text('ply\nformat ascii 1.0\nproperty float x\nend_header\n'),
			'damaged',
		],
		[
			'an element without properties, a thousand million times',
			text('ply\nformat ascii 1.0\nelement air 1000000000\nend_header\n'),
			'count-lies',
		],
		['no x', headed((h) => h.replace('float x', 'float u')), 'damaged'],
		[
			'no end of the header',
			text('ply\nformat ascii 1.0\n' + 'comment on and on\n'.repeat(100_000)),
			'damaged',
		],
		['a list of 2^31 - 1 corners', lists('2147483647 0 1 2'), 'truncated'],
		['a list of -3 corners', lists('-3 0 1 2'), 'count-lies'],
		['a list of 1.5 corners', lists('1.5 0 1 2'), 'count-lies'],
		['a corner that does not exist', lists('3 0 1 3'), 'index-out-of-range'],
		['a negative corner', lists('3 0 1 -1'), 'index-out-of-range'],
		[
			'points only',
			text(
				'ply\nformat ascii 1.0\nelement vertex 1\nproperty float x\nproperty float y\nproperty float z\nend_header\n1 2 3\n',
			),
			'no-triangles',
		],
		['a corner that is NaN', text(words.replace(/(end_header\n)\S+/, '$1nan')), 'not-a-number'],
		['a corner with a comma', text(words.replace(/(end_header\n)\S+/, '$10,5')), 'not-a-number'],
		[
			'text where the header says binary',
			text(words.replace('format ascii', 'format binary_little_endian')),
			'truncated',
		],
		['text as UTF-16', utf16(words), 'fine'],
		['text with CR only', ply(mesh, { encoding: 'ascii', lineEnd: '\r' }), 'fine'],
		['an STL under this name', text(stlText(cone)), 'not-a-mesh'],
		['wrong first letters', text(`x${words}`), 'not-a-mesh'],
	];
	return files.map(([what, bytes, code]) => ({ what, bytes, code, file: 'a.ply' }));
}

export function hostileObj(): HostileFile[] {
	const words = obj(asPolygons(cone));
	const corners = cone.positions.length / 3;
	const files: [string, Uint8Array, HostileFile['code']][] = [
		['nothing at all', new Uint8Array(0), 'empty'],
		['spaces', text('  \n\n '), 'not-a-mesh'],
		['comments only', text('# a tooth\n# of a kind\n'), 'not-a-mesh'],
		['cut among the corners', text(words.slice(0, words.indexOf('v', 400) + 8)), 'truncated'],
		['cut after the corners', text(words.slice(0, words.indexOf('\no '))), 'no-triangles'],
		['cut within a face', text(words.slice(0, words.indexOf('f ', words.length * 0.8) + 5)), 'truncated'],
		['a corner with two numbers', text(`${words}v 1 2\n`), 'truncated'],
		['a face with two corners', text(`${words}f 1 2\n`), 'truncated'],
		['corner number 0', text(`${words}f 0 1 2\n`), 'index-out-of-range'],
		['a corner past the end', text(`${words}f 1 2 ${corners + 1}\n`), 'index-out-of-range'],
		['a corner before the start', text(`${words}f -1 -2 -${corners + 1}\n`), 'index-out-of-range'],
		['corner number 10^30', text(`${words}f 1 2 1${'0'.repeat(30)}\n`), 'index-out-of-range'],
		['a corner that is no number', text(`${words}f 1 2 three\n`), 'damaged'],
		['numbers with commas', text(words.replaceAll('.', ',')), 'not-a-number'],
		['a used corner that is NaN', text(words.replace(/\nv \S+/, '\nv nan')), 'not-a-number'],
		['a used corner at 1e400', text(words.replace(/\nv \S+/, '\nv 1e400')), 'not-a-number'],
		['a face of 30,000 corners', text(`${words}f ${'1 2 3 '.repeat(10_000)}\n`), 'too-large'],
		['all corners on a line', text('v 0 0 0\nv 1 0 0\nv 2 0 0\nf 1 2 3\n'), 'no-area'],
		['a line of a million letters', text(`${words}${'x'.repeat(1e6)}\n`), 'fine'],
		['faces before their corners', text('f 1 2 3\nv 0 0 0\nv 9 0 0\nv 0 9 0\n'), 'fine'],
		['a face over two lines', text('v 0 0 0\nv 9 0 0\nv 0 9 0\nf 1 2 \\\n3\n'), 'fine'],
		['binary where text is expected', new Uint8Array(1000).map((_, i) => (i * 89) % 251), 'not-a-mesh'],
		['text as UTF-16', utf16(words), 'fine'],
		['text with CR only', text(obj(asPolygons(cone), { lineEnd: '\r' })), 'fine'],
		['a letter', text('Dear colleague,\nvery nice tooth.\n'), 'not-a-mesh'],
	];
	return files.map(([what, bytes, code]) => ({ what, bytes, code, file: 'a.obj' }));
}
