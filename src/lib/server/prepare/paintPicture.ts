import { MeshoptSimplifier } from 'meshoptimizer';
import sharp from 'sharp';
import { PALETTES } from '../../content/palettes';
import type { PictureFrame, Preservation } from '../../content/exhibit';
import { rasterise, viewRows } from '../../domain/mesh/rasterise';
import { REGIONS, type Region, type TriMesh } from '../../domain/mesh/triMesh';
import type { ShapeLevel } from './shapeLevel';

/** Side of a tray picture, px. */
export const PICTURE_PX = 480;

/** Turned a little to its distal side and towards the viewer, so that its curve and both faces show. */
const VIEW = { yaw_deg: 24, tilt_deg: 8 };
const QUALITY = 88;
/** Free border, share of the side. */
const MARGIN = 0.06;

/** How `paintPicture` frames a tooth, so that pictures can be drawn to one scale. */
export function pictureFrame({ positions }: ShapeLevel): PictureFrame {
	const [across, up] = viewRows(VIEW.yaw_deg, VIEW.tilt_deg);
	const extent = (row: readonly number[]): number => {
		let least = Infinity;
		let most = -Infinity;
		for (let i = 0; i < positions.length; i += 3) {
			const at = row[0] * positions[i] + row[1] * positions[i + 1] + row[2] * positions[i + 2];
			least = Math.min(least, at);
			most = Math.max(most, at);
		}
		return most - least;
	};
	const toothWidth_mm = extent(across);
	const toothHeight_mm = extent(up);
	return {
		side_mm: Math.max(toothWidth_mm, toothHeight_mm) / (1 - 2 * MARGIN),
		toothWidth_mm,
		toothHeight_mm,
	};
}

/** Paints a prepared tooth in its own colours, else in those of its preservation: a square WebP, transparent round the tooth. */
export async function paintPicture(level: ShapeLevel, preservation: Preservation): Promise<Uint8Array> {
	await MeshoptSimplifier.ready;
	const pixels = rasterise(weldedLevel(level), {
		width: PICTURE_PX,
		height: PICTURE_PX,
		view: VIEW,
		margin: MARGIN,
		colours: coloursOf(preservation),
		vertexColours: level.colours,
		occlusion: Float32Array.from(level.openness, (open) => open / 255),
	});
	return sharp(pixels, { raw: { width: PICTURE_PX, height: PICTURE_PX, channels: 4 } })
		.webp({ quality: QUALITY, alphaQuality: 95 })
		.toBuffer();
}

/** The level with vertices at one place made one, and a region per triangle. Vertex numbers stay. */
function weldedLevel({ positions, indices, regions }: ShapeLevel): TriMesh {
	const one = MeshoptSimplifier.generatePositionRemap(positions, 3);
	const perTriangle = new Uint8Array(indices.length / 3);
	for (let t = 0; t < perTriangle.length; t++) perTriangle[t] = regions[indices[t * 3]];
	return { positions, indices: indices.map((vertex) => one[vertex]), regions: perTriangle };
}

function coloursOf(preservation: Preservation): Record<Region, [number, number, number]> {
	const palette = PALETTES[preservation];
	return Object.fromEntries(
		REGIONS.map((region) => [region, palette[region].map((value) => value / 255)]),
	) as Record<Region, [number, number, number]>;
}
