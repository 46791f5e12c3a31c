import { describe, expect, it } from 'vitest';
import { readScan } from '../../../src/lib/server/scan/readScan';
import { hostileGltf } from './hostileGltfFiles';
import { hostileObj, hostilePly, hostileStl } from './hostileFiles';

const MOST_MS = 2000;
const MOST_MB = 700;

const groups = {
	STL: hostileStl(),
	PLY: hostilePly(),
	OBJ: hostileObj(),
	'GLB and glTF': await hostileGltf(),
};

describe('damaged and hostile files: a clear problem or a right answer, soon and within bounds', () => {
	for (const [format, files] of Object.entries(groups)) {
		describe(format, () => {
			it.each(files.map((one) => [`${one.what} (${one.file}): ${one.code}`, one] as const))(
				'%s',
				async (_, { bytes, file, code }) => {
					const before = process.memoryUsage.rss();
					const start = process.cpuUsage();
					const result = await readScan(bytes, file, 'mm');
					// time of the processor, which does not grow when other programs run beside
					const { user, system } = process.cpuUsage(start);
					expect((user + system) / 1000).toBeLessThan(MOST_MS);
					expect((process.memoryUsage.rss() - before) / 2 ** 20).toBeLessThan(MOST_MB);
					expect(result.ok ? 'fine' : `${result.problem.code}: ${result.problem.message}`).toMatch(
						new RegExp(`^${code}(:|$)`),
					);
					if (result.ok) return;
					// words for a person: whole sentences, nothing of the program's own in them
					expect(result.problem.message).toMatch(/^[A-Z].*\.$/s);
					expect(result.problem.remedy).toMatch(/^[A-Z].{10,}\.$/s);
					expect(result.problem.message.length).toBeLessThan(300);
					expect(result.problem.message).not.toMatch(/undefined|NaN|\[object|Error|DataView/);
				},
			);
		});
	}

	it('asks for the unit of files that carry none, and takes metres for those whose standard says so', async () => {
		for (const { file, bytes, code } of [...groups.STL, ...groups.PLY, ...groups.OBJ]) {
			if (code !== 'fine') continue;
			const result = await readScan(bytes, file);
			expect(result).toMatchObject({ ok: false, problem: { code: 'unit-missing' } });
		}
		for (const { file, bytes, code } of groups['GLB and glTF']) {
			if (code === 'fine')
				expect(await readScan(bytes, file)).toMatchObject({ ok: true, value: { units: 'm' } });
		}
	});
});
