import type { Pose } from '../../stage/api';

/** Where on a tooth there are signs of how it left the jaw; the keys of `BaseSigns`. */
export const SIGN_PLACES = ['root', 'base', 'tip'] as const;
export type SignPlace = (typeof SIGN_PLACES)[number];

/** From where each sign is seen best. */
export const SIGN_POSES: Readonly<Record<SignPlace, Partial<Pose>>> = {
	root: { yaw_deg: 0, tilt_deg: 0, zoom: 1 },
	base: { yaw_deg: 200, tilt_deg: -62, zoom: 1.35 },
	tip: { yaw_deg: 40, tilt_deg: 48, zoom: 1.35 },
};
