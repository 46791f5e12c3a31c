/** Pure arithmetic of turning a tooth in the hand. Angles in degrees, times in ms, distances in CSS px. */
import type { Pose } from './api';
import { betweenStands } from './stand';
import {
	DEFAULT_TILT_deg,
	DEFAULT_YAW_deg,
	FLICK_MAX_deg_per_ms,
	GLIDE_MAX_ms,
	GLIDE_STOP_deg_per_ms,
	GLIDE_TAU_ms,
	TILT_LIMIT_deg,
	TURN_PER_SIDE_deg,
	ZOOM_MAX,
	ZOOM_MIN,
} from './thresholds';

export const DEFAULT_POSE: Readonly<Pose> = { yaw_deg: DEFAULT_YAW_deg, tilt_deg: DEFAULT_TILT_deg, zoom: 1 };

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));

/** Angle in (-180, 180]. */
export const wrapYaw = (yaw_deg: number): number => {
	const turned = ((((yaw_deg + 180) % 360) + 360) % 360) - 180;
	return turned === -180 ? 180 : turned;
};

/** Turned by these angles; yaw wraps round, tilt stops at its limit. */
export const turned = (pose: Pose, yaw_deg: number, tilt_deg: number): Pose => ({
	...pose,
	yaw_deg: wrapYaw(pose.yaw_deg + yaw_deg),
	tilt_deg: clamp(pose.tilt_deg + tilt_deg, -TILT_LIMIT_deg, TILT_LIMIT_deg),
});

/** Zoomed by a factor within the limits; a factor that is not a positive number changes nothing. */
export const zoomed = (pose: Pose, factor: number): Pose =>
	Number.isFinite(factor) && factor > 0
		? { ...pose, zoom: clamp(pose.zoom * factor, ZOOM_MIN, ZOOM_MAX) }
		: pose;

/** Degrees of turn per CSS px of drag in a view of this size. Zoomed in, the hand turns finer. */
export const degreesPerPx = (width_px: number, height_px: number, zoom: number): number =>
	TURN_PER_SIDE_deg / Math.max(1, Math.min(width_px, height_px)) / Math.max(1, Math.sqrt(zoom));

/** 0 .. 1 over 0 .. 1: quick start, soft landing. */
export const easeOut = (t: number): number => 1 - (1 - clamp(t, 0, 1)) ** 3;

/** Between two poses; yaw takes the shorter way round, zoom is even in ratio. */
export const between = (from: Pose, to: Pose, t: number): Pose => {
	const stand = betweenStands(from.stand, to.stand, t);
	return {
		yaw_deg: wrapYaw(from.yaw_deg + wrapYaw(to.yaw_deg - from.yaw_deg) * t),
		tilt_deg: from.tilt_deg + (to.tilt_deg - from.tilt_deg) * t,
		zoom: from.zoom * (to.zoom / from.zoom) ** t,
		...(stand && { stand }),
	};
};

/** A flick's speed after its release, capped in size with its direction kept. */
export const cappedSpeed = (yaw: number, tilt: number): { yaw: number; tilt: number } => {
	const size = Math.hypot(yaw, tilt);
	const factor = size > FLICK_MAX_deg_per_ms ? FLICK_MAX_deg_per_ms / size : 1;
	return { yaw: yaw * factor, tilt: tilt * factor };
};

/**
 * How far a glide has come `since_ms` after release, as a factor of the speed at release (ms), and whether
 * it is over. The speed falls exponentially: distance = v * tau * (1 - exp(-t / tau)).
 */
export const glided = (speed_deg_per_ms: number, since_ms: number): { travel_ms: number; over: boolean } => {
	const t = clamp(since_ms, 0, GLIDE_MAX_ms);
	return {
		travel_ms: GLIDE_TAU_ms * (1 - Math.exp(-t / GLIDE_TAU_ms)),
		over: since_ms >= GLIDE_MAX_ms || speed_deg_per_ms * Math.exp(-t / GLIDE_TAU_ms) < GLIDE_STOP_deg_per_ms,
	};
};
