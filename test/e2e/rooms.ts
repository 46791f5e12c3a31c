import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';

const exhibit = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../content/exhibit.yaml');

/** Addresses of the start screen and of every room that the exhibit shows. */
export const ROOMS: string[] = [
	'/',
	...(parse(readFileSync(exhibit, 'utf8')) as { rooms: string[] }).rooms.map((room) => `/${room}`),
];
