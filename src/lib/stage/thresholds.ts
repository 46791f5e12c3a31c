/**
 * Every number that decides how the stage feels under a finger, with its unit and its reason.
 * Values are ours, found by hand on a touchscreen-sized window, unless a line says otherwise.
 */

/** A finger may wander this far before a touch counts as a drag; more for a finger than for a mouse. */
export const DRAG_START_px = { touch: 6, pen: 5, mouse: 3 } as const;

/** One drag across the shorter side of a view turns the tooth half round: the near surface keeps up with the finger. */
export const TURN_PER_SIDE_deg = 180;

/** Past +-90 the tooth would be upside down; a little more lets a visitor look squarely at tip and root end. */
export const TILT_LIMIT_deg = 100;

export const ZOOM_MIN = 0.6;
export const ZOOM_MAX = 8;

/** Fingers closer than this jitter too much for their distance to be a scale. */
export const PINCH_MIN_SPAN_px = 40;

/** Their distance changes by this much before it zooms: two spots of a resting hand tremble less. */
export const PINCH_START_px = 8;

/** What touches more broadly is no finger: about 40 mm on a gallery's screen, where a fingertip is 12 to 20. */
export const PALM_px = 110;
/** A touch that has not stirred for this long when another comes down beside it only rests there. */
export const REST_ms = 3000;
/** Up to so many touches of one view may be fingers at work; more are a hand laid flat. */
export const HAND_contacts = 3;

/** What a wheel's line and page stand for where the browser counts in them; ours. */
export const WHEEL_LINE_px = 40;
export const WHEEL_PAGE_px = 800;

/** Zoom per wheel unit: one usual notch of 100 px zooms by about 16 %. */
export const WHEEL_ZOOM_PER_px = 0.0015;
/** A touch that lasts longer is a rest of the finger, not a tap. */
export const TAP_ms = 500;

/** Two taps within this time and distance are a double tap: reset. Children are slow and wide. */
export const DOUBLE_TAP_ms = 450;
export const DOUBLE_TAP_px = 32;

/** Slower releases than this are a stop, not a flick. */
export const FLICK_MIN_px_per_ms = 0.25;
/** Faster ones turn no further: the tooth must stay readable. */
export const FLICK_MAX_deg_per_ms = 0.9;
/** A finger that rested this long before it lifted has not flicked. */
export const FLICK_STALE_ms = 60;
/** Speed falls to 1/e in this time. */
export const GLIDE_TAU_ms = 130;
/** A glide is over after this time at the latest. */
export const GLIDE_MAX_ms = 600;
/** Below this speed a turn is not seen. */
export const GLIDE_STOP_deg_per_ms = 0.006;

/** Reset, change of scale and linking ease for this long: long enough to follow, too short to wait for. */
export const EASE_ms = 250;

/** No change for this long counts as stillness; full quality is then drawn. Well under the 300 ms allowed. */
export const STILL_ms = 100;

/** Device pixels per CSS px beyond this are not seen at arm's length but cost fill rate. */
export const MAX_PIXEL_RATIO = 2;

/** A lost context that has not come back by then is not coming back: reload the page. */
export const RESTORE_WAIT_ms = 10_000;

/** Where a tooth stands at first: three-quarter turn, tip leaning a little towards the viewer. */
export const DEFAULT_YAW_deg = -34;
export const DEFAULT_TILT_deg = 10;

/** Empty margin round the largest tooth, as a fraction of the view on each side. */
export const MARGIN = 0.1;

/** Where the lamp stands at first, clockwise from above and above the plane of the screen. */
export const LAMP_DEFAULT_azimuth_deg = 304;
export const LAMP_DEFAULT_elevation_deg = 30.5;
/** Lower, and a face that looks at the viewer gets no light at all; higher, and azimuth means nothing. */
export const LAMP_MIN_elevation_deg = 3;
export const LAMP_MAX_elevation_deg = 80;
