import { statfsSync } from 'node:fs';

/**
 * File systems that tell nobody what another computer has saved on them, by their numbers on Linux: NFS, SMB (three
 * kinds), FUSE, 9P, AFS, Ceph. From memory of the kernel's linux/magic.h.
 */
const SILENT = new Set([
	0x6969, 0x517b, 0xff534d42, 0xfe534d42, 0x65735546, 0x01021997, 0x5346414f, 0x00c36400,
]);

/**
 * Whether a folder has to be looked at again and again instead of waiting to be told of changes. `asked` is CONTENT_POLL:
 * `1` or `0` decides; anything else leaves it to the folder: a network share is looked at.
 */
export function needsPolling(
	folder: string,
	asked: string | undefined,
	typeOf: (folder: string) => number = fileSystemType,
): boolean {
	if (asked === '1' || asked === '0') return asked === '1';
	// a share on Windows: \\server\name
	if (/^[\\/]{2}[^\\/.?]/.test(folder)) return true;
	try {
		return SILENT.has(typeOf(folder) >>> 0);
	} catch {
		return false; // not there yet: it is looked for in any case
	}
}

/** On other systems than Linux the number means something else, and the system tells of changes on shares itself. */
const fileSystemType = (folder: string): number =>
	process.platform === 'linux' ? statfsSync(folder).type : 0;
