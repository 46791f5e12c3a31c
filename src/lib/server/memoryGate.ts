/** Lets work begin in turn, only while what all of it together needs stays under a limit. */
export interface MemoryGate {
	/** Runs `work` when there is room for `bytes`; more than the limit runs alone. */
	run<T>(bytes: number, work: () => Promise<T>): Promise<T>;
}

export function createMemoryGate(limit: number): MemoryGate {
	const waiting: { bytes: number; begin: () => void }[] = [];
	let inUse = 0;
	let running = 0;

	function next(): void {
		// strictly in turn: a big scan is not overtaken for ever by small ones
		while (waiting.length > 0 && (running === 0 || inUse + waiting[0].bytes <= limit)) {
			const { bytes, begin } = waiting.shift()!;
			inUse += bytes;
			running++;
			begin();
		}
	}

	return {
		async run(bytes, work) {
			const turn = new Promise<void>((begin) => waiting.push({ bytes, begin }));
			next();
			await turn;
			try {
				return await work();
			} finally {
				inUse -= bytes;
				running--;
				next();
			}
		},
	};
}
