/**
 * The look of a tooth under one lamp that can be swung, as GLSL for a three.js ShaderMaterial.
 *
 * Why our own shading and not a stock physical material: light and full quality share every term that decides
 * brightness, so that switching between them cannot flash; there is no environment texture to rebuild when a
 * context is lost; and a processor without a graphics card can draw it.
 *
 * View space, +z towards the viewer. The lamp stands where `lamp` says; the tooth turns under it.
 * Terms: Lambert with a soft terminator; GGX highlight (Walter et al. 2007, doi:10.2312/EGWR/EGSR07/195-206) with
 * the Smith-Schlick visibility approximation; Schlick's Fresnel (1994, doi:10.1111/1467-8659.1330233) for the
 * reflections of two soft boxes; shadows that the tooth casts on itself from a
 * depth map (Williams 1978, doi:10.1145/800248.807402) with percentage-closer filtering (Reeves et al. 1987,
 * doi:10.1145/37401.37435); a filmic curve of our own. Output is display-referred sRGB.
 */

export const TOOTH_VERTEX = /* glsl */ `
attribute vec4 surface;
attribute vec2 crest;
/** the scan's own colour; alpha 0: none */
attribute vec4 colour;
uniform vec3 palette[8];
uniform vec4 finish[8];
uniform float crownHeight;
varying vec4 vAlbedoAo;
varying vec4 vNormalTip;
varying vec4 vFinish;
#ifdef FULL
uniform mat4 toLamp;
uniform float lampLift;
varying vec4 vToothRim;
varying vec3 vLamp;
#endif

void main() {
	int region = int(surface.z + 0.5);
	float ao = surface.x / 255.0;
	float tone = surface.y / 127.5 - 1.0;
	// all enamel is one stuff; carinae and ridges only differ in colour, without a border
	bool isEnamel = region < 3;
	vFinish = finish[isEnamel ? 0 : region];
	float up = position.y / crownHeight;
	float enamel = vFinish.w;
	float hollow = step(vFinish.y, 0.01);
	vec3 albedo = isEnamel ? mix(mix(palette[0], palette[1], crest.x), palette[2], crest.y) : palette[region];
	// a crown pales towards its tip; staining gathers where the surface is sheltered
	float shade = mix(1.0, mix(0.86, 1.1, clamp(up, 0.0, 1.0)), enamel);
	albedo *= shade * (1.0 + tone * mix(0.34, 0.09, enamel));
	if (colour.a > 0.5) {
		// as it was scanned: no pattern, tint or growth line of ours upon it
		albedo = mix(colour.rgb / 12.92, pow((colour.rgb + 0.055) / 1.055, vec3(2.4)), step(0.04045, colour.rgb));
		enamel = 0.0;
		hollow = 0.0;
		vFinish.zw = vec2(0.0);
	}
	albedo = mix(albedo * vec3(0.72, 0.62, 0.52), albedo, mix(0.45, 1.0, ao));
	// the deeper in a hollow, the darker
	albedo *= mix(1.0, mix(0.5, 1.0, ao), hollow);
	vAlbedoAo = vec4(albedo, ao);
	vNormalTip = vec4(normalMatrix * normal, smoothstep(0.68, 1.02, up) * enamel);
#ifdef FULL
	vToothRim = vec4(position / crownHeight, surface.w / 255.0);
	vLamp = (toLamp * vec4(position + normal * lampLift, 1.0)).xyz * 0.5 + 0.5;
#endif
	gl_Position = projectionMatrix * (modelViewMatrix * vec4(position, 1.0));
}
`;

export const TOOTH_FRAGMENT = /* glsl */ `
uniform mat3 normalMatrix;
/** columns: short side, long side, direction */
uniform mat3 lamp;
uniform float lampGain;
uniform float opacity;
varying vec4 vAlbedoAo;
varying vec4 vNormalTip;
varying vec4 vFinish;
#ifdef FULL
precision highp sampler2DShadow;
uniform sampler2DShadow shadowMap;
uniform vec2 shadowSpread;
varying vec4 vToothRim;
varying vec3 vLamp;
#endif

const vec3 KEY = vec3(1.00, 0.88, 0.73) * 3.3;
const vec3 FILL_DIR = vec3(0.780, -0.180, 0.600);
const vec3 FILL = vec3(0.40, 0.52, 0.70) * 0.15;
const vec3 RIM_DIR = vec3(0.800, 0.320, -0.507);
const vec3 RIM = vec3(1.00, 0.80, 0.58) * 1.6;
const vec3 SKY = vec3(0.105, 0.092, 0.080);
const vec3 FELT = vec3(0.040, 0.026, 0.017);

// a soft box seen in a mirror: brightest in its middle, no edge
float softBox(vec3 r, mat3 box, vec2 size) {
	vec3 p = r * box;
	vec2 q = p.xy / max(p.z, 0.05) / size;
	return exp(-dot(q, q)) * smoothstep(0.0, 0.3, p.z);
}

float ggx(float nh, float a) {
	float a2 = a * a;
	float d = nh * nh * (a2 - 1.0) + 1.0;
	return a2 / (3.14159 * d * d);
}

// display-referred: a filmic toe and shoulder, then sRGB; bright colours lose saturation as they do on film
vec3 film(vec3 x) {
	x = max(x, 0.0);
	float peak = max(x.r, max(x.g, x.b));
	x = mix(x, vec3(dot(x, vec3(0.2126, 0.7152, 0.0722))), smoothstep(0.45, 3.2, peak) * 0.55);
	vec3 s = clamp((x * (2.35 * x + 0.05)) / (x * (2.30 * x + 0.78) + 0.12), 0.0, 1.0);
	return mix(s * 12.92, 1.055 * pow(s, vec3(1.0 / 2.4)) - 0.055, step(0.0031308, s));
}

#ifdef FULL
float hash(vec3 p) {
	p = fract(p * vec3(0.1031, 0.1030, 0.0973));
	p += dot(p, p.yxz + 33.33);
	return fract((p.x + p.y) * p.z);
}
float noise(vec3 x) {
	vec3 i = floor(x);
	vec3 f = fract(x);
	f = f * f * (3.0 - 2.0 * f);
	return mix(
		mix(mix(hash(i), hash(i + vec3(1, 0, 0)), f.x), mix(hash(i + vec3(0, 1, 0)), hash(i + vec3(1, 1, 0)), f.x), f.y),
		mix(mix(hash(i + vec3(0, 0, 1)), hash(i + vec3(1, 0, 1)), f.x), mix(hash(i + vec3(0, 1, 1)), hash(i + vec3(1, 1, 1)), f.x), f.y),
		f.z);
}

// points evenly over a disc, the outermost first
const vec2 DISC[12] = vec2[12](
	vec2(0.79, 0.29), vec2(-0.82, 0.34), vec2(0.37, -0.86), vec2(0.33, 0.92),
	vec2(-0.37, -0.70), vec2(-0.19, 0.71), vec2(0.57, -0.36), vec2(-0.60, -0.11),
	vec2(0.33, 0.43), vec2(0.04, -0.46), vec2(-0.26, 0.24), vec2(0.20, 0.00));
float lamplight() {
	float open = 0.0;
	for (int i = 0; i < 4; i++) open += texture(shadowMap, vec3(vLamp.xy + DISC[i] * shadowSpread, vLamp.z));
	// nearly everywhere all agree
	if (open < 0.01 || open > 3.99) return open * 0.25;
	for (int i = 4; i < 12; i++) open += texture(shadowMap, vec3(vLamp.xy + DISC[i] * shadowSpread, vLamp.z));
	return open / 12.0;
}
#endif

void main() {
	vec3 n = normalize(vNormalTip.xyz);
	// the lens is so long that every line of sight may count as parallel
	const vec3 v = vec3(0.0, 0.0, 1.0);
#ifdef DOUBLE_SIDED
	if (!gl_FrontFacing) n = -n;
#endif
	vec3 keyDir = lamp[2];
	float rough = vFinish.x;
	float coat = vFinish.y;
	float fibre = vFinish.z;
	float enamel = vFinish.w;
	float ao = vAlbedoAo.w;
	float tip = vNormalTip.w;
	vec3 albedo = vAlbedoAo.xyz;
	float unshaded = 1.0;

#ifdef FULL
	// what is cast by the tooth itself; the side turned away is dark without it
	float faces = dot(n, keyDir);
	if (faces > 0.0) unshaded = mix(1.0, lamplight(), smoothstep(0.0, 0.05, faces));

	vec3 along = normalize(normalMatrix * vec3(0.0, 1.0, 0.0));
	vec3 across = cross(along, n);
	vec3 at = vToothRim.xyz;
	// how much of a pattern survives at this size on screen: none may shimmer
	float px = length(fwidth(at));
	if (enamel > 0.5) {
		// growth lines round the crown, uneven in spacing, and wider bands where the animal grew slower or faster
		float wobble = 0.3 * (sin(at.x * 11.0 + at.y * 7.0) + sin(at.z * 13.0 - at.y * 5.0));
		float phase = at.y * 190.0 + wobble * 7.0;
		float lines = (sin(phase) * 0.6 + sin(phase * 1.73 + 1.0) * 0.4) * (1.0 - smoothstep(0.006, 0.02, px));
		float bands = sin(phase * 0.171) * 0.6 + sin(phase * 0.293 + 2.0) * 0.4;
		// hair-fine marks of use, along the crown
		float hair = (noise(at * vec3(90.0, 7.0, 90.0)) - 0.5) * (1.0 - smoothstep(0.003, 0.012, px));
		albedo *= 1.0 + lines * 0.022 + bands * 0.035 + hair * 0.04;
		n = normalize(n + along * (lines * 0.006) + across * (hair * 0.004));
		rough += hair * 0.05;
		// the worn edge of the enamel round bare dentine is polished and bright
		float rim = 1.0 - smoothstep(0.10, 0.20, vToothRim.w);
		albedo = mix(albedo, albedo * 1.25 + 0.05, rim);
	} else {
		// fibres run along root and dentine, pores between them
		float streak = noise(at * vec3(75.0, 3.5, 75.0)) - 0.5;
		float pores = (noise(at * vec3(170.0, 60.0, 170.0)) - 0.5) * (1.0 - smoothstep(0.003, 0.01, px));
		albedo *= 1.0 + fibre * (streak * 0.30 + pores * 0.10);
		n = normalize(n + along * (fibre * pores * 0.10) + across * (fibre * (streak * 0.18 + pores * 0.06)));
	}
#endif

	float nv = clamp(n.z, 0.001, 1.0);
	float edge = 1.0 - nv;

	// enamel is a clear layer: seen straight it shows the warm dentine below, seen at a slant it turns milky;
	// thin at the tip it is cooler
	vec3 deep = albedo * vec3(0.90, 0.86, 0.80);
	vec3 milk = albedo * vec3(1.04, 1.08, 1.14) + 0.012;
	albedo = mix(albedo, mix(deep, milk, smoothstep(0.05, 0.8, edge)), enamel);
	albedo = mix(albedo, albedo * vec3(0.88, 0.94, 1.0), tip * 0.5);

	// key lamp: soft terminator, warmer where light has gone through the surface
	float nk = dot(n, keyDir);
	float wrap = mix(0.10, 0.30, enamel);
	float lit = max(0.0, (nk + wrap) / (1.0 + wrap));
	float hard = max(0.0, nk);
	vec3 through = mix(vec3(1.0), vec3(1.12, 0.90, 0.70), (1.0 - smoothstep(0.0, 0.5, nk)) * (0.4 + 0.6 * enamel));
	float open = mix(0.10, 1.0, smoothstep(0.0, 0.85, ao));
	vec3 key = KEY * lampGain;
	// a little light creeps through enamel into its own shadow
	float stray = mix(0.04, 0.3, step(coat, 0.01));
	vec3 creep = mix(vec3(unshaded), vec3(1.0), vec3(0.24, 0.15, 0.09) * enamel + stray);
	vec3 diffuse = key * through * creep * (lit * lit * 0.7 + lit * 0.3) * open;
	diffuse += FILL * max(0.0, dot(n, FILL_DIR) * 0.7 + 0.3) * ao;
	diffuse += RIM * pow(max(0.0, dot(n, RIM_DIR)), 1.5) * ao * 0.7;
	diffuse += mix(FELT, SKY, n.y * 0.5 + 0.5) * ao * ao * 2.0;
	// thin edges and the tip glow with light from behind
	diffuse += vec3(1.0, 0.66, 0.36) * (edge * edge) * (0.14 * enamel + 0.95 * tip) * ao;
	vec3 colour = albedo * diffuse * 0.3183 * mix(1.25, 1.18, enamel);

	// highlights: a broad sheen of the layer below, and the soft box in the polished surface
	float a = rough * rough * 1.8;
	vec3 hk = normalize(keyDir + v);
	float nh = max(0.0, dot(n, hk));
	float k = (rough + 1.0) * (rough + 1.0) * 0.125;
	float vis = 0.25 / ((hard * (1.0 - k) + k) * (nv * (1.0 - k) + k));
	float fr = 0.045 + 0.955 * pow(1.0 - max(0.0, dot(hk, v)), 5.0);
	colour += key * (ggx(nh, a) * vis * fr * hard * open * mix(0.6, 1.0, coat) * unshaded) * 0.5;

	float fresnel = 0.045 + 0.955 * pow(edge, 5.0) * (1.0 - rough * 1.6);
	vec3 r = reflect(-v, n);
	// the lamp's soft box: its bright core and the glow of its cloth
	float core = softBox(r, lamp, vec2(0.02, 0.40) + rough * vec2(0.16, 0.3));
	float glow = softBox(r, lamp, vec2(0.16, 0.60) + rough * vec2(0.5, 0.5));
	float window = (core * mix(6.0, 15.0, smoothstep(0.0, 0.5, keyDir.z)) + glow) * unshaded * lampGain;
	const mat3 STRIP = mat3(-0.326, 0.0, 0.945, 0.147, 0.988, 0.050, 0.934, 0.155, 0.322);
	float strip = softBox(r, STRIP, vec2(0.14, 1.1) + rough * 0.3);
	vec3 mirror = vec3(1.00, 0.92, 0.80) * window + vec3(0.80, 0.80, 0.82) * strip * 0.7;
	mirror += mix(FELT, SKY * 1.6, smoothstep(-0.3, 0.8, r.y)) * 1.4;
	mirror += vec3(1.00, 0.92, 0.80) * smoothstep(0.4, 1.0, r.y) * 0.7;
	colour += mirror * fresnel * coat * mix(0.2, 1.0, ao * ao);

	colour = film(colour);
#ifdef FULL
	colour += (hash(vec3(gl_FragCoord.xy, 1.0)) - 0.5) / 255.0;
#endif
	// premultiplied
	gl_FragColor = vec4(colour * opacity, opacity);
}
`;

/** Depth alone, so that of a see-through part only the nearest surface is drawn. */
export const VEIL_VERTEX = /* glsl */ `
void main() {
	gl_Position = projectionMatrix * (modelViewMatrix * vec4(position, 1.0));
}
`;

/** Depth as the lamp sees it. */
export const CAST_VERTEX = /* glsl */ `
uniform mat4 toLamp;
uniform float cutHeight;
void main() {
	// what is cut off is pressed flat onto the cut
	gl_Position = toLamp * vec4(position.x, min(position.y, cutHeight), position.z, 1.0);
}
`;

export const CAST_FRAGMENT = /* glsl */ `
void main() {
	gl_FragColor = vec4(1.0);
}
`;

/** A soft shadow on the felt behind: distance to a chain of round cones. Premultiplied black. */
export const SHADOW_VERTEX = /* glsl */ `
varying vec2 vAt;
void main() {
	vec4 at = modelViewMatrix * vec4(position, 1.0);
	vAt = at.xy;
	gl_Position = projectionMatrix * at;
}
`;

export const SHADOW_FRAGMENT = /* glsl */ `
uniform vec3 chain[6];
uniform float blur;
uniform float strength;
/** half the view's size and the width over which the shadow fades before the view's edge, mm */
uniform vec3 felt;
varying vec2 vAt;
void main() {
	float d = 1e6;
	for (int i = 0; i < 5; i++) {
		vec2 a = chain[i].xy;
		vec2 ab = chain[i + 1].xy - a;
		float t = clamp(dot(vAt - a, ab) / max(dot(ab, ab), 1e-6), 0.0, 1.0);
		d = min(d, length(vAt - a - ab * t) - mix(chain[i].z, chain[i + 1].z, t));
	}
	float s = 1.0 - smoothstep(-blur * 0.9, blur, d);
	vec2 inside = smoothstep(vec2(0.0), vec2(felt.z), felt.xy - abs(vAt));
	gl_FragColor = vec4(0.0, 0.0, 0.0, s * s * (3.0 - 2.0 * s) * strength * inside.x * inside.y);
}
`;

export const COPY_VERTEX = /* glsl */ `
void main() {
	gl_Position = vec4(position.xy, 0.0, 1.0);
}
`;

export const COPY_FRAGMENT = /* glsl */ `
uniform sampler2D map;
uniform ivec2 corner;
void main() {
	gl_FragColor = texelFetch(map, ivec2(gl_FragCoord.xy) - corner, 0);
}
`;
