/** The lamp over the table: from an azimuth and an elevation to a direction, and to and from a round dial. */
import type { Lamp } from './api';
import {
	LAMP_DEFAULT_azimuth_deg,
	LAMP_DEFAULT_elevation_deg,
	LAMP_MAX_elevation_deg,
	LAMP_MIN_elevation_deg,
} from './thresholds';

type Triple = readonly [number, number, number];

/** Over the viewer's left shoulder: where the lamp stands until someone swings it. */
export const DEFAULT_LAMP: Readonly<Lamp> = {
	azimuth_deg: LAMP_DEFAULT_azimuth_deg,
	elevation_deg: LAMP_DEFAULT_elevation_deg,
};

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** Azimuth in 0 .. 360, elevation within its limits. Values that are not numbers become the default's. */
export const cleanLamp = ({ azimuth_deg, elevation_deg }: Lamp): Lamp => ({
	azimuth_deg: Number.isFinite(azimuth_deg) ? ((azimuth_deg % 360) + 360) % 360 : DEFAULT_LAMP.azimuth_deg,
	elevation_deg: Number.isFinite(elevation_deg)
		? clamp(elevation_deg, LAMP_MIN_elevation_deg, LAMP_MAX_elevation_deg)
		: DEFAULT_LAMP.elevation_deg,
});

/**
 * The lamp as a frame of unit vectors, x right, y up, z to the viewer: `dir` from the tooth to the lamp,
 * `side` along the lamp's short side (towards the viewer), `over` along its long side (in the plane of the screen).
 * Right-handed: side x over = dir.
 */
export const lampFrame = (lamp: Lamp): { dir: Triple; side: Triple; over: Triple } => {
	const azimuth = radians(lamp.azimuth_deg);
	const elevation = radians(lamp.elevation_deg);
	const [east, north] = [Math.sin(azimuth), Math.cos(azimuth)];
	const [flat, up] = [Math.cos(elevation), Math.sin(elevation)];
	return {
		dir: [east * flat, north * flat, up],
		side: [-east * up, -north * up, flat],
		over: [north, -east, 0],
	};
};

/**
 * How much brighter than by default the lamp burns: a photographer opens the aperture for raking light, which
 * only grazes what faces the lens, and stops down for light from the front. 1 at the default elevation.
 */
export const lampGain = ({ elevation_deg }: Lamp): number => {
	const facing = (degrees: number) => 0.25 + Math.sin(radians(degrees));
	return Math.min(1.7, facing(DEFAULT_LAMP.elevation_deg) / facing(elevation_deg));
};

/**
 * Place of the lamp on a dial of radius 1, x right, y up: the middle is straight in front of the tooth (highest
 * elevation), the rim is raking light.
 */
export const dialFromLamp = (lamp: Lamp): { x: number; y: number } => {
	const { azimuth_deg, elevation_deg } = cleanLamp(lamp);
	const range = LAMP_MAX_elevation_deg - LAMP_MIN_elevation_deg;
	const reach = (LAMP_MAX_elevation_deg - elevation_deg) / range;
	return { x: reach * Math.sin(radians(azimuth_deg)), y: reach * Math.cos(radians(azimuth_deg)) };
};

/** Inverse of `dialFromLamp`; beyond the rim counts as the rim, the very middle keeps the azimuth of `before`. */
export const lampFromDial = (x: number, y: number, before: Lamp): Lamp => {
	const reach = Math.min(1, Math.hypot(x, y));
	const range = LAMP_MAX_elevation_deg - LAMP_MIN_elevation_deg;
	return cleanLamp({
		azimuth_deg: reach < 0.02 ? before.azimuth_deg : (Math.atan2(x, y) * 180) / Math.PI,
		elevation_deg: LAMP_MAX_elevation_deg - reach * range,
	});
};
