import { describe, expect, it } from 'vitest';
import type { ShapeFailure } from '../../../src/lib/server/prepare/shapeJob';
import { scanProblem } from '../../../src/lib/server/scan/scanProblem';
import { shapeProblem } from '../../../src/lib/server/shapeProblem';
import { specimen } from './samples';

const yaml = `accession: SKM 1
shape:
  model:
    crown_height_mm: 20
    tip_radius_mm: 9
    carinae:
      - { where: mesial, prominence_mm: 0.7, from: 0, serrations_per_5mm: 900 }
`;
const scanned = specimen('b', { shape: { kind: 'scan', file: 'tooth.stl', units: 'mm' } });
const scanYaml = 'shape:\n  scan:\n    file: tooth.stl\n    units: mm\n';

describe('shapeProblem', () => {
	it('points at the field of the form, in the words and keys of the file', () => {
		const problem = shapeProblem(
			specimen('a'),
			{ of: 'form', problem: { code: 'tip-too-blunt', path: 'tipRadius_mm', found: 9, max: 3.2 } },
			yaml,
		);
		expect(problem).toEqual({
			id: 'tip-too-blunt',
			severity: 'error',
			file: 'specimens/a/specimen.yaml',
			line: 5,
			column: 20,
			path: 'shape.model.tip_radius_mm',
			data: { found: 9, max: 3.2 },
			message: 'A tip radius of 9 mm does not fit on this crown; 3.2 mm is the most.',
			remedy: 'Make it smaller, for example tip_radius_mm: 3.2',
		});
		const inList = shapeProblem(
			specimen('a'),
			{
				of: 'form',
				problem: { code: 'serration-too-fine', path: 'carinae[0].serrationsPer5mm', found: 900, max: 60 },
			},
			yaml,
		);
		expect(inList).toMatchObject({ line: 7, path: 'shape.model.carinae[0].serrations_per_5mm' });
	});

	it('points at the nearest field that the file writes down', () => {
		const problem = shapeProblem(
			specimen('a'),
			{ of: 'form', problem: { code: 'pulp-breaks-out', path: 'pulp.height_mm' } },
			yaml,
		);
		expect(problem.line).toBe(4); // shape.model begins there
	});

	it('has words and a remedy for every way a shape can fail', () => {
		const failures: ShapeFailure[] = [
			...(
				[
					'out-of-range',
					'tip-too-blunt',
					'no-crown-left',
					'serration-too-fine',
					'ridge-too-tall',
					'pulp-breaks-out',
					'sections-empty',
					'not-closed',
				] as const
			).map((code): ShapeFailure => ({
				of: 'form',
				problem: { code, path: 'crownHeight_mm', found: 1, min: 2, max: 3 },
			})),
			...(['unknown-format', 'truncated', 'compressed-unreadable', 'no-triangles'] as const).map(
				(code): ShapeFailure => ({
					of: 'scan',
					problem: scanProblem(code, `It shows the fault ${code}.`),
				}),
			),
			{ of: 'measure', problem: { code: 'no-base', message: 'No base was found.' } },
			{ of: 'changed' },
			{ of: 'crash', message: 'out of memory' },
		];
		const seen = new Set<string>();
		for (const failure of failures) {
			const problem = shapeProblem(scanned, failure, scanYaml);
			expect(problem.severity).toBe('error');
			expect(problem.id).toMatch(/^[a-z-]+$/);
			expect(problem.message).toMatch(/^[A-Za-z].*[.)]$/s);
			expect(problem.remedy.length).toBeGreaterThan(20);
			expect(problem.message + problem.remedy).not.toMatch(/undefined|\[object/);
			seen.add(problem.message);
		}
		expect(seen.size).toBe(failures.length);
		expect(shapeProblem(scanned, { of: 'changed' }, scanYaml)).toMatchObject({
			line: 3,
			path: 'shape.scan.file',
		});
		expect(shapeProblem(scanned, { of: 'changed' }, null)).toMatchObject({ line: 1, column: 1 });
	});
});
