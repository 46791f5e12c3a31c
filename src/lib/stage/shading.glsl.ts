/**
 * The look of a tooth under one raking lamp, as GLSL for a three.js ShaderMaterial.
 *
 * Why our own shading and not a stock physical material: light and full quality share every term that decides
 * brightness, so that switching between them cannot flash; there is no environment texture to rebuild when a
 * context is lost; and a processor without a graphics card can draw it.
 *
 * View space, +z towards the viewer. Lights stand still; the tooth turns under them.
 * Terms: Lambert with a soft terminator; GGX highlight (Walter et al. 2007, doi:10.2312/EGWR/EGSR07/195-206) with
 * the Smith-Schlick visibility approximation; Schlick's Fresnel (1994, doi:10.1111/1467-8659.1330233) for the
 * reflections of two lamp shades; a filmic curve of our own. Output is display-referred sRGB.
 */

export const TOOTH_VERTEX = /* glsl */ `
attribute vec4 surface;
uniform vec3 palette[8];
uniform vec4 finish[8];
uniform float crownHeight;
varying vec4 vAlbedoAo;
varying vec4 vNormalTip;
varying vec4 vFinish;
#ifdef FULL
varying vec3 vTooth;
#endif

void main() {
	int region = int(surface.z + 0.5);
	float ao = surface.x / 255.0;
	float tone = surface.y / 127.5 - 1.0;
	vFinish = finish[region];
	float up = position.y / crownHeight;
	float enamel = vFinish.w;
	vec3 albedo = palette[region];
	// a crown pales towards its tip; staining gathers where the surface is sheltered
	float shade = mix(1.0, mix(0.86, 1.1, clamp(up, 0.0, 1.0)), enamel);
	albedo *= shade * (1.0 + tone * mix(0.34, 0.2, enamel));
	albedo = mix(albedo * vec3(0.72, 0.62, 0.52), albedo, mix(0.45, 1.0, ao));
	vAlbedoAo = vec4(albedo, ao);
	vNormalTip = vec4(normalMatrix * normal, smoothstep(0.68, 1.02, up) * enamel);
#ifdef FULL
	vTooth = position / crownHeight;
#endif
	gl_Position = projectionMatrix * (modelViewMatrix * vec4(position, 1.0));
}
`;

export const TOOTH_FRAGMENT = /* glsl */ `
uniform mat3 normalMatrix;
varying vec4 vAlbedoAo;
varying vec4 vNormalTip;
varying vec4 vFinish;
#ifdef FULL
varying vec3 vTooth;
#endif

const vec3 KEY_DIR = vec3(-0.715, 0.480, 0.508);
const vec3 KEY = vec3(1.00, 0.88, 0.73) * 3.3;
const vec3 FILL_DIR = vec3(0.780, -0.180, 0.600);
const vec3 FILL = vec3(0.40, 0.52, 0.70) * 0.15;
const vec3 RIM_DIR = vec3(0.800, 0.320, -0.507);
const vec3 RIM = vec3(1.00, 0.80, 0.58) * 1.6;
const vec3 SKY = vec3(0.105, 0.092, 0.080);
const vec3 FELT = vec3(0.040, 0.026, 0.017);

// a lamp shade seen in a mirror: a soft-edged rectangle round a direction
float shade(vec3 r, vec3 dir, vec3 side, vec3 over, vec2 halfSize, float blur) {
	float ahead = dot(r, dir);
	vec2 p = abs(vec2(dot(r, side), dot(r, over))) / max(ahead, 0.05);
	vec2 edge = 1.0 - smoothstep(halfSize - blur, halfSize + blur, p);
	return edge.x * edge.y * step(0.05, ahead);
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
#endif

void main() {
	vec3 n = normalize(vNormalTip.xyz);
	// the lens is so long that every line of sight may count as parallel
	const vec3 v = vec3(0.0, 0.0, 1.0);
#ifdef DOUBLE_SIDED
	if (!gl_FrontFacing) n = -n;
#endif
	float rough = vFinish.x;
	float coat = vFinish.y;
	float fibre = vFinish.z;
	float enamel = vFinish.w;
	float ao = vAlbedoAo.w;
	float tip = vNormalTip.w;
	vec3 albedo = vAlbedoAo.xyz;

#ifdef FULL
	vec3 along = normalize(normalMatrix * vec3(0.0, 1.0, 0.0));
	vec3 across = cross(along, n);
	if (enamel > 0.5) {
		// growth banding: faint lines round the crown, uneven in spacing; the eye finds it in the highlight first
		float wobble = noise(vTooth * vec3(5.0, 9.0, 5.0)) - 0.5;
		float phase = vTooth.y * 150.0 + wobble * 5.0;
		float bands = sin(phase) * 0.6 + sin(phase * 2.37 + wobble * 9.0) * 0.4;
		// worn by years of food: the mirror is never quite even
		float worn = noise(vTooth * vec3(17.0, 11.0, 17.0)) - 0.5;
		albedo *= 1.0 + bands * 0.03;
		n = normalize(n + along * (bands * 0.014 + worn * 0.05) + across * ((wobble + worn) * 0.06));
		rough += (worn + wobble) * 0.10;
	} else {
		// fibres and pores of root and dentine
		float streak = noise(vTooth * vec3(120.0, 14.0, 120.0)) - 0.5;
		float pores = noise(vTooth * vec3(150.0, 110.0, 150.0)) - 0.5;
		albedo *= 1.0 + fibre * (streak * 0.14 + pores * 0.10);
		n = normalize(n + along * (fibre * pores * 0.16) + across * (fibre * (streak + pores) * 0.14));
	}
#endif

	float nv = clamp(n.z, 0.001, 1.0);
	float edge = 1.0 - nv;

	// thin enamel at the tip lets light through: cooler in the middle, glowing at its rim
	albedo = mix(albedo, albedo * vec3(0.86, 0.92, 1.0), tip * 0.5);

	// key lamp: soft terminator, warmer where light has gone through the surface
	float nk = dot(n, KEY_DIR);
	float wrap = mix(0.10, 0.22, enamel);
	float lit = max(0.0, (nk + wrap) / (1.0 + wrap));
	float hard = max(0.0, nk);
	vec3 through = mix(vec3(1.0), vec3(1.12, 0.90, 0.70), (1.0 - smoothstep(0.0, 0.5, nk)) * (0.4 + 0.6 * enamel));
	float open = mix(0.10, 1.0, smoothstep(0.0, 0.85, ao));
	vec3 diffuse = KEY * through * (lit * lit * 0.55 + lit * 0.45) * open;
	diffuse += FILL * max(0.0, dot(n, FILL_DIR) * 0.7 + 0.3) * ao;
	diffuse += RIM * pow(max(0.0, dot(n, RIM_DIR)), 1.5) * ao * 0.7;
	diffuse += mix(FELT, SKY, n.y * 0.5 + 0.5) * ao * ao * 2.0;
	diffuse += vec3(1.0, 0.66, 0.36) * (edge * edge) * (0.10 * enamel + 0.85 * tip) * ao;
	vec3 colour = albedo * diffuse * 0.3183 * 1.5;

	// highlights
	float a = rough * rough;
	vec3 hk = normalize(KEY_DIR + v);
	float nh = max(0.0, dot(n, hk));
	float k = (rough + 1.0) * (rough + 1.0) * 0.125;
	float vis = 0.25 / ((hard * (1.0 - k) + k) * (nv * (1.0 - k) + k));
	float fr = 0.045 + 0.955 * pow(1.0 - max(0.0, dot(hk, v)), 5.0);
	colour += KEY * (ggx(nh, a) * vis * fr * hard * open * mix(0.6, 1.0, coat)) * 1.6;

	float fresnel = 0.045 + 0.955 * pow(edge, 5.0) * (1.0 - rough * 0.6);
	vec3 r = reflect(-v, n);
	float blur = 0.03 + rough * 0.32;
	float window = shade(r, vec3(-0.755, 0.362, 0.547), vec3(0.587, 0.0, 0.810), vec3(0.293, 0.932, -0.212), vec2(0.13, 0.95), blur);
	float strip = shade(r, vec3(0.934, 0.155, 0.322), vec3(-0.326, 0.0, 0.945), vec3(0.147, 0.988, 0.050), vec2(0.09, 1.30), blur);
	vec3 mirror = vec3(1.00, 0.90, 0.76) * window * 9.0 + vec3(0.62, 0.74, 0.95) * strip * 1.2;
	mirror += mix(FELT, SKY * 1.6, smoothstep(-0.3, 0.8, r.y)) * 1.4;
	mirror += vec3(1.00, 0.92, 0.80) * smoothstep(0.5, 0.95, r.y) * 1.3;
	colour += mirror * fresnel * coat * mix(0.2, 1.0, ao * ao);

	colour = film(colour);
#ifdef FULL
	colour += (hash(vec3(gl_FragCoord.xy, 1.0)) - 0.5) / 255.0;
#endif
	gl_FragColor = vec4(colour, 1.0);
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
	gl_FragColor = vec4(0.0, 0.0, 0.0, s * s * (3.0 - 2.0 * s) * strength);
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
