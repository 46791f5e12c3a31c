import { expect, it } from 'vitest';
import { readAudit } from '../../../src/scripts/audit.mjs';

// the forms that npm 11 prints (docs.npmjs.com/cli/v11/commands/npm-audit, report version 2)
const report = (vulnerabilities: Record<string, unknown>) =>
	JSON.stringify({
		auditReportVersion: 2,
		vulnerabilities,
		metadata: { vulnerabilities: {}, dependencies: {} },
	});

it('names what is high or critical, and lets lesser ones pass', () => {
	const { asked, bad } = readAudit(
		report({
			a: { name: 'a', severity: 'high', range: '<1.2.3' },
			b: { name: 'b', severity: 'moderate', range: '*' },
			c: { name: 'c', severity: 'critical' },
		}),
	);
	expect(asked).toBe(true);
	expect(bad).toEqual(['a <1.2.3: high', 'c : critical']);
});
it('nothing found is good', () => {
	expect(readAudit(report({}))).toMatchObject({ asked: true, bad: [] });
});
it('a registry that cannot be asked is told apart from a good answer', () => {
	const refused = readAudit(
		JSON.stringify({ message: '405 Method Not Allowed', statusCode: 405, error: {} }),
	);
	expect(refused).toEqual({
		asked: false,
		bad: [],
		line: 'The registry could not be asked: 405 Method Not Allowed',
	});
	expect(readAudit('').asked).toBe(false);
	expect(readAudit('null').asked).toBe(false);
});
