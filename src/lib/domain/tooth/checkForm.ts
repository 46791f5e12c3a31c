import { blendedSection, boxAngle } from './crownShape';
import { denticleCount } from './crownRows';
import type { FormProblem, ToothForm } from './form';
import { FORM_LIMITS, FORM_RANGES, type RangedField } from './formRanges';
import { cavityOf } from './lowerRings';
import { KEEL_SPREAD } from './relief';
import { angleBetween } from './smooth';

/**
 * First reason why a form cannot be made, or null. Checks everything that can be told without making the surface;
 * `sculpt` adds what only the surface can tell (a facet that leaves no crown or cuts into the root).
 */
export function checkForm(form: ToothForm): FormProblem | null {
	return (
		checkRanges(form) ??
		checkBody(form) ??
		checkEdges(form) ??
		checkRidges(form) ??
		checkBelow(form) ??
		checkTipWear(form)
	);
}

const outside = (path: string, found: number, min: number, max: number): FormProblem | null =>
	found >= min && found <= max ? null : { code: 'out-of-range', path, found, min, max };

function checkRanges(form: ToothForm): FormProblem | null {
	const range = (field: RangedField, path: string, found: number | undefined): FormProblem | null =>
		found === undefined ? null : outside(path, found, FORM_RANGES[field][0], FORM_RANGES[field][1]);
	if (form.sections.length === 0) return { code: 'sections-empty', path: 'sections', found: 0, min: 1 };
	const { root, neck, pulp, ridges, wear } = form;
	const checks: (FormProblem | null)[] = [
		range('crownHeight_mm', 'crownHeight_mm', form.crownHeight_mm),
		range('baseLength_mm', 'baseLength_mm', form.baseLength_mm),
		range('baseWidth_mm', 'baseWidth_mm', form.baseWidth_mm),
		range('tipRadius_mm', 'tipRadius_mm', form.tipRadius_mm),
		range('fullness', 'fullness', form.fullness),
		...form.sections.flatMap((stop, i) => [
			range('sections.at', `sections[${i}].at`, stop.at),
			range('sections.widthFactor', `sections[${i}].widthFactor`, stop.widthFactor),
			range('sections.towards.share', `sections[${i}].towards.share`, stop.towards?.share),
		]),
		range('curve.distal_deg', 'curve.distal_deg', form.curve.distal_deg),
		range('curve.lingual_deg', 'curve.lingual_deg', form.curve.lingual_deg),
		range('curve.startsAt', 'curve.startsAt', form.curve.startsAt),
		range('curve.total_deg', 'curve', Math.hypot(form.curve.distal_deg, form.curve.lingual_deg)),
		...form.carinae.flatMap((carina, i) => [
			typeof carina.where === 'number' ? range('carinae.where', `carinae[${i}].where`, carina.where) : null,
			range('carinae.prominence_mm', `carinae[${i}].prominence_mm`, carina.prominence_mm),
			range('carinae.from', `carinae[${i}].from`, carina.from),
			range('carinae.serrationsPer5mm', `carinae[${i}].serrationsPer5mm`, carina.serrationsPer5mm),
			range('carinae.serrationDepth_mm', `carinae[${i}].serrationDepth_mm`, carina.serrationDepth_mm),
		]),
		range('ridges.count', 'ridges.count', ridges?.count),
		range('ridges.height_mm', 'ridges.height_mm', ridges?.height_mm),
		range('ridges.from', 'ridges.from', ridges?.from),
		range('ridges.to', 'ridges.to', ridges?.to),
		range('neck.constriction', 'neck.constriction', neck?.constriction),
		range('neck.length_mm', 'neck.length_mm', neck?.length_mm),
		root.state === 'none' ? null : range('root.length_mm', 'root.length_mm', root.length_mm),
		root.state === 'full' ? range('root.swelling', 'root.swelling', root.swelling) : null,
		root.state === 'resorbed' ? range('root.pitDepth_mm', 'root.pitDepth_mm', root.pitDepth_mm) : null,
		range('pulp.height_mm', 'pulp.height_mm', pulp?.height_mm),
		range('pulp.opening', 'pulp.opening', pulp?.opening),
		range('wear.tipWornTo_mm', 'wear.tipWornTo_mm', wear?.tipWornTo_mm),
		...(wear?.facets ?? []).flatMap((facet, i) => [
			range('wear.facets.angle_deg', `wear.facets[${i}].angle_deg`, facet.angle_deg),
			range('wear.facets.depth_mm', `wear.facets[${i}].depth_mm`, facet.depth_mm),
			range('wear.facets.at', `wear.facets[${i}].at`, facet.at),
		]),
	];
	return checks.find((check) => check !== null) ?? null;
}

function checkBody(form: ToothForm): FormProblem | null {
	const { baseLength_mm: length, baseWidth_mm: width } = form;
	const [, aspect] = FORM_RANGES.baseAspect;
	const thin = outside('baseWidth_mm', width, length / aspect, length * aspect);
	if (thin) return thin;

	for (const [i, stop] of form.sections.entries()) {
		const below = form.sections
			.filter((other, j) => other.at < stop.at || (other.at === stop.at && j < i))
			.reduce((most, other) => Math.max(most, other.at), -1);
		const crowded = outside(`sections[${i}].at`, stop.at, below + FORM_LIMITS.stopsApart, 1);
		if (below >= 0 && crowded) return crowded;
	}

	const atTip = blendedSection(form, 1);
	let least = Infinity;
	for (let i = 0; i < 360; i++) {
		const [x, z] = atTip((i * Math.PI) / 180);
		least = Math.min(least, Math.hypot(x, z));
	}
	const max = Math.min(FORM_LIMITS.tipOverRadius * least, FORM_LIMITS.tipOverHeight * form.crownHeight_mm);
	if (form.tipRadius_mm > max)
		return { code: 'tip-too-blunt', path: 'tipRadius_mm', found: form.tipRadius_mm, max };

	// a bend tighter than the crown is thick would fold the surface into itself
	const { distal_deg, lingual_deg, startsAt } = form.curve;
	const turning_deg = Math.hypot(distal_deg, lingual_deg);
	if (turning_deg > 0) {
		const across =
			(Math.abs(distal_deg / turning_deg) * length + Math.abs(lingual_deg / turning_deg) * width) / 2;
		const thickness = across * (1 - 0.6 * startsAt);
		const tightest_deg = (((form.crownHeight_mm * (1 - startsAt)) / thickness) * 0.8 * 180) / Math.PI;
		if (turning_deg > tightest_deg)
			return { code: 'out-of-range', path: 'curve', found: turning_deg, min: 0, max: tightest_deg };
	}
	return null;
}

function checkEdges(form: ToothForm): FormProblem | null {
	const halfWidth = Math.min(form.baseLength_mm, form.baseWidth_mm) / 2;
	for (const [i, carina] of form.carinae.entries()) {
		let max = FORM_LIMITS.keelOverRadius * halfWidth;
		for (const [j, other] of form.carinae.entries()) {
			if (i === j) continue;
			const between = Math.abs(angleBetween(boxAngle(carina.where, form), boxAngle(other.where, form)));
			// feet of neighbouring keels must not overlap half way up
			const gap_mm = between * halfWidth * 0.6;
			max = Math.min(max, gap_mm / KEEL_SPREAD - (j < i ? other.prominence_mm : 0));
		}
		if (carina.prominence_mm > max) {
			const path = `carinae[${i}].prominence_mm`;
			return { code: 'ridge-too-tall', path, found: carina.prominence_mm, max: Math.max(0, max) };
		}
		const per5mm = carina.serrationsPer5mm ?? 0;
		const count = denticleCount(form, carina.from, per5mm);
		if (count > FORM_LIMITS.denticles) {
			const finest = (per5mm * FORM_LIMITS.denticles) / count;
			return {
				code: 'serration-too-fine',
				path: `carinae[${i}].serrationsPer5mm`,
				found: per5mm,
				max: finest,
			};
		}
		const depth = carina.serrationDepth_mm;
		if (depth !== undefined && depth > carina.prominence_mm)
			return outside(`carinae[${i}].serrationDepth_mm`, depth, 0, carina.prominence_mm);
	}
	return null;
}

function checkRidges(form: ToothForm): FormProblem | null {
	const { ridges } = form;
	if (!ridges || ridges.count === 0) return null;
	if (!Number.isInteger(ridges.count)) {
		const [min, max] = [Math.floor(ridges.count), Math.ceil(ridges.count)];
		return { code: 'out-of-range', path: 'ridges.count', found: ridges.count, min, max };
	}
	if (ridges.to - ridges.from < 0.1) return outside('ridges.to', ridges.to, ridges.from + 0.1, 1);
	const girth_mm = (Math.PI * (form.baseLength_mm + form.baseWidth_mm)) / 2;
	const gap_mm = (ridges.sides === 'all' ? girth_mm : girth_mm / 2) / ridges.count;
	const halfWidth = Math.min(form.baseLength_mm, form.baseWidth_mm) / 2;
	const max = Math.min(FORM_LIMITS.ridgeOverGap * gap_mm, FORM_LIMITS.ridgeOverRadius * halfWidth);
	return ridges.height_mm > max
		? { code: 'ridge-too-tall', path: 'ridges.height_mm', found: ridges.height_mm, max }
		: null;
}

function checkBelow(form: ToothForm): FormProblem | null {
	const { root, neck } = form;
	if (root.state === 'resorbed') {
		const across =
			root.pitSide === 'mesial' || root.pitSide === 'distal' ? form.baseLength_mm : form.baseWidth_mm;
		const max = (FORM_LIMITS.pitOverRadius * across) / 2;
		const problem = outside('root.pitDepth_mm', root.pitDepth_mm, FORM_RANGES['root.pitDepth_mm'][0], max);
		if (problem) return problem;
	}
	if (neck && root.state !== 'none') {
		const max = FORM_LIMITS.neckOverRoot * root.length_mm;
		const problem = outside('neck.length_mm', neck.length_mm, FORM_RANGES['neck.length_mm'][0], max);
		if (problem) return problem;
	}
	const cavity = cavityOf(form);
	if (cavity) {
		const end = root.state === 'none' ? 0 : -root.length_mm;
		const min = end * 0.75 + 0.02 * form.crownHeight_mm;
		const max = FORM_LIMITS.pulpOverHeight * form.crownHeight_mm;
		if (cavity.height_mm > max)
			return { code: 'pulp-breaks-out', path: 'pulp.height_mm', found: cavity.height_mm, max };
		if (cavity.height_mm < min) return outside('pulp.height_mm', cavity.height_mm, min, max);
	}
	return null;
}

function checkTipWear(form: ToothForm): FormProblem | null {
	const worn = form.wear?.tipWornTo_mm;
	if (worn === undefined) return null;
	const min = FORM_LIMITS.crownLeft * form.crownHeight_mm;
	const path = 'wear.tipWornTo_mm';
	if (worn < min) return { code: 'no-crown-left', path, found: worn, min };
	return outside(path, worn, min, form.crownHeight_mm);
}
