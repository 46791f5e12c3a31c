import { ROOMS } from '$lib/content/exhibit';
import { readRooms } from '$lib/server/arrange';
import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { getStore } from '$lib/server/getStore';
import { pictureUrl } from '$lib/server/shapeFiles';
import { staffOnly } from '$lib/server/staffOnly';
import { pick } from '$lib/server/viewFor';
import type { PageServerLoad } from './$types';

/** Rooms and specimens in the order of exhibit.yaml, with those that visitors do not see now; for staff only. */
export const load: PageServerLoad = async (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const exhibit = getStore().everything();
	const opened = await getDeskFiles().open('exhibit.yaml');
	const file = {
		path: 'exhibit.yaml',
		base: opened.ok ? opened.value.base : null,
		exact: opened.ok ? opened.value.exact : null,
	};
	if (!exhibit) return { file, rooms: [], closed: [], specimens: [] };
	const first = exhibit.languages[0].code;
	const lang = event.url.searchParams.get('lang') ?? first;
	const rooms = file.exact === null ? [] : readRooms(file.exact);
	const open = new Set(rooms.map(({ room }) => room));
	return {
		file,
		rooms,
		// rooms that are built have a name
		closed: ROOMS.filter((room) => !open.has(room) && exhibit.ui[first]?.[`room_${room}`] !== undefined),
		specimens: exhibit.specimens.map(({ id, accession, text, prepared, preservation }) => ({
			id,
			accession,
			title: pick(text, lang, first)?.value.title ?? accession,
			pictureUrl: pictureUrl(prepared.hash, preservation),
		})),
	};
};
