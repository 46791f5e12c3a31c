import sharp from 'sharp';
import { dataDir, getStore } from '$lib/server/getStore';
import { manifest, PRESENTATION_3 } from '$lib/server/iiif/manifest';
import { openToWeb } from '$lib/server/iiif/openToWeb';
import { shapeFiles } from '$lib/server/shapeFiles';
import type { RequestHandler } from './$types';

/** Any viewer on the web may read it (IIIF Presentation 3.0, 6.3 "Responses": media type; CORS in openToWeb). */
const HEADERS = {
	'content-type': `application/ld+json;profile="${PRESENTATION_3}"`,
	'cache-control': 'no-cache',
};

/** One specimen for other collections' viewers; only where the exhibit has an address on the web, since ids are addresses. */
export const GET: RequestHandler = async ({ params }) => {
	const exhibit = getStore().current();
	const specimen = exhibit?.specimens.find(({ id }) => id === params.id);
	if (!exhibit || !specimen) return none('There is nothing at this address.');
	if (!exhibit.publicAddress)
		return none('Manifests need an address on the web: write public_address in exhibit.yaml.');
	const file = shapeFiles(dataDir(), specimen.prepared.hash).picture(specimen.preservation);
	const { width, height } = await sharp(file)
		.metadata()
		.catch(() => ({ width: undefined, height: undefined }));
	if (!width || !height) return none('There is no picture of this tooth.');
	const made = manifest(exhibit, specimen, exhibit.publicAddress, { width_px: width, height_px: height });
	return openToWeb(
		new Response(JSON.stringify(made, null, '\t'), { headers: HEADERS }),
		exhibit.publicAddress,
	);
};

const none = (error: string): Response => Response.json({ error }, { status: 404 });
